import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { RecordSheet } from '@/components/record/record-sheet';
import { handOverRecord, namesOf } from '@/lib/record';
import { jobPage } from '@/lib/server/job-page';
import { getShopServer } from '@/lib/server/shop-server';
import './record.css';

export const metadata: Metadata = { title: 'Hand-over record' };
export const dynamic = 'force-dynamic';

interface RecordPageProps {
  readonly params: Promise<{ readonly job: string }>;
}

/** What goes with the vehicle, to be printed on one or two pages. */
export default async function RecordPage({ params }: RecordPageProps) {
  const server = await getShopServer();
  if (!server.ok) throw new Error(server.error);
  const found = await jobPage(server.value, (await params).job);
  if (found === undefined) notFound();
  const { state, shop } = found;
  return (
    <RecordSheet
      shop={shop.name}
      job={state.job}
      bay={state.bay}
      record={handOverRecord(state, namesOf(shop))}
    />
  );
}
