import { join, resolve } from 'node:path';
import { readSettings } from '../config';
import { backUp } from '../store/backup';
import { reportLines } from './verify-report';
import { errorText } from '../result';

const usage =
  'npm run backup [-- FOLDER]: makes a backup of the data folder as a new folder in FOLDER';

/** `npm run backup`: the server may go on meanwhile. */
const main = async (): Promise<void> => {
  const [where, ...more] = process.argv.slice(2);
  if (more.length > 0 || where?.startsWith('-') === true) throw new Error(usage);
  const settings = readSettings(process.env, process.cwd());
  if (!settings.ok) throw new Error(settings.error);
  const { dataFolder } = settings.value;
  const name = `baycall-${new Date().toISOString().slice(0, 19).replaceAll(':', '-')}Z`;
  const to = join(where === undefined ? join(dataFolder, 'backups') : resolve(where), name);
  const made = await backUp(dataFolder, to);
  if (!made.ok) throw new Error(made.error);
  for (const line of made.value.faults) console.error(line);
  if (made.value.faults.length > 0)
    throw new Error('What is there now is not whole, so no backup was made: keep the older ones.');
  for (const line of reportLines(made.value)) console.log(line);
  console.log(`Backed up and checked: ${to}`);
  console.log(`To put it back, stop the server and run: npm run restore -- ${to}`);
  if (where === undefined) console.log('Keep a copy of it on another disk than this one.');
};

main().catch((error: unknown) => {
  console.error(errorText(error));
  process.exitCode = 1;
});
