import { z } from 'zod';
import { err, ok, type Result } from '@/lib/result';

/** What is to be changed, and what showed it. */
export interface SheetWish {
  readonly procedure: string;
  readonly revision: number;
  readonly step: string;
  readonly note: string;
  readonly seen: { readonly job: string; readonly seq: number };
}

const problemSchema = z.object({ error: z.object({ message: z.string() }) });

const post = async (path: string, body: unknown): Promise<Result<void, string>> => {
  try {
    const response = await fetch(path, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(body),
    });
    if (response.ok) return ok(undefined);
    const problem = problemSchema.safeParse(await response.json());
    return err(
      problem.success ? problem.data.error.message : `The server answered with ${response.status}.`,
    );
  } catch {
    return err('The server cannot be reached. Nothing was changed; try again.'); // cut off
  }
};

/** Marks a sheet for its writer; the error says what to do. */
export const markSheet = (wish: SheetWish): Promise<Result<void, string>> =>
  post('/api/review/marks', wish);

/** A writer has dealt with a mark. */
export const closeMark = (id: string): Promise<Result<void, string>> =>
  post(`/api/review/marks/${id}/done`, {});
