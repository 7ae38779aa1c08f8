import { resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { readSettings } from '../config';
import { restore } from '../store/backup';
import { reportLines } from './verify-report';
import { errorText } from '../result';

const usage =
  'npm run restore -- BACKUP [--force]: puts the backup BACKUP into the data folder; --force puts what is there aside';

const readWish = (args: readonly string[]): { from: string; replace: boolean } => {
  try {
    const { values, positionals } = parseArgs({
      args: [...args],
      options: { force: { type: 'boolean', default: false } },
      allowPositionals: true,
    });
    const [from, ...more] = positionals;
    if (from !== undefined && more.length === 0)
      return { from: resolve(from), replace: values.force };
  } catch {
    // An option that there is not: the usage says which there are.
  }
  throw new Error(usage);
};

/** `npm run restore`: the server must be stopped. */
const main = async (): Promise<void> => {
  const { from, replace } = readWish(process.argv.slice(2));
  const settings = readSettings(process.env, process.cwd());
  if (!settings.ok) throw new Error(settings.error);
  const { dataFolder } = settings.value;
  const done = await restore(from, dataFolder, { replace, now: new Date() });
  if (!done.ok) throw new Error(done.error);
  const { checked, aside } = done.value;
  for (const line of checked.faults) console.error(line);
  for (const line of reportLines(checked)) console.log(line);
  console.log(`Restored to ${dataFolder}. Start the server: npm start`);
  if (aside !== undefined) console.log(`What was there before is ${aside}`);
  if (checked.faults.length > 0) process.exitCode = 1;
};

main().catch((error: unknown) => {
  console.error(errorText(error));
  process.exitCode = 1;
});
