'use client';
import type { JobState } from '@/lib/job';
import { Button } from '../design/button';
import { clockText } from '../design/duration';
import { VerdictMark } from '../step/verdict-mark';
import { ReasonText } from './reason-text';

/** What is kept of a closed job: how many events, and the head of their chain, to be printed and kept elsewhere. */
export interface RecordHead {
  readonly events: number;
  /** How many of them are not stored yet. */
  readonly waiting: number;
  readonly head: string | undefined;
}

const counts = (job: JobState) => {
  const counted = job.readings.filter(({ status }) => status === 'counted');
  return (['inSpec', 'notProvable', 'outOfSpec', 'noFigure'] as const)
    .map((verdict) => ({
      verdict,
      count: counted.filter((reading) => reading.verdict === verdict).length,
    }))
    .filter(({ count }) => count > 0);
};

/** The job is over: what was measured, decided and signed, and the record's head. */
export function ClosedView({
  job,
  record,
  nameOf,
  onNew,
}: {
  readonly job: JobState;
  readonly record: RecordHead;
  readonly nameOf: (person: string) => string;
  readonly onNew: () => void;
}) {
  return (
    <section
      aria-labelledby="closed"
      className="flex h-full min-h-0 flex-col gap-6 rounded-block border-4 border-good bg-surface p-8"
    >
      <h2 id="closed" className="text-[5rem] leading-[1.1] font-bold">
        Job closed{job.closedAt === undefined ? '' : ` at ${clockText(job.closedAt)}`}
      </h2>
      <p className="text-read">
        {job.vehicle.plate} · {job.revision.title}
        {job.closedBy === undefined ? null : (
          <span className="text-body text-quiet"> · closed by {nameOf(job.closedBy)}</span>
        )}
      </p>
      <div
        className="grid min-h-0 grow gap-8 overflow-y-auto wide:grid-cols-2"
        tabIndex={0}
        role="group"
        aria-label="What was recorded"
      >
        <section aria-label="Readings" className="flex flex-col gap-2">
          <h3 className="text-body font-bold text-quiet">Readings</h3>
          {counts(job).map(({ verdict, count }) => (
            <p key={verdict} className="flex items-baseline gap-4 text-read font-bold">
              {count}
              <VerdictMark verdict={verdict} className="text-glance" />
            </p>
          ))}
          <h3 className="mt-4 text-body font-bold text-quiet">Record</h3>
          <p className="text-glance">
            {record.waiting === 0
              ? `${record.events} events stored`
              : `${record.events - record.waiting} of ${record.events} events stored`}
            <span className="block font-normal break-all text-body text-quiet">Job {job.job}</span>
            {record.head === undefined ? null : (
              <span className="block break-all text-body text-quiet">Head {record.head}</span>
            )}
          </p>
        </section>
        <section aria-label="Decided and signed" className="flex flex-col gap-2">
          <h3 className="text-body font-bold text-quiet">Deviations and signatures</h3>
          {job.deviations.length + job.signatures.length === 0 ? (
            <p className="text-glance">None</p>
          ) : null}
          <ul className="flex flex-col gap-2 text-body">
            {job.deviations.map((deviation) => (
              <li key={deviation.id}>
                {deviation.reason === undefined ? (
                  deviation.kind
                ) : (
                  <ReasonText reason={deviation.reason} />
                )}
                {deviation.decision === undefined ? null : (
                  <span className="block text-quiet">
                    {deviation.decision.word === 'accepted' ? 'Accepted' : 'Accepted, re-check due'}{' '}
                    by {nameOf(deviation.decision.by)}
                  </span>
                )}
              </li>
            ))}
            {job.signatures.map((signature) => (
              <li key={signature.looseEnd}>
                <ReasonText reason={signature.reason} />
                <span className="block text-quiet">Signed by {nameOf(signature.by)}</span>
              </li>
            ))}
          </ul>
        </section>
      </div>
      <div className="flex items-center gap-8">
        <Button
          kind="main"
          glyph="forward"
          onPress={onNew}
          disabled={record.waiting > 0}
          className="min-h-[7rem] px-12 text-read"
        >
          Next job
        </Button>
        {record.waiting === 0 ? null : (
          <p className="text-glance">
            First all of this job must be stored. The kiosk goes on trying by itself.
          </p>
        )}
        <a
          href={`/jobs/${job.job}/record`}
          className="flex min-h-glove items-center text-glance underline"
        >
          Hand-over record
        </a>
        <a
          href={`/jobs/${job.job}`}
          className="flex min-h-glove items-center text-glance underline"
        >
          Everything that happened
        </a>
      </div>
    </section>
  );
}
