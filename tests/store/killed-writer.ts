import { jobLog, openStore } from '@/lib/store';
import { held, jobId, resumed } from './small-shop';

/** Run as a program: writes events to job 1 without end and prints each number once it is acknowledged. */
const store = await openStore(process.argv[2] ?? '');
if (!store.ok) throw new Error(store.error);
const log = jobLog(store.value, () => new Date());
for (let seq = 2; ; seq += 1) {
  const stored = await log.append(jobId(1), [seq % 2 === 0 ? held(1, seq) : resumed(1, seq)]);
  if (!stored.ok) throw new Error(JSON.stringify(stored.error));
  process.stdout.write(`${stored.value.seq}\n`);
}
