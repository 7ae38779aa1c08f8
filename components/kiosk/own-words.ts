import { phraseTable, type Intent, type PersonalVoice } from '@/lib/voice';

/** The words that whoever is signed on has chosen for an intent. */
export const ownWordsFor = (intent: Intent, voice: PersonalVoice | undefined): string | undefined =>
  voice?.own.find((own) => JSON.stringify(own.intent) === JSON.stringify(intent))?.say;

/** A phrase that the screen names, in the words of whoever is signed on. */
export const inOwnWords = (phrase: string, voice: PersonalVoice | undefined): string => {
  const row = phraseTable.find((one) => one.say[0] === phrase);
  return row === undefined || !('intent' in row)
    ? phrase
    : (ownWordsFor(row.intent, voice) ?? phrase);
};
