import { route } from '@/lib/server';
import { readBayView } from '@/lib/server/bays';

export const dynamic = 'force-dynamic';
export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = route({ GET: readBayView });
