import { openDB, type DBSchema, type IDBPDatabase } from 'idb';
import { z } from 'zod';
import { jobEventSchema, type JobEvent } from '@/lib/job';
import type { SetAside } from '@/lib/outbox';
import { personSchema } from '@/lib/people';
import { revisionSchema } from '@/lib/procedure';
import { err, ok, type Result } from '@/lib/result';
import type { KeptClip, KioskDisk } from './disk';

const eventsSchema = z.array(jobEventSchema);
const baySchema = z.object({
  bay: z.string(),
  job: z.string().optional(),
  signedOn: z.object({ person: personSchema, device: z.string() }).optional(),
});
const asideSchema = z.object({
  id: z.uuid(),
  job: z.uuid(),
  name: z.string(),
  at: z.string(),
  by: z.string(),
  mine: eventsSchema,
  theirs: eventsSchema,
  message: z.string().optional(),
});

/** What lies on the disk is read as unknown: another version of the app may have written it. */
interface Schema extends DBSchema {
  bays: { key: string; value: unknown };
  /** The procedure of each job, by the job's id. */
  jobs: { key: string; value: unknown };
  stored: { key: string; value: unknown; indexes: { job: string } };
  waiting: { key: string; value: unknown; indexes: { job: string } };
  aside: { key: string; value: unknown };
  clips: { key: string; value: KeptClip };
}

const version = 1;

const openDatabase = (name: string): Promise<IDBPDatabase<Schema>> =>
  openDB<Schema>(name, version, {
    upgrade: (db) => {
      db.createObjectStore('bays');
      db.createObjectStore('jobs');
      db.createObjectStore('stored').createIndex('job', 'job');
      db.createObjectStore('waiting').createIndex('job', 'job');
      db.createObjectStore('aside');
      db.createObjectStore('clips');
    },
    // A newer version of the app wants to change the stores: what is written lies there already.
    blocking: (_, __, { target }) => {
      if (target instanceof IDBDatabase) target.close();
    },
  });

const strict = { durability: 'strict' } as const;

const unreadable =
  'What this kiosk kept of the job cannot be read. It is still there: do not clear the browser, and call whoever looks after it.';

const parsed = <T>(schema: z.ZodType<T>, value: unknown): Result<T, string> => {
  const read = schema.safeParse(value);
  return read.success ? ok(read.data) : err(unreadable);
};

const inOrder = (events: readonly JobEvent[]): readonly JobEvent[] =>
  events.toSorted((a, b) => a.seq - b.seq || (a.id < b.id ? -1 : 1));

/** The kiosk's disk as an IndexedDB database. Opening it fails where the browser keeps nothing. */
export const openKioskDisk = async (name = 'baycall-kiosk'): Promise<KioskDisk> => {
  const db = await openDatabase(name);

  /** Forgets the records of jobs that are on no kiosk of this browser and wait for nothing. */
  const tidy = async (): Promise<void> => {
    const change = db.transaction(['bays', 'jobs', 'stored', 'waiting'], 'readwrite');
    const bays = z.array(baySchema).safeParse(await change.objectStore('bays').getAll());
    if (!bays.success) return;
    const onScreen = new Set(bays.data.map(({ job }) => job));
    for (const job of await change.objectStore('jobs').getAllKeys()) {
      if (onScreen.has(job)) continue;
      if ((await change.objectStore('waiting').index('job').count(job)) > 0) continue;
      await change.objectStore('jobs').delete(job);
      const stored = change.objectStore('stored');
      for (const key of await stored.index('job').getAllKeys(job)) await stored.delete(key);
    }
    await change.done;
  };

  return {
    keepBay: async (bay) => {
      await db.put('bays', bay, bay.bay);
      await tidy();
    },
    readBay: async (bay) => parsed(baySchema.optional(), await db.get('bays', bay)),
    keepRecord: async (job, { revision, events }) => {
      const change = db.transaction(['jobs', 'stored', 'waiting'], 'readwrite', strict);
      await change.objectStore('jobs').put(revision, job);
      for (const event of events) {
        await change.objectStore('stored').put(event, event.id);
        await change.objectStore('waiting').delete(event.id);
      }
      await change.done;
    },
    readJob: async (job) => {
      const look = db.transaction(['jobs', 'stored', 'waiting']);
      const revisionThere = await look.objectStore('jobs').get(job);
      const storedThere = await look.objectStore('stored').index('job').getAll(job);
      const waitingThere = await look.objectStore('waiting').index('job').getAll(job);
      const waiting = parsed(eventsSchema, waitingThere);
      if (!waiting.ok) return waiting;
      const revision = revisionSchema.safeParse(revisionThere);
      const stored = eventsSchema.safeParse(storedThere);
      return ok({
        // The store has these; without them the job is only not shown until the server is back.
        record:
          revision.success && stored.success
            ? { revision: revision.data, events: inOrder(stored.data) }
            : undefined,
        waiting: inOrder(waiting.value),
      });
    },
    keepWaiting: async (events) => {
      const change = db.transaction('waiting', 'readwrite', strict);
      for (const event of events) await change.store.put(event, event.id);
      await change.done;
    },
    keepStored: async (events) => {
      const change = db.transaction(['stored', 'waiting'], 'readwrite', strict);
      for (const event of events) {
        await change.objectStore('stored').put(event, event.id);
        await change.objectStore('waiting').delete(event.id);
      }
      await change.done;
    },
    keepInstead: async (of, events) => {
      const change = db.transaction('waiting', 'readwrite', strict);
      for (const { id } of of) await change.store.delete(id);
      for (const event of events) await change.store.put(event, event.id);
      await change.done;
    },
    putAside: async (aside, instead) => {
      const change = db.transaction(['aside', 'waiting'], 'readwrite', strict);
      await change.objectStore('aside').put(aside, aside.id);
      for (const { id } of aside.mine) await change.objectStore('waiting').delete(id);
      for (const event of instead) await change.objectStore('waiting').put(event, event.id);
      await change.done;
    },
    keepClip: async (clip) => {
      await db.put('clips', clip, clip.id);
    },
    readClips: () => db.getAll('clips'),
    dropClip: (id) => db.delete('clips', id),
    readAside: async () => {
      const read = parsed(z.array(asideSchema), await db.getAll('aside'));
      return read.ok
        ? ok<readonly SetAside[]>(
            read.value.map(({ message, ...aside }) =>
              message === undefined ? aside : { ...aside, message },
            ),
          )
        : read;
    },
  };
};
