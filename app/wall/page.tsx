import type { Metadata } from 'next';
import { Wall } from '@/components/wall/wall';

export const metadata: Metadata = { title: 'Wall' };
export const dynamic = 'force-dynamic';

/** The screen that hangs on the wall of the shop. */
export default function WallPage() {
  return <Wall />;
}
