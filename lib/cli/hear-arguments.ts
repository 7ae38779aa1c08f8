import { resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { err, errorText, ok, type Result } from '../result';

export interface HearArguments {
  readonly dir: string;
  readonly noise?: string;
  readonly snrDbs: readonly number[];
  readonly json?: string;
  /** Finds the voice in a file's path, as its first group. */
  readonly voices?: RegExp;
}

const usage =
  'Use: npm run hear -- --dir DIR [--noise DIR --snr 20,10,5|none] [--voice PATTERN] [--json FILE]';

const usualSnrDbs = [20, 10, 5];

const readLevels = (text: string | undefined): readonly number[] | undefined => {
  if (text === undefined) return usualSnrDbs;
  if (text === 'none') return [];
  const levels = text.split(',').map((part) => (part.trim() === '' ? Number.NaN : Number(part)));
  return levels.every(Number.isFinite) ? levels : undefined;
};

const readPattern = (text: string): RegExp | undefined => {
  try {
    return new RegExp(text);
  } catch {
    // Said by whoever asked, with the text.
    return undefined;
  }
};

/** Where the command was typed: npm itself changes to the package's folder. */
const typedIn = process.env.INIT_CWD ?? process.cwd();

/** The error is one line. Paths are taken from where the command was typed. */
export const readHearArguments = (args: readonly string[]): Result<HearArguments, string> => {
  try {
    const { values } = parseArgs({
      args: [...args],
      options: {
        dir: { type: 'string' },
        noise: { type: 'string' },
        snr: { type: 'string' },
        json: { type: 'string' },
        voice: { type: 'string' },
      },
    });
    if (values.dir === undefined) return err(`--dir is missing. ${usage}`);
    if (values.snr !== undefined && values.noise === undefined)
      return err(`--snr needs --noise. ${usage}`);
    const snrDbs = readLevels(values.snr);
    if (snrDbs === undefined)
      return err(
        `--snr must be numbers with commas between, or none, not ${JSON.stringify(values.snr)}.`,
      );
    const voices = values.voice === undefined ? undefined : readPattern(values.voice);
    if (values.voice !== undefined && voices === undefined)
      return err(`--voice must be a regular expression, not ${JSON.stringify(values.voice)}.`);
    return ok({
      dir: resolve(typedIn, values.dir),
      snrDbs,
      ...(values.noise === undefined ? {} : { noise: resolve(typedIn, values.noise) }),
      ...(voices === undefined ? {} : { voices }),
      ...(values.json === undefined ? {} : { json: resolve(typedIn, values.json) }),
    });
  } catch (error) {
    return err(`${errorText(error)} ${usage}`);
  }
};
