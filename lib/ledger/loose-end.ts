/** Kinds of loose ends, in the order in which the ledger lists them. */
export const looseEndKinds = [
  'fluidOut',
  'fluidUnbalanced',
  'partOff',
  'kitUnaccounted',
  'fastenerOpen',
  'threadLockerDue',
  'replacementDue',
  'readingMissing',
  'readingOutOfSpec',
  'readingNotProvable',
  'checkFailed',
  'checkMissing',
  'deviationUndecided',
  'stepOpen',
] as const;
export type LooseEndKind = (typeof looseEndKinds)[number];

export interface LooseEnd {
  /** Stable while the thing itself is open: `kind:what`. */
  readonly key: string;
  /** What a signature is given for; changes when the state of the thing changes. */
  readonly mark: string;
  readonly kind: LooseEndKind;
  /** One short line in plain words: "Cover bolt 3 is run in by hand". */
  readonly text: string;
  /** Where it lies, which hole it came from, which value is missing. */
  readonly detail?: string;
  /** The step that settles it, to go there with one touch. */
  readonly step?: string;
  readonly signedBy?: string;
}
