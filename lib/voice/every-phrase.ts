import type { VoiceContext } from './intent';
import { phraseTable, rowKind } from './phrase-table';

/** Everything may be said: for trying recordings, not for a kiosk. */
export const everyPhrase: VoiceContext = {
  intents: [...new Set(phraseTable.map(rowKind))],
  labels: Array.from({ length: 40 }, (_, index) => String(index + 1)),
  steps: 99,
};
