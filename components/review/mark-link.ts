import { ok, type Result } from '@/lib/result';
import { contentOf, send } from '../link/ask';

/** What is to be changed, and what showed it. */
export interface SheetWish {
  readonly procedure: string;
  readonly revision: number;
  readonly step: string;
  readonly note: string;
  readonly seen: { readonly job: string; readonly seq: number };
}

const post = async (path: string, body: unknown): Promise<Result<void, string>> => {
  const content = contentOf(
    await send('POST', path, body),
    'The server cannot be reached. Nothing was changed; try again.',
  );
  return content.ok ? ok(undefined) : content;
};

/** Marks a sheet for its writer; the error says what to do. */
export const markSheet = (wish: SheetWish): Promise<Result<void, string>> =>
  post('/api/review/marks', wish);

/** A writer has dealt with a mark. */
export const closeMark = (id: string): Promise<Result<void, string>> =>
  post(`/api/review/marks/${id}/done`, {});
