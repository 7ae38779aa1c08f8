import type { Metadata } from 'next';
import { headers } from 'next/headers';
import { notFound } from 'next/navigation';
import { ChainNote } from '@/components/timeline/chain-note';
import { EventList } from '@/components/timeline/event-list';
import { FilterForm } from '@/components/timeline/filter-form';
import { Scrubber } from '@/components/timeline/scrubber';
import { momentNumber, timelinePage } from '@/lib/server/job-timeline';
import { getShopServer } from '@/lib/server/shop-server';
import { momentAddress, parseFilter } from '@/lib/timeline';
import './timeline.css';

export const metadata: Metadata = { title: 'Job timeline' };
export const dynamic = 'force-dynamic';

interface TimelinePageProps {
  readonly params: Promise<{ readonly job: string }>;
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>;
}

/** Everything that happened in a job, and how it stood at any moment (`?at=N`: right after event N). */
export default async function JobTimeline({ params, searchParams }: TimelinePageProps) {
  const server = await getShopServer();
  if (!server.ok) throw new Error(server.error);
  const { job } = await params;
  const { kind, step, at } = await searchParams;
  const filter = parseFilter(kind, step);
  const page = await timelinePage(server.value, (await headers()).get('cookie'), job, {
    filter,
    at: momentNumber.safeParse(at).data,
  });
  if (page === 'unknownJob') notFound();
  if ('broken' in page)
    return (
      <main className="p-10">
        <h1 className="text-read font-bold">This record cannot be read</h1>
        <p className="mt-4 text-glance">{page.broken}</p>
      </main>
    );
  return (
    <main className="mx-auto flex max-w-[118rem] flex-col gap-6 p-5 text-note wide:p-8">
      <header className="flex flex-col gap-2">
        <nav aria-label="This job" className="flex flex-wrap gap-x-8">
          {[
            { to: `/jobs/${job}/record`, name: 'Hand-over record' },
            { to: `/bay/${page.bay}`, name: 'The bay' },
            { to: `/foreman?bay=${page.bay}`, name: 'The foreman’s' },
          ].map(({ to, name }) => (
            <a key={to} href={to} className="flex min-h-[44px] items-center underline">
              {name}
            </a>
          ))}
        </nav>
        <h1 className="text-read font-bold">
          {page.plate}: {page.title}
        </h1>
        <ChainNote chain={page.chain} stored={page.stored} stoppedAt={page.stoppedAt} />
        {page.foreman ? null : (
          <p>
            People are numbered here: a foreman who is{' '}
            <a href="/foreman" className="underline">
              signed on
            </a>{' '}
            sees names and hears spoken notes.
          </p>
        )}
      </header>
      <Scrubber
        job={job}
        filter={filter}
        page={{ at: page.at, shown: page.shown }}
        of={page.of}
        marks={page.marks}
      />
      <FilterForm
        key={JSON.stringify(filter)}
        job={job}
        filter={filter}
        at={page.at}
        steps={page.steps}
      />
      <EventList
        rows={page.rows}
        at={page.at}
        matching={page.matching}
        before={page.before}
        of={page.of}
        earlier={page.earlier}
        later={page.later}
        addressOf={(seq) => momentAddress(job, filter, seq)}
      />
    </main>
  );
}
