import { enoughForFit, type ReviewFilter, type StepTimesSection as Times } from '@/lib/review';
import { StepTimesChart } from '../charts';
import { reviewAddress } from './address';
import { Section } from './section';
import { stepWords } from './words';

/** How long the steps of one procedure took against the book. */
export function StepTimesSection({
  times,
  procedures,
  filter,
}: {
  readonly times: Times | undefined;
  readonly procedures: readonly { readonly procedure: string; readonly title: string }[];
  readonly filter: ReviewFilter;
}) {
  const timed = times?.steps.filter(({ runs }) => runs > 0) ?? [];
  if (times === undefined || timed.length === 0)
    return <Section id="step-times" title="Step times" empty="No step was done in these days." />;
  return (
    <Section id="step-times" title="Step times">
      {filter.procedure !== undefined ? null : (
        <p className="text-note">
          Other sheets:{' '}
          {procedures
            .filter(({ procedure }) => procedure !== times.procedure)
            .map(({ procedure, title }) => (
              <a
                key={procedure}
                href={reviewAddress(filter, 'step-times', { sheet: procedure })}
                className="mr-4 underline"
              >
                {title}
              </a>
            ))}
        </p>
      )}
      <StepTimesChart
        title={`${times.title}: times of its steps`}
        enoughForFit={enoughForFit}
        rows={times.steps.map((step) => ({
          key: step.step,
          label: stepWords(step),
          bookMinutes: step.bookMinutes,
          runs: step.runs,
          quantiles: step.quantiles,
          lognormal: step.lognormal,
          overBook: step.overBook,
        }))}
      />
    </Section>
  );
}
