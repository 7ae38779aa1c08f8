import type { Metadata } from 'next';
import { headers } from 'next/headers';
import { notFound } from 'next/navigation';
import { Kiosk } from '@/components/kiosk/kiosk';
import type { JobState } from '@/lib/job';
import { getShopServer } from '@/lib/server/shop-server';
import { sessionIn } from '@/lib/server/signed-on';
import { bayView, jobView, stateOf, type BayView, type Store } from '@/lib/store';
import { demoPinHint, demoVoices } from '../../demo-shop';

export const dynamic = 'force-dynamic';

interface BayPageProps {
  readonly params: Promise<{ readonly bay: string }>;
}

const openView = async (bay: string): Promise<{ view: BayView | undefined; store: Store }> => {
  const server = await getShopServer();
  if (!server.ok) throw new Error(server.error);
  const { store } = server.value;
  return { view: await bayView(store, bay), store };
};

const openJob = async (store: Store, job: string): Promise<JobState | undefined> => {
  const record = await jobView(store, job);
  return record === undefined ? undefined : stateOf(record);
};

export async function generateMetadata({ params }: BayPageProps): Promise<Metadata> {
  const { view } = await openView((await params).bay);
  return { title: view?.bay.name ?? 'No such bay' };
}

/** The kiosk of one bay, with its open job as the store has it. */
export default async function BayPage({ params }: BayPageProps) {
  const { view, store } = await openView((await params).bay);
  if (view === undefined) notFound();
  const server = await getShopServer();
  const session = server.ok
    ? await sessionIn(server.value, (await headers()).get('cookie'))
    : undefined;
  const mine = session?.bay === view.bay.id ? session : undefined;
  return (
    <Kiosk
      bay={view.bay}
      people={view.people}
      procedures={view.procedures}
      signedOn={mine === undefined ? undefined : { person: mine.person, device: mine.device }}
      job={view.job === undefined ? undefined : await openJob(store, view.job.id)}
      cabinet={{
        tools: view.torqueTools,
        cycles: view.toolCycles,
        adapters: view.adapters,
        settings: view.settings,
      }}
      demo={await demoVoices(view)}
      hint={demoPinHint(view)}
    />
  );
}
