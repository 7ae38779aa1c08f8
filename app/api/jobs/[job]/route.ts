import { route } from '@/lib/server';
import { readJobEvents } from '@/lib/server/jobs';

export const dynamic = 'force-dynamic';
export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = route({ GET: readJobEvents });
