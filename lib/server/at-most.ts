import { err, ok, type Result } from '../result';

/** Lets at most so many pieces of work run at once; whoever comes while all places are taken is told so at once. */
export const atMost = (most: number) => {
  let running = 0;
  return async <T>(work: () => Promise<T>): Promise<Result<T, 'busy'>> => {
    if (running >= most) return err('busy');
    running += 1;
    try {
      return ok(await work());
    } finally {
      running -= 1;
    }
  };
};
