import { route } from '@/lib/server';
import { addPractice, readPractices } from '@/lib/server/practice';

export const dynamic = 'force-dynamic';
export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = route({
  GET: readPractices,
  POST: addPractice,
});
