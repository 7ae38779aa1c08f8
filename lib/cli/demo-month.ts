import { mkdir } from 'node:fs/promises';
import { parseArgs } from 'node:util';
import { z } from 'zod';
import { demoShop } from '../../demo';
import { demoMonth, type MonthWish } from '../../demo/month';
import { readSettings } from '../config';
import { err, ok, type Result } from '../result';
import { openStore, readShop } from '../store';
import { addClosedJobs } from '../store/closed-jobs';
import { databaseFile } from '../store/files';
import { seedDemo } from './seed-demo';

const usage = 'npm run demo:month -- [--seed TEXT] [--until 2026-03-31] [--days 30]';

const wishSchema = z.object({
  seed: z.string().min(1),
  until: z.iso.date(),
  days: z.coerce.number().int().min(1).max(366),
});

const readWish = (args: readonly string[], today: string): Result<MonthWish, string> => {
  const text = { type: 'string' } as const;
  try {
    const { values } = parseArgs({
      args: [...args],
      options: {
        seed: { ...text, default: '1' },
        until: { ...text, default: today },
        days: { ...text, default: '30' },
      },
    });
    const wish = wishSchema.safeParse(values);
    return wish.success ? ok(wish.data) : err(usage);
  } catch {
    return err(usage);
  }
};

/** Adds the month to the demo shop in the data folder, which is made where there is none yet. One line for the person. */
const addMonth = async (): Promise<Result<string, string>> => {
  const now = new Date();
  const wish = readWish(process.argv.slice(2), now.toISOString().slice(0, 10));
  if (!wish.ok) return wish;
  const settings = readSettings(process.env, process.cwd());
  if (!settings.ok) return settings;
  const { dataFolder } = settings.value;
  await mkdir(dataFolder, { recursive: true, mode: 0o700 });
  const store = await openStore(databaseFile(dataFolder));
  if (!store.ok) return store;
  try {
    await seedDemo(store.value, now);
    const shop = await readShop(store.value);
    if (shop?.name !== demoShop(wish.value.until).name)
      return err(`${dataFolder} holds another shop than the demo: nothing was added.`);
    const month = demoMonth(wish.value);
    const done = await addClosedJobs(store.value, month, now);
    if (!done.ok) return done;
    const { added, there } = done.value;
    const events = month.reduce((sum, job) => sum + job.length, 0);
    return ok(
      `${added} closed jobs added, ${there} were there already; ${events} events in ${wish.value.days} days before ${wish.value.until}.`,
    );
  } finally {
    await store.value.close();
  }
};

const done = await addMonth();
if (done.ok) console.log(done.value);
else {
  console.error(done.error);
  process.exitCode = 1;
}
