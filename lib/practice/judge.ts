import { doubts, unknownWord, type OwnPhrase, type Understanding } from '../voice';
import { meaningOf } from './own-phrase';
import type { Try } from './record';

/** Key order says nothing. */
const text = (value: object): string => JSON.stringify(Object.entries(value).sort());

/** Without the unknown sounds around them. */
const wordsOf = (heard: string): string =>
  heard
    .split(' ')
    .filter((word) => word !== unknownWord)
    .join(' ');

/**
 * What one try was; undefined where it counts for nothing: mere noise, or a tool that hid it, which says nothing of the
 * voice.
 */
export const judgeTry = (
  say: string,
  understanding: Understanding,
  own: readonly OwnPhrase[] = [],
): Try | undefined => {
  const heard = understanding.said.trim().slice(0, 200);
  if (wordsOf(heard) === '') return undefined;
  if (understanding.kind === 'nothing')
    return understanding.why === doubts.tool ? undefined : { as: 'nothing', heard, confidence: 0 };
  const tried = own.find((phrase) => phrase.say === say);
  const meant = tried?.intent ?? meaningOf(say);
  const confidence = Math.min(1, Math.max(0, understanding.confidence));
  // Words of one's own must be heard themselves: what everybody says for the same proves nothing of them.
  const itself = tried === undefined || wordsOf(heard) === say;
  const right = itself && meant !== undefined && text(understanding.intent) === text(meant);
  const as = !right ? 'other' : understanding.certainty === 'sure' ? 'right' : 'unclear';
  return { as, heard, confidence };
};
