import { route } from '@/lib/server';
import { notePresence } from '@/lib/server/wall';

export const dynamic = 'force-dynamic';
export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = route({ POST: notePresence });
