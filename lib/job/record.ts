/** Own entries only: an id such as "constructor" must not find what every object has. */
export const lookup = <T>(record: Readonly<Record<string, T>>, id: string): T | undefined =>
  Object.hasOwn(record, id) ? record[id] : undefined;

/** The record with one entry changed; an entry that is not there stays so. */
export const change = <T>(
  record: Readonly<Record<string, T>>,
  id: string,
  how: (old: T) => T,
): Readonly<Record<string, T>> => {
  const old = lookup(record, id);
  return old === undefined ? record : { ...record, [id]: how(old) };
};
