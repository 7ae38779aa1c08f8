import { route } from '@/lib/server';
import { readRecordPdf } from '@/lib/server/record-pdf';

export const dynamic = 'force-dynamic';
export const { GET, POST, PUT, PATCH, DELETE, OPTIONS } = route({ GET: readRecordPdf });
