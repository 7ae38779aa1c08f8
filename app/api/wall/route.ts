import { route } from '@/lib/server';
import { readWall } from '@/lib/server/wall';

export const dynamic = 'force-dynamic';
export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = route({ GET: readWall });
