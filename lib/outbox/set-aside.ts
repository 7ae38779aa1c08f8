import type { Happening, JobEvent, JobState } from '../job';
import { eventWords } from './event-words';
import type { Conflict } from './reconcile';

/** What could not be stored, as it was done, with what is stored instead. It stays on the kiosk for whoever asks. */
export interface SetAside {
  readonly id: string;
  readonly job: string;
  /** "BC 1 · Front cover" */
  readonly name: string;
  readonly at: string;
  /** Who set it aside. */
  readonly by: string;
  readonly mine: readonly JobEvent[];
  readonly theirs: readonly JobEvent[];
  readonly message?: string;
}

/** A reason holds 2000 characters; two stay free for what joins it. */
const mostPerNote = 1_900;

const lead = 'Done at the kiosk, but never stored, because the job had gone on elsewhere: ';

/** The lines, packed into as few texts as hold them whole; a line that is too long alone is cut into pieces. */
const packed = (lines: readonly string[], most: number): readonly string[] => {
  const pieces = lines.flatMap((line) =>
    Array.from({ length: Math.max(1, Math.ceil(line.length / most)) }, (_, at) =>
      line.slice(at * most, (at + 1) * most),
    ),
  );
  const texts: string[] = [];
  for (const piece of pieces) {
    const last = texts.at(-1);
    if (last !== undefined && last.length + 2 + piece.length <= most)
      texts[texts.length - 1] = `${last}; ${piece}`;
    else texts.push(piece);
  }
  return texts;
};

/**
 * Deviations that say in the job what was set aside, so that it stays a loose end until a foreman has looked at it.
 * Empty where the job takes none, since it is closed. `clock` gives the time of day of an instant.
 */
export const notesOf = (
  { job, mine }: Pick<Conflict, 'job' | 'mine'>,
  clock: (instant: string) => string,
): readonly Happening[] => {
  if (job.phase === 'closed') return [];
  const lines = mine.map((event) => `${clock(event.at)} ${eventWords(job.revision, event)}`);
  return packed(lines, mostPerNote - lead.length).map((text) => ({
    type: 'deviationNoted',
    kind: 'anotherWay',
    step: stepOfFirst(mine, job),
    reason: { text: `${lead}${text}` },
  }));
};

const stepOfFirst = (mine: readonly JobEvent[], job: JobState): string => {
  for (const { happening } of mine) if ('step' in happening) return happening.step;
  return job.currentStep;
};
