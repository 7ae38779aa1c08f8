import { z } from 'zod';

/** What the server says is the bay's open job, and how far it is there. */
export interface StoredJob {
  readonly id: string;
  readonly seq: number;
}

const answerSchema = z.object({ job: z.object({ id: z.string(), seq: z.number() }).nullable() });

type Listener = (job: StoredJob) => void;
const listeners = new Set<Listener>();
let silence: string | undefined;

/** Calls back when the server was asked how far the job is; the answer ends that. */
export const onStoredJob = (listener: Listener): (() => void) => {
  listeners.add(listener);
  return () => {
    listeners.delete(listener);
  };
};

/** Why nobody can be heard at this kiosk, for the wall; undefined while somebody can, or it is not to listen. */
export const setSilence = (why: string | undefined): void => {
  silence = why?.slice(0, 200);
};

/** Tells the server that this kiosk is there. That it could not be told shows at the server by itself. */
export const signalPresence = async (bay: string): Promise<void> => {
  try {
    const response = await fetch(`/api/bays/${bay}/presence`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(silence === undefined ? {} : { cannotBeHeard: silence }),
    });
    const answer = answerSchema.safeParse(await response.json());
    if (!answer.success || answer.data.job === null) return;
    for (const listener of listeners) listener(answer.data.job);
  } catch {
    return; // cut off: the wall says so, and the next sign comes soon
  }
};
