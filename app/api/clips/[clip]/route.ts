import { route } from '@/lib/server';
import { keepClip, readClip } from '@/lib/server/clips';

export const dynamic = 'force-dynamic';
export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = route({
  GET: readClip,
  PUT: keepClip,
});
