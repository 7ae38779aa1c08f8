/** Something that keeps a revision from being published. */
export interface Fault {
  readonly severity: 'fault';
  /** Where: the collection and ids that lead there, such as "steps/fit-cover". */
  readonly where: string;
  /** What is wrong and what to do, in plain words. */
  readonly message: string;
}

/** Something that may well be as it is meant, but that its writer should look at again. It keeps nothing back. */
export interface Doubt {
  readonly severity: 'doubt';
  readonly where: string;
  /** What is odd, and what was probably meant. */
  readonly message: string;
}

export type Finding = Fault | Doubt;

export const fault = (where: string, message: string): Fault => ({
  severity: 'fault',
  where,
  message,
});

export const doubt = (where: string, message: string): Doubt => ({
  severity: 'doubt',
  where,
  message,
});

/** The values that occur more than once, each once. */
export const repeated = (values: readonly string[]): readonly string[] => [
  ...new Set(values.filter((value, at) => values.indexOf(value) !== at)),
];
