import { fork } from 'node:child_process';
import { once } from 'node:events';
import { fileURLToPath } from 'node:url';
import { z } from 'zod';

const lookedSchema = z.object({
  events: z.number(),
  acknowledged: z.number(),
  /** Acknowledged, and not stored as it was sent. */
  lost: z.number(),
  /** Of the chains and anchors. */
  faults: z.array(z.string()),
  anchors: z.number(),
  /** Stands for all that no kiosk may change. */
  fixed: z.string(),
});
export type Looked = z.infer<typeof lookedSchema>;

const program = fileURLToPath(new URL('check.ts', import.meta.url));

/** Looks at a shop's record from outside of its server. */
export const look = async (folder: string, acknowledged: string): Promise<Looked> => {
  const child = fork(program, [folder, acknowledged], {
    execArgv: ['--import', 'tsx'],
    cwd: fileURLToPath(new URL('../../..', import.meta.url)),
  });
  const exit = once(child, 'exit').then(([code]) => {
    throw new Error(`the record could not be looked at (${String(code)})`);
  });
  const told = (await Promise.race([once(child, 'message'), exit])) as readonly unknown[];
  exit.catch(() => undefined); // it ends by itself afterwards
  if (child.connected) child.disconnect();
  return lookedSchema.parse(told[0]);
};
