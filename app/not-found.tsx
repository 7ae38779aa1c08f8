import type { Metadata } from 'next';
import Link from 'next/link';

export const metadata: Metadata = { title: 'Not found' };

export default function NotFound() {
  return (
    <main className="flex min-h-dvh flex-col items-start justify-center gap-6 p-10">
      <h1 className="text-read font-bold">There is nothing at this address</h1>
      <p className="text-glance">Perhaps the bay was renamed, or the address was mistyped.</p>
      <Link
        href="/"
        className="inline-flex min-h-glove items-center rounded-block border-2 border-act bg-act px-6 text-glance font-bold text-act-ink"
      >
        Choose a bay
      </Link>
    </main>
  );
}
