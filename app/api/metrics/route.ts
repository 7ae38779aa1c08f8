import { route } from '@/lib/server';
import { readMetrics } from '@/lib/server/health';

export const dynamic = 'force-dynamic';
export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = route({ GET: readMetrics });
