import { problem, type ProblemCode } from './problem';

interface Trouble {
  readonly codes: RegExp;
  readonly code: ProblemCode;
  readonly message: string;
}

const sentAgain = 'What waits at the kiosks is sent again by itself; that does no harm.';

/** Codes of SQLite and of the system, for trouble of the disk and not of the program. */
const troubles: readonly Trouble[] = [
  {
    codes: /^SQLITE_FULL|^(ENOSPC|EDQUOT)$/,
    code: 'diskFull',
    message: `The server’s disk is full: nothing was stored. Make room on it. ${sentAgain}`,
  },
  {
    codes: /^SQLITE_READONLY|^(EROFS|EACCES|EPERM)$/,
    code: 'diskReadOnly',
    message: `The server may not write to its disk: nothing was stored. Let it write to the data folder. ${sentAgain}`,
  },
  {
    codes: /^SQLITE_(BUSY|LOCKED|IOERR|CANTOPEN)|^EIO$/,
    code: 'unavailable',
    message: `The server cannot use its disk now: nothing was stored. ${sentAgain}`,
  },
];

/** The answer to a request that failed because of the disk, with what to do; nothing where that was not why. */
export const diskTrouble = (error: unknown): Response | undefined => {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  const trouble = troubles.find(({ codes }) => codes.test(code));
  return trouble && problem(trouble.code, trouble.message);
};
