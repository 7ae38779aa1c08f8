import { doubts } from './doubt';
import type { IntentKind, Understanding } from './intent';
import { asHeard } from './number-words';
import { unknownWord } from './unknown-word';

/** An answer must not be the kiosk's own question, misheard. */
const saidAgain: ReadonlySet<IntentKind> = new Set<IntentKind>(['yes', 'check', 'choice']);

const wordsOf = (text: string): readonly string[] =>
  text
    .toLowerCase()
    .split(/[^a-z']+/)
    .filter((word) => word !== '')
    .map(asHeard);

/**
 * What was said into the kiosk's own speech. It acts only when it was clear and holds no word that the kiosk was just
 * saying; a number is read back, and an answer has to be said again.
 */
export const overOwnVoice = (understanding: Understanding, ownText: string): Understanding => {
  if (understanding.kind === 'nothing') return understanding;
  const { intent, said, certainty } = understanding;
  const own = new Set(wordsOf(ownText));
  const shared = said.split(' ').some((word) => word !== unknownWord && own.has(word));
  const again: Understanding = { kind: 'nothing', why: doubts.ownVoice, said };
  if (shared || saidAgain.has(intent.kind)) return again;
  if (intent.kind === 'value' || intent.kind === 'ambiguousValue')
    return { ...understanding, certainty: 'unsure', why: doubts.ownVoice };
  return certainty === 'sure' ? understanding : again;
};
