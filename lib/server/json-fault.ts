/** Deeper than anything that is sent here, and far from where recursion would hurt. */
const deepest = 32;
const reserved = new Set(['__proto__', 'constructor', 'prototype']);

const textFault = (text: string): string | undefined => {
  if (text.includes('\0')) return 'A text has a NUL character in it.';
  return /\p{Surrogate}/u.test(text) ? 'A text is not well-formed Unicode.' : undefined;
};

/**
 * What no honest kiosk sends, whatever the schema: member names that reach into JavaScript's own objects, texts that
 * cannot be stored or hashed (RFC 8785 wants well-formed Unicode), and endless nesting. One sentence, or nothing.
 */
export const jsonFault = (value: unknown): string | undefined => {
  const open: { readonly value: unknown; readonly depth: number }[] = [{ value, depth: 0 }];
  for (let one = open.pop(); one !== undefined; one = open.pop()) {
    if (typeof one.value === 'string') {
      const fault = textFault(one.value);
      if (fault !== undefined) return fault;
    }
    if (typeof one.value !== 'object' || one.value === null) continue;
    if (one.depth >= deepest) return `The content is nested deeper than ${deepest} levels.`;
    for (const [name, member] of Object.entries(one.value)) {
      if (reserved.has(name)) return `A member may not be called ${name}.`;
      const fault = textFault(name);
      if (fault !== undefined) return fault;
      open.push({ value: member, depth: one.depth + 1 });
    }
  }
  return undefined;
};
