import type { DeviationList, ParetoSection, ReviewFilter, SheetMark } from '@/lib/review';
import { ParetoChart } from '../charts';
import { reviewAddress } from './address';
import type { Clock } from './clock';
import { DeviationCard } from './deviation-card';
import { Section } from './section';
import { kindWords } from './words';

export interface DeviationsProps {
  readonly list: DeviationList;
  readonly pareto: ParetoSection;
  readonly marks: readonly SheetMark[];
  readonly filter: ReviewFilter;
  readonly clock: Clock;
  readonly foreman: boolean;
}

/** As many are shown at once; the others are folded away. */
const FIRST = 12;

const narrowed = (filter: ReviewFilter, procedure: string, step: string): string =>
  reviewAddress(
    {
      ...filter,
      procedure,
      step,
      revision: filter.procedure === procedure ? filter.revision : undefined,
    },
    'deviations',
  );

/** What was not as the sheet has it: which kinds and steps, then each with its circumstances. */
export function DeviationsSection(props: DeviationsProps) {
  const { list, pareto, marks, filter, clock, foreman } = props;
  const empty = list.total === 0 ? 'Nothing was other than the sheet has it.' : undefined;
  const markOf = ({ job, seq }: { job: string; seq: number }) =>
    marks.find(({ seen }) => seen?.job === job && seen.seq === seq);
  const cards = (from: number, to?: number) => (
    <ul className="grid gap-4 min-[75em]:grid-cols-2">
      {list.rows.slice(from, to).map((row) => (
        <li key={row.id} className="flex min-w-0 flex-col [&>article]:grow">
          <DeviationCard row={row} clock={clock} mark={markOf(row)} foreman={foreman} />
        </li>
      ))}
    </ul>
  );
  const rest = list.rows.length - FIRST;
  return (
    <Section id="deviations" title="Deviations" empty={empty}>
      <div className="grid items-start gap-8 min-[75em]:grid-cols-2">
        <ParetoChart
          title="Deviations by kind"
          what="deviations"
          items={pareto.byKind.map(({ kind, ...bar }) => ({
            ...bar,
            key: kind,
            label: kindWords(kind),
          }))}
        />
        <ParetoChart
          title="Deviations by step"
          what="deviations"
          items={pareto.byStep.map(({ procedure, title, step, stepTitle, ...bar }) => ({
            ...bar,
            key: `${procedure}/${step}`,
            label: filter.procedure === undefined ? `${stepTitle} (${title})` : stepTitle,
            href: narrowed(filter, procedure, step),
          }))}
        />
      </div>
      <h3 className="text-body font-bold">
        {list.total === 1 ? 'One deviation' : `${list.total} deviations, the newest first`}
        {list.undecided === 0 ? '' : `; ${list.undecided} not decided yet`}
        {list.total > list.rows.length ? `; shown are ${list.rows.length}` : ''}
      </h3>
      {cards(0, FIRST)}
      {rest > 0 ? (
        <details>
          <summary className="inline-flex min-h-[2.6rem] cursor-pointer items-center text-body underline">
            {rest} more
          </summary>
          <div className="mt-3">{cards(FIRST)}</div>
        </details>
      ) : null}
    </Section>
  );
}
