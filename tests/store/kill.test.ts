import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { jobLog, jobView } from '@/lib/store';
import { freshStore, opens } from './fresh-store';
import { held, jobId, opened, resumed } from './small-shop';

const writer = fileURLToPath(new URL('killed-writer.ts', import.meta.url));

test(
  'a server killed while it writes has lost nothing that it acknowledged, and the job goes on',
  { timeout: 60_000 },
  async () => {
    const { store, log, file } = await freshStore();
    await log.append(jobId(1), [opened(1)]);
    await store.close();

    const child = spawn(process.execPath, ['--import', 'tsx', writer, file], {
      stdio: ['ignore', 'pipe', 'inherit'],
    });
    const ended = once(child, 'exit');
    let acknowledged = 0;
    for await (const line of createInterface({ input: child.stdout })) {
      acknowledged = Number(line);
      if (acknowledged === 60) child.kill('SIGKILL');
    }
    expect(await ended).toEqual([null, 'SIGKILL']);
    expect(acknowledged).toBeGreaterThanOrEqual(60);

    const again = await opens(file);
    const events = (await jobView(again, jobId(1)))?.events ?? [];
    expect(events.length).toBeGreaterThanOrEqual(acknowledged);
    expect(events.map((event) => event.seq)).toEqual(events.map((_, index) => index + 1));
    const next = events.length + 1;
    const more = next % 2 === 0 ? held(1, next) : resumed(1, next);
    expect(await jobLog(again, () => new Date()).append(jobId(1), [more])).toMatchObject({
      ok: true,
    });
    await again.close();
  },
);
