import type { Step } from '../procedure';
import { stands } from './asks';
import type { Fitted } from './effects';
import type { Answer, EntryStatus, JobState, Reading } from './state';

/** The entries, those meant with another status. */
export const marked = <T extends Reading | Answer>(
  entries: readonly T[],
  which: (entry: T) => boolean,
  status: EntryStatus,
): readonly T[] => entries.map((entry) => (which(entry) ? { ...entry, status } : entry));

/** How parts were chosen in a step: by the answers that stand. Without one, the safe reading is: the same again. */
export const chosenIn =
  (state: JobState, step: Step): Fitted =>
  (part) => {
    const asked = step.asks.find((ask) => ask.kind === 'choice' && ask.part === part);
    const given = state.answers.find(
      (answer) => answer.step === step.id && answer.ask === asked?.id && stands(answer),
    );
    return given?.answer.kind === 'choice' && given.answer.option === 'replaced' ? 'new' : 'reused';
  };
