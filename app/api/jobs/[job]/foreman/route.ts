import { route } from '@/lib/server';
import { appendForemanEvents } from '@/lib/server/foreman';

export const dynamic = 'force-dynamic';
export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = route({
  POST: appendForemanEvents,
});
