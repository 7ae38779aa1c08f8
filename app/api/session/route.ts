import { route } from '@/lib/server';
import { readSession, signOff, signOn } from '@/lib/server/session';

export const dynamic = 'force-dynamic';
export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = route({
  GET: readSession,
  POST: signOn,
  DELETE: signOff,
});
