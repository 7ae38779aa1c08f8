import { route } from '@/lib/server';
import { readForeman, signForemanOff, signForemanOn } from '@/lib/server/foreman-session';

export const dynamic = 'force-dynamic';
export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = route({
  GET: readForeman,
  POST: signForemanOn,
  DELETE: signForemanOff,
});
