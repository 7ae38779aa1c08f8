import type { Metadata } from 'next';
import { headers } from 'next/headers';
import { filterOf, jointShown, procedureShown, type Address } from '@/components/review/address';
import { clockIn } from '@/components/review/clock';
import { DeviationsSection } from '@/components/review/deviations-section';
import { HearingSection } from '@/components/review/hearing-section';
import { HoldSection } from '@/components/review/hold-section';
import { MarksSection } from '@/components/review/marks-section';
import { OverviewFacts } from '@/components/review/overview-facts';
import { ReadingsSection } from '@/components/review/readings-section';
import { ReviewPage } from '@/components/review/review-page';
import { ReworkSection } from '@/components/review/rework-section';
import { StepTimesSection } from '@/components/review/step-times-section';
import { getShopServer } from '@/lib/server/shop-server';
import { foremanIn, sessionIn } from '@/lib/server/signed-on';
import { reviewOf } from '@/lib/store/review';

export const metadata: Metadata = { title: 'Review' };
export const dynamic = 'force-dynamic';

/** What the shop can learn from its last days. Names are for a foreman who is signed on. */
export default async function Page({ searchParams }: { readonly searchParams: Promise<Address> }) {
  const server = await getShopServer();
  if (!server.ok) throw new Error(server.error);
  const cookies = (await headers()).get('cookie');
  const session = await foremanIn(server.value, cookies);
  const foreman = session !== undefined;
  const writer = (await sessionIn(server.value, cookies))?.person.role === 'writer';
  const review = await reviewOf(server.value.store, { names: foreman, now: server.value.now() });
  if (review === undefined)
    return (
      <main className="p-10">
        <h1 className="text-read font-bold">This shop has not been set up yet</h1>
      </main>
    );
  const address = await searchParams;
  const choices = await review.choices();
  const asked = filterOf(address, choices);
  const { filter } = asked;
  const sheet = procedureShown(filter, address, choices);
  const joint = jointShown(filter, address, sheet?.joints ?? []);
  const ofSheet = { ...filter, procedure: sheet?.procedure };
  const [overview, list, pareto, marks, rework, readings, times, hearing, holds] =
    await Promise.all([
      review.overview(filter),
      review.deviations(filter),
      review.pareto(filter),
      review.marks(filter.procedure, filter.revision),
      review.reworks(filter),
      joint && review.joint({ ...ofSheet, ask: joint.ask, fastener: joint.fastener }),
      review.stepTimes(ofSheet),
      review.hearings(filter),
      review.holds(filter),
    ]);
  const clock = clockIn(choices.timeZone);
  const { procedures } = choices;
  return (
    <ReviewPage asked={asked} choices={choices} foreman={session?.person.name}>
      <OverviewFacts overview={overview} />
      <DeviationsSection {...{ list, pareto, marks, filter, clock, foreman }} />
      <ReworkSection rework={rework} clock={clock} foreman={foreman} />
      <ReadingsSection
        section={readings}
        shown={joint}
        joints={sheet?.joints ?? []}
        procedures={procedures}
        filter={filter}
        clock={clock}
      />
      <StepTimesSection times={times} procedures={procedures} filter={filter} />
      <HearingSection hearing={hearing} />
      <HoldSection holds={holds} clock={clock} foreman={foreman} />
      <MarksSection marks={marks} clock={clock} writer={writer} />
    </ReviewPage>
  );
}
