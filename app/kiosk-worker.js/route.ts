import { shellAnswer } from '@/lib/shell';

export const dynamic = 'force-dynamic';

/** Keeps what a kiosk's page is made of, so that it opens without the server. */
export const GET = (): Promise<Response> => shellAnswer(process.cwd());
