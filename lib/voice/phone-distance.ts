import { pronunciations } from './pronunciations';

/** The phones of words in our table; undefined where one of them is not in it. Slots (`{value}`) have none. */
export const phonesOf = (say: string): readonly string[] | undefined => {
  const words = say.split(' ').filter((word) => !word.startsWith('{'));
  const phones = words.map((word) =>
    Object.hasOwn(pronunciations, word) ? pronunciations[word]?.split(' ') : undefined,
  );
  return phones.some((one) => one === undefined) ? undefined : phones.flatMap((one) => one ?? []);
};

/** Phones to change, leave out or put in to make one of the other (Levenshtein). */
export const phoneDistance = (a: readonly string[], b: readonly string[]): number => {
  let row = b.map((_, at) => at + 1);
  a.forEach((phone, i) => {
    let left = i + 1;
    row = row.map((up, at) => {
      const corner = at === 0 ? i : (row[at - 1] ?? 0);
      left = Math.min(left + 1, up + 1, corner + (phone === b[at] ? 0 : 1));
      return left;
    });
  });
  return row.at(-1) ?? a.length;
};
