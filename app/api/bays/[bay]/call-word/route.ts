import { route } from '@/lib/server';
import { writeCallWord } from '@/lib/server/call-word';

export const dynamic = 'force-dynamic';
export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = route({ PUT: writeCallWord });
