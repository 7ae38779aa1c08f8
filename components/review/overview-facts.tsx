import type { OverviewSection } from '@/lib/review';

/** How much there is, each figure leading to its part of the page. */
export function OverviewFacts({ overview }: { readonly overview: OverviewSection }) {
  const { jobs, readings, outOfSpec, deviations, undecided, reworks, holds } = overview;
  const facts = [
    { name: 'Jobs', value: jobs },
    { name: 'Values', value: readings, to: 'readings' },
    { name: 'Out of spec', value: outOfSpec, to: 'readings' },
    { name: 'Deviations', value: deviations, to: 'deviations' },
    { name: 'Not decided yet', value: undecided, to: 'deviations' },
    { name: 'Steps opened again', value: reworks, to: 'rework' },
    { name: 'Holds', value: holds, to: 'holds' },
  ];
  return (
    <>
      {overview.complete ? null : (
        <p role="status" className="text-body font-bold text-unsure">
          Jobs are still being taken in: what stands here is too little. Look again in a moment.
        </p>
      )}
      <dl className="grid grid-cols-2 gap-3 min-[40em]:grid-cols-4 min-[75em]:grid-cols-7">
        {facts.map(({ name, value, to }) => (
          <div key={name} className="flex flex-col rounded-block bg-surface px-4 py-3">
            <dt className="text-note">
              {to === undefined ? (
                name
              ) : (
                <a href={`#${to}`} className="underline">
                  {name}
                </a>
              )}
            </dt>
            <dd className="text-read font-bold">{value.toLocaleString('en-GB')}</dd>
          </div>
        ))}
      </dl>
    </>
  );
}
