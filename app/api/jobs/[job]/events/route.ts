import { route } from '@/lib/server';
import { appendEvents } from '@/lib/server/jobs';

export const dynamic = 'force-dynamic';
export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = route({ POST: appendEvents });
