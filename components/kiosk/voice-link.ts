import { z } from 'zod';
import { keptPracticeSchema, type KeptPractice, type PracticeRecord } from '@/lib/practice';
import { err, ok, type Result } from '@/lib/result';
import { baySchema, type Bay } from '@/lib/shop';
import { ask, contentOf, readAs, send } from '../link/ask';
import { modelFacts } from '../microphone/model-facts';

/** What the shop's server knows of the voices of its people. Errors are one sentence for the screen. */
export interface VoiceLink {
  /** The speech model that the kiosks listen with. */
  readonly model: () => Promise<Result<string, string>>;
  /** The newest practice with each model of whoever is signed on. */
  readonly practices: () => Promise<Result<readonly KeptPractice[], string>>;
  readonly keep: (practice: PracticeRecord) => Promise<Result<void, string>>;
  /** Sets by which word a bay's kiosk is called; undefined: by none. */
  readonly setCallWord: (bay: string, word: Bay['callWord']) => Promise<Result<Bay, string>>;
}

const practicesSchema = z.object({ practices: z.array(keptPracticeSchema) });
const bayAnswerSchema = z.object({ bay: baySchema });

const unreachable = 'The server cannot be reached. Try again.';

/** The shop's server as this browser reaches it. */
export const voiceLink: VoiceLink = {
  model: async () => {
    const facts = await modelFacts('/hearing');
    return facts.ok ? ok(facts.value.name) : err('Which speech model is used cannot be found out.');
  },
  practices: async () => {
    const content = contentOf(await ask('/api/practice', { method: 'GET' }), unreachable);
    const answer = readAs(content, practicesSchema);
    return answer.ok ? ok(answer.value.practices) : answer;
  },
  keep: async (practice) => {
    const content = contentOf(await send('POST', '/api/practice', practice), unreachable);
    return content.ok ? ok(undefined) : content;
  },
  setCallWord: async (bay, word) => {
    const sent = await send('PUT', `/api/bays/${bay}/call-word`, { callWord: word ?? null });
    const answer = readAs(contentOf(sent, unreachable), bayAnswerSchema);
    return answer.ok ? ok(answer.value.bay) : answer;
  },
};
