import { readFileSync } from 'node:fs';
import { grammarFor, everyPhrase } from '@/lib/voice';
import { SpokenJob } from '@/tests/demo/spoken-job';
import { parseScript } from '../../script';

const read = (name: string): string =>
  readFileSync(new URL(`../${name}`, import.meta.url), 'utf8').trim();

const job = new SpokenJob();
const grammars = new Map<string, readonly string[] | null>();
for (const line of parseScript(read('whole-job.tsv'))) {
  if (line.file !== '')
    grammars.set(line.file, line.how === 'dictation' ? null : grammarFor(job.context));
  job.take(line);
}
for (const line of read('index.tsv').split('\n').slice(1))
  grammars.set(line.split('\t')[0] ?? '', grammarFor(everyPhrase));

process.stdout.write(JSON.stringify(Object.fromEntries(grammars)));
