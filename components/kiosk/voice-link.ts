import { z } from 'zod';
import { keptPracticeSchema, type KeptPractice, type PracticeRecord } from '@/lib/practice';
import { err, ok, type Result } from '@/lib/result';
import { baySchema, type Bay } from '@/lib/shop';
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

const problemSchema = z.object({ error: z.object({ message: z.string() }) });
const practicesSchema = z.object({ practices: z.array(keptPracticeSchema) });
const bayAnswerSchema = z.object({ bay: baySchema });

const unreachable = 'The server cannot be reached. Try again.';

const send = async (
  path: string,
  method: 'GET' | 'POST' | 'PUT',
  body?: unknown,
): Promise<Result<unknown, string>> => {
  try {
    const response = await fetch(path, {
      method,
      ...(body === undefined
        ? {}
        : { headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) }),
    });
    const content: unknown = await response.json();
    if (response.ok) return ok(content);
    const problem = problemSchema.safeParse(content);
    return err(
      problem.success ? problem.data.error.message : `The server answered with ${response.status}.`,
    );
  } catch {
    return err(unreachable); // cut off, or an answer that is none of ours
  }
};

const read = <T>(sent: Result<unknown, string>, schema: z.ZodType<T>): Result<T, string> => {
  if (!sent.ok) return sent;
  const parsed = schema.safeParse(sent.value);
  return parsed.success ? ok(parsed.data) : err('The server’s answer was not understood.');
};

/** The shop's server as this browser reaches it. */
export const voiceLink: VoiceLink = {
  model: async () => {
    const facts = await modelFacts('/hearing');
    return facts.ok ? ok(facts.value.name) : err('Which speech model is used cannot be found out.');
  },
  practices: async () => {
    const answer = read(await send('/api/practice', 'GET'), practicesSchema);
    return answer.ok ? ok(answer.value.practices) : answer;
  },
  keep: async (practice) => {
    const sent = await send('/api/practice', 'POST', practice);
    return sent.ok ? ok(undefined) : sent;
  },
  setCallWord: async (bay, word) => {
    const sent = await send(`/api/bays/${bay}/call-word`, 'PUT', { callWord: word ?? null });
    const answer = read(sent, bayAnswerSchema);
    return answer.ok ? ok(answer.value.bay) : answer;
  },
};
