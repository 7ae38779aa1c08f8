import { route } from '@/lib/server';
import { readExport } from '@/lib/server/exports';

export const dynamic = 'force-dynamic';
export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = route({ GET: readExport });
