import { readdirSync, readFileSync, statSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { parseScript } from '@/demo/script';
import { unitSchema } from '@/lib/quantity';
import { everyPhrase, matchPhrase } from '@/lib/voice';

const folder = fileURLToPath(new URL('../../demo/voices/', import.meta.url));
const read = (name: string): string => readFileSync(`${folder}${name}`, 'utf8');
const rows = (name: string): string[][] =>
  read(name)
    .trim()
    .split('\n')
    .map((line) => line.split('\t'));

const job = parseScript(read('whole-job.tsv')).filter(({ file }) => file !== '');
const index = rows('index.tsv').slice(1);
const listed = [...job.map(({ file }) => file), ...index.map(([file = '']) => file)];
const onDisk = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) =>
  name.endsWith('.flac'),
);

/** The facts of a FLAC file from its STREAMINFO block (RFC 9639 §8.2). */
const flac = (name: string) => {
  const bytes = readFileSync(`${folder}${name}`);
  const info = bytes.subarray(8, 42);
  return {
    magic: bytes.subarray(0, 4).toString('latin1'),
    hertz: info.readUIntBE(10, 3) >> 4,
    channels: ((info.readUInt8(12) >> 1) & 7) + 1,
    seconds: info.readUInt32BE(14) / (info.readUIntBE(10, 3) >> 4),
  };
};

describe('the recordings', () => {
  test('are exactly those that are listed, each listed once', () => {
    expect([...onDisk].sort()).toEqual([...listed].sort());
    expect(new Set(listed).size).toBe(listed.length);
  });

  test('are 16 kHz mono FLAC of 0.3 to 8 seconds', () => {
    for (const name of onDisk) {
      const { seconds, ...kind } = flac(name);
      expect([name, kind]).toEqual([name, { magic: 'fLaC', hertz: 16_000, channels: 1 }]);
      expect(seconds).toBeGreaterThan(0.3);
      expect(seconds).toBeLessThan(8);
    }
  });

  test('take less than 12 MB together', () => {
    const bytes = onDisk.reduce((sum, name) => sum + statSync(`${folder}${name}`).size, 0);
    expect(bytes).toBeLessThan(12_000_000);
  });

  test('each have a voice in the cast, of an engine that the licence names', () => {
    const cast = [
      ...rows('recipe/whole-job-cast.tsv').slice(1),
      ...rows('recipe/index-cast.tsv').slice(1),
    ];
    expect(cast.map(([file]) => file).sort()).toEqual([...listed].sort());
    const licence = read('LICENCE.md');
    for (const engine of new Set(cast.map(([, voice = '']) => voice.split(':')[0] ?? '')))
      expect(licence.toLowerCase()).toContain(engine);
  });
});

describe('the list of single utterances', () => {
  test('has the columns of a hearing list', () => {
    expect(rows('index.tsv')[0]).toEqual(['file', 'say', 'value', 'unit']);
  });

  test('means the value and unit that stand beside it, or nothing where it is talk', () => {
    const talk: string[] = [];
    for (const [, say = '', value = '', unit = ''] of index) {
      const match = matchPhrase(say.split(' '), everyPhrase);
      if (match.kind === 'none') {
        talk.push(say);
        continue;
      }
      const spoken = match.intent.kind === 'value' ? match.intent : undefined;
      expect([say, spoken?.value, spoken?.unit]).toEqual([
        say,
        value === '' ? undefined : Number(value),
        unit === '' ? undefined : unitSchema.parse(unit),
      ]);
    }
    expect(talk).toEqual([
      'could you turn the radio down please',
      'what is the weather tomorrow',
      'pass me that rag over there',
      'where did you put the ten millimeter spanner',
      'i am going to lunch in five minutes',
      'the customer wants it back before noon',
      'who left the door open',
    ]);
  });

  test('has at least forty of them in at least eight voices', () => {
    expect(index.length).toBeGreaterThanOrEqual(40);
    expect(new Set(index.map(([file = '']) => file.split('/')[0])).size).toBeGreaterThanOrEqual(8);
  });
});
