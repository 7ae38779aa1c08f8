import { route } from '@/lib/server';
import { readMoment } from '@/lib/server/job-timeline';

export const dynamic = 'force-dynamic';
export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = route({ GET: readMoment });
