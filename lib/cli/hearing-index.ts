import { readdir, readFile } from 'node:fs/promises';
import { join, posix, sep } from 'node:path';
import { err, ok, type Result } from '../result';

/** One recording: what is said in it, and the value and unit where one is spoken. */
export interface Recording {
  /** Path within the folder, with forward slashes. */
  readonly file: string;
  readonly say: string;
  readonly value?: number;
  readonly unit?: string;
  /** Sub-folder; `.` for the folder itself. */
  readonly group: string;
  /** Who speaks, where that is known: from a column `voice`, or out of the file's name. */
  readonly voice?: string;
}

export interface RecordingIndex {
  readonly recordings: readonly Recording[];
  /** Lines that could not be read, one text each. */
  readonly problems: readonly string[];
}

const columns = ['file', 'say', 'value', 'unit'] as const;

/** The first group of the pattern that took part in the match. */
const voiceIn = (file: string, pattern: RegExp | undefined): string | undefined => {
  const groups: readonly (string | undefined)[] = pattern?.exec(file)?.slice(1) ?? [];
  return groups.find((group) => group !== undefined);
};

/**
 * Reads the text of an `index.tsv`: tab-separated, with a header that names file, say, value and unit, and maybe voice.
 * `voices`: finds the voice in a file's path where there is no such column.
 */
export const parseIndex = (text: string, voices?: RegExp): Result<RecordingIndex, string> => {
  const [header = '', ...lines] = text.replace(/^\uFEFF/, '').split(/\r?\n/);
  const names = header.split('\t').map((name) => name.trim().toLowerCase());
  const lacking = columns.filter((column) => !names.includes(column));
  if (lacking.length > 0) return err(`the header lacks ${lacking.join(', ')}`);
  const recordings: Recording[] = [];
  const problems: string[] = [];
  for (const [i, line] of lines.entries()) {
    if (line.trim() === '') continue;
    const cells = line.split('\t');
    const cell = (name: string): string => (cells[names.indexOf(name)] ?? '').trim();
    const file = cell('file').replaceAll('\\', '/');
    const value = cell('value');
    const voice = cell('voice') || voiceIn(file, voices);
    if (file === '') problems.push(`line ${i + 2} names no file`);
    else if (value !== '' && !Number.isFinite(Number(value)))
      problems.push(`line ${i + 2}: the value ${JSON.stringify(value)} is no number`);
    else
      recordings.push({
        file,
        say: cell('say').toLowerCase().split(/\s+/).join(' '),
        ...(value === '' ? {} : { value: Number(value) }),
        ...(cell('unit') === '' ? {} : { unit: cell('unit') }),
        group: posix.dirname(file),
        ...(voice === undefined ? {} : { voice }),
      });
  }
  return ok({ recordings, problems });
};

export const readIndex = async (
  folder: string,
  voices?: RegExp,
): Promise<Result<RecordingIndex, string>> => {
  const path = join(folder, 'index.tsv');
  try {
    const parsed = parseIndex(await readFile(path, 'utf8'), voices);
    return parsed.ok ? parsed : err(`${path}: ${parsed.error}.`);
  } catch {
    return err(`${path} cannot be read.`);
  }
};

const soundName = /\.(wav|flac|ogg|oga|opus|webm|mp3|m4a)$/i;

/** All sound files under a folder, by name, with forward slashes. The error is one line. */
export const soundFiles = async (folder: string): Promise<Result<readonly string[], string>> => {
  try {
    const names = await readdir(folder, { recursive: true });
    const found = names
      .filter((name) => soundName.test(name))
      .map((name) => name.replaceAll(sep, '/'));
    return found.length > 0 ? ok(found.sort()) : err(`${folder} holds no sound files.`);
  } catch {
    return err(`${folder} cannot be read.`);
  }
};
