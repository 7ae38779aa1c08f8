/**
 * The pattern of an address, such as `/api/jobs/:job/events`: for logs and measures, which shall neither name a job nor
 * grow with the number of jobs. `params` are the parts of the path that vary, by name.
 */
export const routeName = (pathname: string, params: unknown): string => {
  const names = new Map<string, string>();
  for (const [name, value] of Object.entries(params ?? {})) {
    const parts: readonly unknown[] = Array.isArray(value) ? value : [value];
    for (const part of parts) names.set(encodeURIComponent(String(part)), `:${name}`);
  }
  const named = pathname.split('/').map((part) => names.get(decodedAlike(part)) ?? part);
  // A part of several, such as a file's path, stands once.
  return named
    .filter((part, index) => !part.startsWith(':') || part !== named[index - 1])
    .join('/');
};

/** However a client wrote the part, in the one way that it is compared in. */
const decodedAlike = (part: string): string => {
  try {
    return encodeURIComponent(decodeURIComponent(part));
  } catch {
    return part;
  }
};
