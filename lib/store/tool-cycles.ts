import { setImmediate } from 'node:timers/promises';
import { z } from 'zod';
import { askedGroup } from '../job';
import { cyclesSinceCalibration, type ToolUse } from '../metrology';
import type { Revision } from '../procedure';
import type { TorqueTool } from '../shop';
import { readRevision } from './procedures';
import type { Reader } from './reader';

/** What a stored reading says of the use of a tool. */
const useSchema = z.object({
  at: z.string(),
  happening: z.object({
    step: z.string(),
    ask: z.string(),
    fastener: z.string().optional(),
    tool: z.object({ id: z.string() }).optional(),
  }),
});

/** How many fasteners each tool tightened on each day, up to the event that arrived as `entry`. */
interface Counted {
  entry: number;
  readonly days: Map<
    string,
    { readonly tool: { readonly id: string }; at: string; fasteners: number }
  >;
  /** The count goes on one caller after another. */
  counting: Promise<void>;
}

/** Only a cache: it follows from the events, which are only added to. */
const countedIn = new WeakMap<Reader, Counted>();

const readingsAfter = (db: Reader, entry: number, upTo: number) =>
  db
    .selectFrom('job_events')
    .innerJoin('jobs', 'jobs.id', 'job_events.job')
    .select(['job_events.event', 'jobs.procedure', 'jobs.revision'])
    .where('job_events.entry', '>', entry)
    .where('job_events.entry', '<=', upTo)
    .where('job_events.type', '=', 'readingTaken')
    .execute();

type Row = Awaited<ReturnType<typeof readingsAfter>>[number];

const countOne = (counted: Counted, row: Row, revision: Revision | undefined): void => {
  const { happening, at } = useSchema.parse(JSON.parse(row.event));
  if (happening.tool === undefined) return;
  const group =
    revision === undefined || happening.fastener !== undefined
      ? undefined
      : askedGroup(revision, happening.step, happening.ask);
  const day = at.slice(0, 10);
  const key = `${day} ${happening.tool.id}`;
  const there = counted.days.get(key) ?? { tool: happening.tool, at: day, fasteners: 0 };
  there.fasteners += Math.max(1, group?.fasteners.length ?? 1);
  counted.days.set(key, there);
};

/** So many events are looked at before others get their turn. */
const together = 20_000;

const countOn = async (db: Reader, counted: Counted): Promise<void> => {
  const newest = await db
    .selectFrom('job_events')
    .select((one) => one.fn.max('entry').as('entry'))
    .executeTakeFirst();
  const last = newest?.entry ?? 0;
  const revisions = new Map<string, Revision | undefined>();
  while (counted.entry < last) {
    const upTo = Math.min(last, counted.entry + together);
    for (const row of await readingsAfter(db, counted.entry, upTo)) {
      const key = `${row.procedure} ${String(row.revision)}`;
      if (!revisions.has(key))
        revisions.set(key, await readRevision(db, row.procedure, row.revision));
      countOne(counted, row, revisions.get(key));
    }
    counted.entry = upTo;
    if (upTo < last) await setImmediate();
  }
};

/** Every use of a torque tool that a reading records, those of one day together. */
const toolUses = async (db: Reader): Promise<Iterable<ToolUse>> => {
  const counted = countedIn.get(db) ?? {
    entry: 0,
    days: new Map<string, never>(),
    counting: Promise.resolve(),
  };
  countedIn.set(db, counted);
  const counting = counted.counting.then(() => countOn(db, counted));
  // Who comes next tries again where this one failed.
  counted.counting = counting.catch(() => undefined);
  await counting;
  return counted.days.values();
};

/** How often each tool was used since its calibration, by tool id. */
export const toolCycles = async (
  db: Reader,
  tools: readonly TorqueTool[],
): Promise<Readonly<Record<string, number>>> => {
  const uses = [...(await toolUses(db))];
  return Object.fromEntries(tools.map((tool) => [tool.id, cyclesSinceCalibration(tool, uses)]));
};
