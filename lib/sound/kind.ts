/** What a bay may sound like, as far as the kiosk must know it. The order is that of our own classifier. */
export const soundKinds = [
  'speech',
  'impactTool',
  'grinderOrSaw',
  'engineOrCompressor',
  'alarm',
  'musicOrRadio',
  'quiet',
] as const;
export type SoundKind = (typeof soundKinds)[number];

/** How surely each kind is in the sound, 0 to 1; several may be at once. */
export type KindScores = Readonly<Record<SoundKind, number>>;

export const noScores: KindScores = {
  speech: 0,
  impactTool: 0,
  grinderOrSaw: 0,
  engineOrCompressor: 0,
  alarm: 0,
  musicOrRadio: 0,
  quiet: 0,
};

/** Which of our kinds each label of a classifier stands for; labels that are not in it count for nothing. */
export type KindTable = Readonly<Record<string, SoundKind>>;

/** The highest score of the labels of each kind. What is no score between 0 and 1 counts for nothing. */
export const kindScores = (
  labelled: readonly { readonly label: string; readonly score: number }[],
  table: KindTable,
): KindScores =>
  labelled.reduce<KindScores>((scores, { label, score }) => {
    const kind = Object.hasOwn(table, label) ? table[label] : undefined;
    return kind === undefined || !(score > scores[kind] && score <= 1)
      ? scores
      : { ...scores, [kind]: score };
  }, noScores);
