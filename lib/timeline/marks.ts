import type { Row } from './row';

const markedKinds = ['deviations', 'holds', 'signatures'] as const;

/** A place on the scrubber worth going to. */
export interface Mark {
  readonly seq: number;
  readonly kind: (typeof markedKinds)[number];
}

/** So many are drawn; more would be a bar. */
const mostMarks = 300;

export const marksOf = (rows: readonly Row[]): readonly Mark[] =>
  rows
    .flatMap(({ seq, kinds }): Mark[] => {
      const kind = markedKinds.find((one) => kinds.includes(one));
      return kind === undefined ? [] : [{ seq, kind }];
    })
    .slice(0, mostMarks);
