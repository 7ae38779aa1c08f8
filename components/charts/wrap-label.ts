/** Words in at most `lines` lines of at most `width` characters; what does not fit ends in an ellipsis. */
export const wrapLabel = (
  text: string,
  { width, lines }: { readonly width: number; readonly lines: number },
): readonly string[] => {
  const wrapped: string[] = [];
  let rest = text.trim().replace(/\s+/g, ' ');
  while (rest !== '' && wrapped.length < lines) {
    if (rest.length <= width) return [...wrapped, rest];
    if (wrapped.length === lines - 1) return [...wrapped, `${rest.slice(0, width - 1).trimEnd()}…`];
    const space = rest.lastIndexOf(' ', width);
    const end = space > 0 ? space : width;
    wrapped.push(rest.slice(0, end));
    rest = rest.slice(end).trimStart();
  }
  return wrapped;
};
