'use client';
import { useState } from 'react';
import type { JobState } from '@/lib/job';
import type { LooseEnd } from '@/lib/ledger';
import type { Person } from '@/lib/people';
import type { Bay } from '@/lib/shop';
import type { BayCard, JobCard } from '@/lib/wall';
import { Button } from '../design/button';
import { Glyph } from '../design/glyph';
import { barredFrom } from '../kiosk/foreman-acts';
import { clockText } from '../design/duration';
import { ReasonText } from '../kiosk/reason-text';
import { JobFacts } from '../wall/job-facts';
import { actsFor, endsToAnswer, holdAct, type ForemanAct } from './acts';
import type { ForemanSignedOn } from './foreman-link';
import { MoveForm } from './move-form';
import { ReasonSheet } from './reason-sheet';
import { useForemansJob } from './use-job-of-bay';

interface SheetProps {
  readonly card: BayCard;
  readonly jobCard: JobCard;
  readonly me: ForemanSignedOn;
  readonly bays: readonly Bay[];
  readonly freeBays: ReadonlySet<string>;
  readonly people: readonly Person[];
  readonly nowMs: number;
  readonly onBack: () => void;
  readonly onSignedOff: () => void;
}

interface EndsProps {
  readonly job: JobState;
  readonly me: Person;
  readonly onAct: (act: ForemanAct) => void;
}

function EndRow({ job, me, end, onAct }: EndsProps & { readonly end: LooseEnd }) {
  const reason = job.deviations.find(({ id }) => end.key === `deviationUndecided:${id}`)?.reason;
  return (
    <li className="flex flex-col gap-2 border-b border-line py-3">
      <p className="font-bold">{end.text}</p>
      {reason !== undefined ? (
        <p>
          <ReasonText reason={reason} />
        </p>
      ) : end.detail === undefined ? null : (
        <p className="text-quiet">{end.detail}</p>
      )}
      {barredFrom(job, me) !== undefined ? null : (
        <div className="flex flex-wrap gap-2">
          {actsFor(end).map((act) => (
            <Button
              key={act.key}
              onPress={() => {
                onAct(act);
              }}
            >
              {act.label}
            </Button>
          ))}
        </div>
      )}
    </li>
  );
}

/** Deviations to decide, then what else is loose: folded away while the steps that settle it are still to come. */
function Ends(props: EndsProps) {
  const { job, me } = props;
  const ends = endsToAnswer(job);
  const first = ends.filter(({ kind }) => kind === 'deviationUndecided');
  const rest = ends.filter((end) => !first.includes(end));
  const settled = Object.values(job.steps).every(({ status }) => status !== 'open');
  const barred = barredFrom(job, me);
  const list = (rows: readonly LooseEnd[]) => (
    <ul>
      {rows.map((end) => (
        <EndRow key={end.key} {...props} end={end} />
      ))}
    </ul>
  );
  return (
    <section aria-labelledby="ends" className="flex flex-col gap-2">
      <h2 id="ends" className="text-glance font-bold">
        {ends.length === 0 ? 'No loose ends' : `Loose ends: ${ends.length}`}
      </h2>
      {barred === undefined || ends.length === 0 ? null : (
        <p className="font-bold">You {barred}: another foreman must decide and sign here.</p>
      )}
      {list(first)}
      {rest.length === 0 ? null : (
        <details open={settled}>
          <summary className="flex min-h-glove cursor-pointer items-center gap-3 font-bold">
            <Glyph name="list" />
            {settled
              ? `${rest.length} to settle or sign`
              : `${rest.length} that work still settles`}
          </summary>
          {list(rest)}
        </details>
      )}
    </section>
  );
}

/** One job on the foreman's screen: what it wants, what is loose, and what may be done about it. */
export function JobSheet(props: SheetProps) {
  const { card, jobCard, me, nowMs } = props;
  const { job, problem, busy, act } = useForemansJob(
    jobCard.id,
    jobCard.seq,
    me,
    props.onSignedOff,
  );
  const [asked, setAsked] = useState<ForemanAct>();
  return (
    <article className="flex flex-col gap-5">
      <header className="flex flex-wrap items-center gap-3">
        <Button glyph="back" onPress={props.onBack}>
          All bays
        </Button>
        <h1 className="text-read font-bold">
          {card.bay.name}: {jobCard.plate}
        </h1>
      </header>
      {problem === undefined ? null : (
        <p role="alert" className="flex items-center gap-3 font-bold text-bad">
          <Glyph name="alert" />
          {problem}
        </p>
      )}
      {job?.foremanCalledAt === undefined ? null : (
        <div className="flex flex-wrap items-center gap-4 rounded-block bg-ink p-4 text-ground">
          <p className="text-glance font-bold">Called at {clockText(job.foremanCalledAt)}</p>
          <Button
            glyph="tick"
            className="text-ink"
            disabled={busy}
            onPress={() => {
              void act({ type: 'foremanAnswered' });
            }}
          >
            Answer the call
          </Button>
        </div>
      )}
      {asked === undefined || job === undefined ? null : (
        <ReasonSheet
          key={asked.title}
          act={asked}
          busy={busy}
          onCancel={() => {
            setAsked(undefined);
          }}
          onReason={(text) => {
            void act(asked.make({ text })).then(() => {
              setAsked(undefined);
            });
          }}
        />
      )}
      <JobFacts card={card} job={jobCard} nowMs={nowMs} />
      <nav aria-label="This job" className="flex flex-wrap gap-x-8">
        {[
          { to: `/jobs/${jobCard.id}`, name: 'Everything that happened' },
          { to: `/jobs/${jobCard.id}/record`, name: 'Hand-over record' },
        ].map(({ to, name }) => (
          <a key={to} href={to} className="flex min-h-glove items-center underline">
            {name}
          </a>
        ))}
      </nav>
      {job === undefined ? (
        <p role="status">Reading the job …</p>
      ) : (
        <>
          <div className="flex flex-wrap gap-3">
            {job.phase === 'held' ? (
              <Button
                glyph="play"
                disabled={busy}
                onPress={() => {
                  void act({ type: 'jobResumed' });
                }}
              >
                Lift the hold
              </Button>
            ) : (
              <Button
                glyph="pause"
                disabled={busy}
                onPress={() => {
                  setAsked(holdAct);
                }}
              >
                Hold the job
              </Button>
            )}
          </div>
          <Ends job={job} me={me.person} onAct={setAsked} />
          <MoveForm
            key={job.bay}
            job={job}
            bays={props.bays}
            freeBays={props.freeBays}
            mechanics={props.people.filter(({ role }) => role === 'mechanic')}
            onAct={setAsked}
          />
        </>
      )}
    </article>
  );
}
