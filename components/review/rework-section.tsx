import type { ReworkChain, ReworkSection as Rework } from '@/lib/review';
import { DataTable } from '../charts';
import { timelineAddress } from './address';
import type { Clock } from './clock';
import { Section } from './section';
import { WhyText } from './transcript';
import { minutesText } from '../design/duration';
import { followedWords, kindWords, stepWords } from './words';

/** As many chains are shown at once; the others are folded away. */
const FIRST = 6;

function Chain({
  chain,
  clock,
  foreman,
}: {
  readonly chain: ReworkChain;
  readonly clock: Clock;
  readonly foreman: boolean;
}) {
  return (
    <li className="flex flex-col gap-1 rounded-block border-2 border-line bg-surface p-4 text-note">
      <p className="font-bold">{stepWords(chain)}</p>
      <p>
        {chain.title}, {chain.bay.name}
      </p>
      <ol className="flex flex-col gap-2">
        {chain.links.map((link, at) => (
          <li key={link.seq} className="border-l-4 border-edge pl-3">
            <a href={timelineAddress({ job: chain.job, seq: link.seq })} className="underline">
              {clock.when(link.at)}
            </a>{' '}
            {at === 0 ? 'opened again' : 'and again'} by {link.by.label}
            {link.sentBack === undefined ? '' : `, sent back for “${kindWords(link.sentBack)}”`}
            {link.steps > 1 ? `, with ${link.steps - 1} that lay on it` : ''}:{' '}
            <WhyText why={link.why} sounds={foreman} />{' '}
            <b>
              → {followedWords[link.followed]}
              {link.minutes === undefined ? '' : `, ${minutesText(link.minutes)}`}
            </b>
          </li>
        ))}
      </ol>
    </li>
  );
}

/** Which steps had to be done again, why, and what came of it. */
export function ReworkSection({
  rework,
  clock,
  foreman,
}: {
  readonly rework: Rework;
  readonly clock: Clock;
  readonly foreman: boolean;
}) {
  const chains = (from: number, to?: number) => (
    <ul className="grid gap-4 min-[75em]:grid-cols-2">
      {rework.chains.slice(from, to).map((chain) => (
        <Chain key={`${chain.job}${chain.step}`} chain={chain} clock={clock} foreman={foreman} />
      ))}
    </ul>
  );
  const rest = rework.chains.length - FIRST;
  return (
    <Section
      id="rework"
      title="Rework"
      empty={rework.total === 0 ? 'No step was opened again.' : undefined}
    >
      <div className="overflow-x-auto" tabIndex={0} role="group" aria-label="Rework by step">
        <DataTable
          caption="Steps that were opened again, the most frequent first"
          columns={[
            'Step',
            'Sheet',
            'Times',
            'Jobs',
            'Done again',
            'Left out',
            'Still open',
            'Median again',
          ]}
          rows={rework.bySteps.map((row) => ({
            key: `${row.procedure}/${row.step}`,
            cells: [
              row.stepTitle,
              row.title,
              row.times,
              row.jobs,
              row.followed.doneAgain,
              row.followed.leftOut,
              row.followed.stillOpen,
              minutesText(row.medianMinutes),
            ],
          }))}
        />
      </div>
      <h3 className="text-body font-bold">Chains of rework, the newest first</h3>
      {chains(0, FIRST)}
      {rest > 0 ? (
        <details>
          <summary className="inline-flex min-h-[2.6rem] cursor-pointer items-center text-body underline">
            {rest} more
          </summary>
          <div className="mt-3">{chains(FIRST)}</div>
        </details>
      ) : null}
    </Section>
  );
}
