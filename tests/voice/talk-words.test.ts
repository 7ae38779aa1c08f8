import { expect, test } from 'vitest';
import { letters, talkWords } from '@/lib/voice/talk-words';

// Words that sound the same in CMUdict, spelled as in phrases and numbers on the left (checked by hand, from memory).
const soundAlike: Readonly<Record<string, readonly string[]>> = {
  no: ['know'],
  oh: ['o', 'owe'],
  two: ['to', 'too'],
  four: ['for', 'fore'],
  one: ['won'],
  eight: ['ate'],
};

test('no word of talk sounds like a word that is a phrase or a number', () => {
  const alike = ['no', 'oh', 'two', 'four', 'one', 'eight'].flatMap(
    (word) => soundAlike[word] ?? [],
  );
  expect([...letters, ...talkWords].filter((word) => alike.includes(word))).toEqual([]);
});
