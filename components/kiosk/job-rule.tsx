import type { StepState } from '@/lib/job';

export interface RuleStep {
  readonly id: string;
  readonly bookMinutes: number;
  readonly status: StepState['status'];
  readonly current: boolean;
}

const height = 32;

/**
 * The whole job as a steel rule: one stretch a step, as long as its book time; what is done is filled, what was left
 * out is crossed, the step on the screen stands up, and the pointer below is the time spent.
 */
export function JobRule({
  steps,
  spentMinutes,
}: {
  steps: readonly RuleStep[];
  spentMinutes: number;
}) {
  const total = steps.reduce((sum, { bookMinutes }) => sum + bookMinutes, 0);
  const percent = (minutes: number): string => `${((minutes / total) * 100).toFixed(3)}%`;
  const starts = steps.map((_, index) =>
    steps.slice(0, index).reduce((sum, { bookMinutes }) => sum + bookMinutes, 0),
  );
  return (
    <svg aria-hidden="true" width="100%" height={height} className="h-[2rem] overflow-visible">
      {steps.map(({ id, bookMinutes, status, current }, index) => {
        const x = percent(starts[index] ?? 0);
        const width = percent(bookMinutes);
        return (
          <g key={id} data-status={status}>
            <rect
              x={x}
              y={current ? 0 : '35%'}
              width={width}
              height={current ? '65%' : '30%'}
              strokeWidth="1.5"
              className={
                current
                  ? 'fill-act stroke-ground'
                  : status === 'done'
                    ? 'fill-ink stroke-ground'
                    : 'fill-sunk stroke-edge'
              }
            />
            {status === 'leftOut' ? (
              <line
                x1={x}
                y1="35%"
                x2={percent((starts[index] ?? 0) + bookMinutes)}
                y2="65%"
                className="stroke-bad"
                strokeWidth="2"
              />
            ) : null}
          </g>
        );
      })}
      <svg
        x={percent(Math.min(spentMinutes, total))}
        y="66%"
        overflow="visible"
        width="1"
        height="1"
      >
        <path d="M0 0l7 11h-14Z" className={spentMinutes > total ? 'fill-bad' : 'fill-ink'} />
      </svg>
    </svg>
  );
}
