/** One thing to say in the practice. */
export interface PracticePhrase {
  readonly say: string;
  /** What may stand for it with one person; what destroys, closes or answers has none, nor has a number. */
  readonly others: readonly string[];
}

const one = (say: string, ...others: readonly string[]): PracticePhrase => ({ say, others });

/**
 * What is practised, in about two minutes: the phrases of every job, the answers to a question, and the numbers and
 * units that are mistaken most ("five" and "nine", teens and tens).
 */
export const practicePhrases: readonly PracticePhrase[] = [
  one('next', 'carry on', 'go forward', 'continue', 'onwards'),
  one('go back', 'previous page', 'return please', 'look behind'),
  one('repeat', 'read aloud', 'speak up'),
  one('yes'),
  one('no'),
  one('torqued five'),
  one('torqued nine'),
  one('torqued fifteen newton meters'),
  one('torqued fifty'),
  one('torqued one twenty five'),
  one('eighty nine foot pounds'),
  one('nine point five liters'),
  one('check okay', 'found good', 'verified', 'all is well'),
  one('replaced', 'fresh component', 'another fitted'),
  one('reused', 'original kept', 'original stays'),
  one('ready', 'all set', 'standing by', 'prepared'),
  one('show the order', 'which sequence', 'tightening pattern'),
  one('note a deviation', 'something different', 'unusual finding'),
  one('call the foreman', 'supervisor please', 'bring the supervisor'),
  one('take that back'),
];

/** So often a phrase is said, where it is not understood at once. */
export const mostTries = 2;

export const practicePhrase = (say: string): PracticePhrase | undefined =>
  practicePhrases.find((phrase) => phrase.say === say);
