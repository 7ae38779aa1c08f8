import { existsSync } from 'node:fs';
import { readSettings } from '../config';
import { openStore, verifyAll, type Store } from '../store';
import { databaseFile } from '../store/files';
import { reportLines } from './verify-report';
import { errorText } from '../result';

/** Whether anchors that somebody wrote down are still those of the record. */
const keptAnchors = async ({ db }: Store, hashes: readonly string[]) => {
  const lines: string[] = [];
  const faults: string[] = [];
  for (const hash of hashes) {
    const found = await db
      .selectFrom('anchors')
      .select('day')
      .where('hash', '=', hash.toLowerCase())
      .executeTakeFirst();
    if (found === undefined) faults.push(`No anchor is ${hash}: the record was rewritten since.`);
    else lines.push(`The anchor of ${found.day} is the one that was kept.`);
  }
  return { lines, faults };
};

/**
 * `npm run verify [-- ANCHOR…]`: names what is wrong with the stored record, also held against anchors that were kept
 * elsewhere, and fails when anything is.
 */
const main = async (): Promise<void> => {
  const settings = readSettings(process.env, process.cwd());
  if (!settings.ok) throw new Error(settings.error);
  const file = databaseFile(settings.value.dataFolder);
  if (!existsSync(file)) throw new Error(`There is no database ${file} to look at.`);
  const store = await openStore(file);
  if (!store.ok) throw new Error(store.error);
  const seen = await verifyAll(store.value.db);
  const kept = await keptAnchors(store.value, process.argv.slice(2));
  await store.value.close();
  const faults = [...seen.faults, ...kept.faults];
  for (const line of faults) console.error(line);
  for (const line of [...reportLines(seen), ...kept.lines]) console.log(line);
  if (faults.length > 0) process.exitCode = 1;
};

main().catch((error: unknown) => {
  console.error(errorText(error));
  process.exitCode = 1;
});
