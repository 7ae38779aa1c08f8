import { hearingAnswer, hearingFolders } from '@/lib/hearing';

export const dynamic = 'force-dynamic';

/** Worker, worklet, speech model and, when measuring, the measuring page. */
export const GET = (request: Request): Promise<Response> =>
  hearingAnswer(hearingFolders(process.cwd()), request, process.env.BAYCALL_MEASURE === '1');
