import type { JobEvent } from '../job';
import type { Revision } from '../procedure';
import { firstBreak, headOf, type Break, type Store } from '../store';
import { recordSoFar } from '../store/record-so-far';
import { replaySlowly, type Timeline } from '../timeline';

/** A job's record, replayed, with what its chain says. */
export interface JobStory {
  readonly job: string;
  readonly timeline: Timeline;
  /** How many events are stored, replayed or not. */
  readonly stored: number;
  readonly head: string | undefined;
  /** The first event that is not as it was linked. */
  readonly broken: Break | undefined;
}

/** Stories by job, the ones looked at last. Only a cache: each follows from what is stored. */
export type JobStories = Map<string, JobStory>;

/** So many are kept. */
const most = 6;

interface Library {
  readonly store: Store;
  readonly stories: JobStories;
}

const put = (stories: JobStories, story: JobStory): JobStory => {
  stories.delete(story.job);
  stories.set(story.job, story);
  for (const oldest of stories.keys()) {
    if (stories.size <= most) break;
    stories.delete(oldest);
  }
  return story;
};

/** Gives every other request its turn between two pieces: a long record takes seconds. */
const replay = async (revision: Revision, events: readonly JobEvent[]): Promise<Timeline> => {
  const pieces = replaySlowly(revision, events);
  for (;;) {
    const piece = pieces.next();
    if (piece.done === true) return piece.value;
    await new Promise(setImmediate);
  }
};

/**
 * Reads a job's record and verifies its chain. Where the chain is unbroken and ends as it did when last looked at, the
 * events are the same (that is what it proves), and the replay is not made again. Nothing where there is no such job.
 */
export const readStory = async (
  { store, stories }: Library,
  job: string,
): Promise<JobStory | undefined> => {
  const broken = await firstBreak(store.db, job);
  const head = await headOf(store.db, job);
  const known = stories.get(job);
  if (broken === undefined && known?.broken === undefined && known?.head === head && known) {
    return put(stories, known);
  }
  const record = await recordSoFar(store, job);
  if (record === undefined) return undefined;
  const timeline = await replay(record.revision, record.events);
  return put(stories, { job, timeline, stored: record.stored, head, broken });
};

/** The story as it was last read, where nothing was added since; else it is read. For moving about in one. */
export const storyAtHand = async (library: Library, job: string): Promise<JobStory | undefined> => {
  const known = library.stories.get(job);
  return known !== undefined && known.head === (await headOf(library.store.db, job))
    ? known
    : readStory(library, job);
};
