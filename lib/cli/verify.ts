import { existsSync } from 'node:fs';
import { readSettings } from '../config';
import { openStore, verifyAll } from '../store';
import { databaseFile } from '../store/files';

/** `npm run verify`: names what is wrong with the stored record, and fails when anything is. */
const main = async (): Promise<void> => {
  const settings = readSettings(process.env, process.cwd());
  if (!settings.ok) throw new Error(settings.error);
  const file = databaseFile(settings.value.dataFolder);
  if (!existsSync(file)) throw new Error(`There is no database ${file} to look at.`);
  const store = await openStore(file);
  if (!store.ok) throw new Error(store.error);
  const { jobs, events, breaks } = await verifyAll(store.value.db);
  await store.value.close();
  for (const { message } of breaks) console.error(message);
  console.log(
    `${events} events of ${jobs} jobs: ` +
      (breaks.length === 0 ? 'every chain holds' : `${breaks.length} broken`),
  );
  if (breaks.length > 0) process.exitCode = 1;
};

main().catch((error: unknown) => {
  console.error(error instanceof Error ? error.message : String(error));
  process.exitCode = 1;
});
