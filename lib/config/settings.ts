import { resolve } from 'node:path';
import { z } from 'zod';
import { err, ok, type Result } from '../result';

/** From nothing at all to everything; what each server writes to its log. */
export const logLevels = ['silent', 'fatal', 'error', 'warn', 'info', 'debug', 'trace'] as const;
export type LogLevel = (typeof logLevels)[number];

export const logLevelSchema = z.enum(logLevels).default('info');

/** What the environment may say. Absent means the default; a wrong value is refused, never guessed. */
const environmentSchema = z.object({
  PORT: z
    .string()
    .regex(/^\d{1,5}$/)
    .transform(Number)
    .refine((port) => port >= 1 && port <= 65535)
    .default(4870),
  BAYCALL_DATA: z
    .string()
    .refine((path) => path.trim() !== '' && !path.includes('\0'))
    .default('data'),
  BAYCALL_HOST: z.union([z.hostname(), z.ipv4(), z.ipv6()]).default('127.0.0.1'),
  BAYCALL_MEASURE: z.enum(['0', '1']).default('0'),
  BAYCALL_LOG: logLevelSchema,
});

const wanted: Record<keyof z.infer<typeof environmentSchema>, string> = {
  PORT: 'a whole number from 1 to 65535',
  BAYCALL_DATA: 'the path of a folder',
  BAYCALL_HOST: 'a host name or an IP address to listen on',
  BAYCALL_MEASURE: '0 or 1',
  BAYCALL_LOG: `one of ${logLevels.join(', ')}`,
};

export interface Settings {
  readonly port: number;
  readonly host: string;
  /** Absolute path of the folder that holds everything the shop has recorded. */
  readonly dataFolder: string;
  /** Whether the pages for measuring the hearing are served. */
  readonly measure: boolean;
}

/** Reads the settings from environment variables. The error is one line that names the variable and what it may be. */
export const readSettings = (
  environment: Readonly<Record<string, string | undefined>>,
  workingFolder: string,
): Result<Settings, string> => {
  const parsed = environmentSchema.safeParse(environment);
  if (!parsed.success) {
    const wrong = new Set(parsed.error.issues.map((issue) => issue.path[0]));
    const lines = Object.entries(wanted)
      .filter(([name]) => wrong.has(name))
      .map(([name, want]) => `${name} must be ${want}, not ${JSON.stringify(environment[name])}`);
    return err(`${lines.join('; ')}.`);
  }
  const { PORT, BAYCALL_HOST, BAYCALL_DATA, BAYCALL_MEASURE } = parsed.data;
  return ok({
    port: PORT,
    host: BAYCALL_HOST,
    dataFolder: resolve(workingFolder, BAYCALL_DATA),
    measure: BAYCALL_MEASURE === '1',
  });
};
