/** Something that keeps a revision from being published. */
export interface Fault {
  /** Where: the collection and ids that lead there, such as "steps/fit-cover". */
  readonly where: string;
  /** What is wrong and what to do, in plain words. */
  readonly message: string;
}

export const fault = (where: string, message: string): Fault => ({ where, message });

/** The values that occur more than once, each once. */
export const repeated = (values: readonly string[]): readonly string[] => [
  ...new Set(values.filter((value, at) => values.indexOf(value) !== at)),
];
