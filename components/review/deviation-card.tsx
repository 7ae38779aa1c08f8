import type { ReactNode } from 'react';
import { verdictWords } from '@/lib/metrology';
import type { DeviationRow, SheetMark } from '@/lib/review';
import { timelineAddress } from './address';
import { ChangeSheet } from './change-sheet';
import type { Clock } from './clock';
import { TranscriptText, WhyText } from './transcript';
import { askedWords, decisionWords, kindWords, stepWords, valueWords } from './words';

export interface DeviationCardProps {
  readonly row: DeviationRow;
  readonly clock: Clock;
  /** The mark that was made of it. */
  readonly mark?: SheetMark | undefined;
  /** A foreman is signed on: sounds can be played, and sheets marked. */
  readonly foreman: boolean;
}

function Fact({ name, children }: { readonly name: string; readonly children: ReactNode }) {
  return (
    <div className="grid grid-cols-[10rem_1fr] gap-x-3">
      <dt className="text-quiet">{name}</dt>
      <dd className="min-w-0">{children}</dd>
    </div>
  );
}

function Measured({ row }: { readonly row: DeviationRow }) {
  const { measured } = row;
  if (measured === undefined) return null;
  const bad = measured.verdict === 'outOfSpec';
  return (
    <>
      <Fact name="Asked">{askedWords(measured)}</Fact>
      <Fact name="Measured">
        <b className={bad ? 'text-bad' : ''}>{valueWords(measured.value, measured.unit)}</b>,{' '}
        {verdictWords[measured.verdict]}
        {measured.transcript === undefined ? null : (
          <>
            {' '}
            · heard <TranscriptText transcript={measured.transcript} />
          </>
        )}
      </Fact>
    </>
  );
}

function Decision({ row, foreman }: Pick<DeviationCardProps, 'row' | 'foreman'>) {
  const { decision } = row;
  if (decision === undefined)
    return (
      <Fact name="Decision">
        <b className="text-bad">Not decided yet.</b>{' '}
        <a href={`/foreman?bay=${row.bay.id}`} className="underline">
          To the foreman’s screen
        </a>
      </Fact>
    );
  return (
    <Fact name="Decision">
      <b>{decisionWords[decision.word]}</b> by {decision.by.label}:{' '}
      <WhyText why={decision.why} sounds={foreman} />
    </Fact>
  );
}

/** One deviation with what one must know to learn from it. */
export function DeviationCard({ row, clock, mark, foreman }: DeviationCardProps) {
  const { job, seq, procedure, revision, step } = row;
  const concerns = row.fastener ?? row.part;
  return (
    <article
      aria-label={`${kindWords(row.kind)}, ${clock.when(row.at)}`}
      className="flex flex-col gap-2 rounded-block border-2 border-line bg-surface p-4 text-note"
    >
      <header className="flex flex-wrap items-baseline justify-between gap-x-4">
        <h4 className="text-body font-bold">{kindWords(row.kind)}</h4>
        <a href={timelineAddress(row)} className="underline">
          {clock.when(row.at)}, {row.bay.name}
        </a>
      </header>
      <dl className="flex flex-col gap-1">
        <Fact name="Sheet">
          {row.title}, revision {revision}
        </Fact>
        <Fact name="Step">
          <b>{stepWords(row)}</b>
          {row.instruction === '' ? null : <span className="block">{row.instruction}</span>}
        </Fact>
        {concerns === undefined ? null : <Fact name="About">{concerns}</Fact>}
        <Measured row={row} />
        {row.tool === undefined ? null : <Fact name="Tool">{row.tool}</Fact>}
        <Fact name="By">{row.by.label}</Fact>
        {row.why === undefined ? null : (
          <Fact name="Why">
            <WhyText why={row.why} sounds={foreman} />
          </Fact>
        )}
        <Decision row={row} foreman={foreman} />
        {mark === undefined ? null : (
          <Fact name="Sheet marked">
            <q>{mark.note}</q> {mark.by.label}, {clock.when(mark.at)}
          </Fact>
        )}
      </dl>
      {foreman && mark === undefined ? (
        <div className="mt-auto">
          <ChangeSheet at={{ procedure, revision, step, seen: { job, seq } }} />
        </div>
      ) : null}
    </article>
  );
}
