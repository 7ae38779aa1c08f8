import type { JobEvent } from '@/lib/job';
import type { SetAside } from '@/lib/outbox';
import type { Revision } from '@/lib/procedure';
import { ok } from '@/lib/result';
import type { KeptBay, KeptClip, KioskDisk } from './disk';

/** Stands in where the browser keeps nothing: the queue works, and is gone with the page. */
export const memoryDisk = (): KioskDisk => {
  const bays = new Map<string, KeptBay>();
  const revisions = new Map<string, Revision>();
  const stored = new Map<string, JobEvent>();
  const waiting = new Map<string, JobEvent>();
  const aside = new Map<string, SetAside>();
  const clips = new Map<string, KeptClip>();
  const of = (events: ReadonlyMap<string, JobEvent>, job: string): readonly JobEvent[] =>
    [...events.values()].filter((event) => event.job === job).toSorted((a, b) => a.seq - b.seq);
  const replace = (old: readonly JobEvent[], events: readonly JobEvent[]): void => {
    for (const { id } of old) waiting.delete(id);
    for (const event of events) waiting.set(event.id, event);
  };
  const store = (events: readonly JobEvent[]): void => {
    for (const event of events) {
      stored.set(event.id, event);
      waiting.delete(event.id);
    }
  };
  const done = Promise.resolve();
  return {
    keepBay: (bay) => {
      bays.set(bay.bay, bay);
      return done;
    },
    readBay: (bay) => Promise.resolve(ok(bays.get(bay))),
    keepRecord: (job, { revision, events }) => {
      revisions.set(job, revision);
      store(events);
      return done;
    },
    readJob: (job) => {
      const revision = revisions.get(job);
      const record = revision === undefined ? undefined : { revision, events: of(stored, job) };
      return Promise.resolve(ok({ record, waiting: of(waiting, job) }));
    },
    keepWaiting: (events) => {
      replace([], events);
      return done;
    },
    keepStored: (events) => {
      store(events);
      return done;
    },
    keepInstead: (old, events) => {
      replace(old, events);
      return done;
    },
    putAside: (one, instead) => {
      aside.set(one.id, one);
      replace(one.mine, instead);
      return done;
    },
    keepClip: (clip) => {
      clips.set(clip.id, clip);
      return done;
    },
    readClips: () => Promise.resolve([...clips.values()]),
    dropClip: (id) => {
      clips.delete(id);
      return done;
    },
    readAside: () => Promise.resolve(ok([...aside.values()])),
  };
};
