import { askedGroup, jobEventSchema } from '../job';
import { cyclesSinceCalibration, type ToolUse } from '../metrology';
import type { Revision } from '../procedure';
import type { TorqueTool } from '../shop';
import { readRevision } from './procedures';
import type { Reader } from './reader';

/** Every use of a torque tool that a reading records. */
const toolUses = async (db: Reader): Promise<readonly ToolUse[]> => {
  const rows = await db
    .selectFrom('job_events')
    .innerJoin('jobs', 'jobs.id', 'job_events.job')
    .select(['job_events.event', 'jobs.procedure', 'jobs.revision'])
    .where('job_events.type', '=', 'readingTaken')
    .execute();
  const revisions = new Map<string, Revision | undefined>();
  const uses: ToolUse[] = [];
  for (const row of rows) {
    const { happening, at } = jobEventSchema.parse(JSON.parse(row.event));
    if (happening.type !== 'readingTaken' || happening.tool === undefined) continue;
    const key = `${row.procedure} ${String(row.revision)}`;
    if (!revisions.has(key))
      revisions.set(key, await readRevision(db, row.procedure, row.revision));
    const revision = revisions.get(key);
    const group =
      revision === undefined || happening.fastener !== undefined
        ? undefined
        : askedGroup(revision, happening.step, happening.ask);
    uses.push({ tool: happening.tool, at, fasteners: group?.fasteners.length ?? 1 });
  }
  return uses;
};

/** How often each tool was used since its calibration, by tool id. */
export const toolCycles = async (
  db: Reader,
  tools: readonly TorqueTool[],
): Promise<Readonly<Record<string, number>>> => {
  const uses = await toolUses(db);
  return Object.fromEntries(tools.map((tool) => [tool.id, cyclesSinceCalibration(tool, uses)]));
};
