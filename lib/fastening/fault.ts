/** Something in a written procedure that is wrong, or that its writer should look at again. */
export interface Fault {
  readonly code:
    | 'notFinite'
    | 'lowerAboveUpper'
    | 'targetOutside'
    | 'noWindow'
    | 'negative'
    | 'percentTooLarge'
    | 'wrongQuantity'
    | 'noAngle'
    | 'overOneTurn'
    | 'passesNotRising'
    | 'angleReused'
    | 'unknownThread'
    | 'unknownStrength'
    | 'tooLowForThread'
    | 'tooHighForThread';
  readonly severity: 'wrong' | 'doubtful';
  /** One sentence for the writer. */
  readonly message: string;
}

export const wrong = (code: Fault['code'], message: string): Fault => ({
  code,
  severity: 'wrong',
  message,
});

export const doubtful = (code: Fault['code'], message: string): Fault => ({
  code,
  severity: 'doubtful',
  message,
});
