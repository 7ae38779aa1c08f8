import { route } from '@/lib/server';
import { readMarks, writeMark } from '@/lib/server/review';

export const dynamic = 'force-dynamic';
export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = route({
  GET: readMarks,
  POST: writeMark,
});
