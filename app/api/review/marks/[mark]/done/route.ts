import { route } from '@/lib/server';
import { finishMark } from '@/lib/server/review';

export const dynamic = 'force-dynamic';
export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = route({ POST: finishMark });
