'use client';
import { memo } from 'react';
import { wantWord, wantWords, type BayCard, type Grid } from '@/lib/wall';
import { Glyph, type GlyphName } from '../design/glyph';
import { JobFacts, timeLine } from './job-facts';
import { answeredNow, signOf } from './signs';

export interface BayTileProps {
  readonly card: BayCard;
  readonly name: string;
  readonly detail: Grid['detail'];
  /** The server's clock, ms. */
  readonly nowMs: number;
}

/** So long a plate fits in letters that are read from afar. */
const platesFit: Readonly<Record<Grid['detail'], number>> = { all: 12, some: 6, short: 6, sign: 0 };

const spaces: Readonly<Record<Grid['detail'], string>> = {
  all: 'gap-2 p-3',
  some: 'px-3 py-0.5',
  short: 'px-2 py-0.5',
  sign: 'px-1.5 py-0.5',
};

const looks = {
  /** Somebody must come: the whole tile is turned dark on light, or light on dark. */
  wanting: 'border-ink bg-ink text-ground',
  held: 'border-dashed border-edge bg-surface',
  working: 'border-edge bg-surface',
  empty: 'border-line bg-ground text-quiet',
} as const;

const lookOf = ({ wants, job }: BayCard): keyof typeof looks => {
  if (wants.length > 0) return 'wanting';
  if (job === undefined) return 'empty';
  return job.phase === 'held' ? 'held' : 'working';
};

/** What stands below the bay's name in letters for afar: what it wants, else how far it is. */
const farLine = (card: BayCard, detail: Grid['detail'], nowMs: number): string | undefined => {
  const { job } = card;
  const [want] = card.wants;
  if (want !== undefined) return detail === 'all' ? wantWords(want) : wantWord(want);
  if (job === undefined) return undefined;
  if (answeredNow(card, nowMs) !== undefined) return detail === 'all' ? 'Answered' : 'Comes';
  if (job.phase === 'held') return detail === 'all' ? 'On hold' : 'Hold';
  return detail === 'short' ? undefined : `${job.step.number}/${job.step.of}`;
};

function Far({ text, className = '' }: { readonly text: string; readonly className?: string }) {
  return (
    <span data-far className={`text-far font-bold ${className}`}>
      {text}
    </span>
  );
}

function Sign({ name }: { readonly name: GlyphName }) {
  return (
    <span data-far className="flex shrink-0 items-center text-far">
      <Glyph name={name} className="text-[0.62em]" />
    </span>
  );
}

/** The smallest tile: number and sign, and what stands near is for who comes near. */
function Small({ card, nowMs }: BayTileProps) {
  const [want] = card.wants;
  const who = answeredNow(card, nowMs);
  const { job } = card;
  const words =
    want !== undefined
      ? wantWords(want)
      : who !== undefined
        ? `${who} comes`
        : job === undefined
          ? 'No job'
          : `${job.plate} · ${job.step.number}/${job.step.of}`;
  return <p className="truncate text-[1.15rem] leading-tight">{words}</p>;
}

function Middle({ card, detail, nowMs }: BayTileProps) {
  const { job } = card;
  const far = farLine(card, detail, nowMs);
  const plateFar = job !== undefined && job.plate.length <= platesFit[detail];
  const line = far ?? (plateFar ? job.plate : undefined);
  const sign = detail === 'some' ? signOf(card, nowMs) : undefined;
  if (job === undefined) return <p className="text-body">No job open</p>;
  const ends = job.ends.reduce((sum, { count }) => sum + count, 0);
  const who = job.mechanic === undefined ? '' : `${job.mechanic} · `;
  const loose = ends === 0 ? '' : ` · ${ends} loose`;
  const plate = plateFar && (detail === 'some' || far === undefined) ? '' : `${job.plate} · `;
  return (
    <>
      <span className="flex items-center gap-3">
        {sign === undefined ? null : <Sign name={sign} />}
        {line === undefined ? null : <Far text={line} className="block truncate" />}
      </span>
      <div className="min-h-0 overflow-hidden text-note">
        <p className="truncate">{`${plate}${who}${job.hold?.reason.text ?? job.procedure}`}</p>
        <p className="truncate">{`${timeLine(job, nowMs)}${loose}`}</p>
      </div>
    </>
  );
}

/** One bay. It leads to where a foreman answers for it. */
export const BayTile = memo(function BayTile(props: BayTileProps) {
  const { card, name, detail, nowMs } = props;
  const { job } = card;
  const sign = signOf(card, nowMs);
  const look = lookOf(card);
  const plateBeside = detail === 'some' && job !== undefined && job.plate.length <= platesFit.some;
  return (
    <a
      href={`/foreman?bay=${card.bay.id}`}
      data-bay={card.bay.id}
      data-seq={job?.seq ?? 0}
      data-look={look}
      className={`flex min-h-0 min-w-0 flex-col overflow-hidden rounded-block border-4 ${spaces[detail]} ${looks[look]}`}
    >
      <span className={`flex items-center ${detail === 'sign' ? 'gap-x-1' : 'gap-x-3'}`}>
        <span className="sr-only">{card.bay.name}</span>
        <span aria-hidden="true">
          <Far text={name} className="whitespace-nowrap" />
        </span>
        {sign === undefined || detail === 'some' ? null : <Sign name={sign} />}
        {plateBeside ? <Far text={job.plate} className="ml-auto whitespace-nowrap" /> : null}
      </span>
      {detail === 'sign' ? (
        <Small {...props} />
      ) : detail === 'all' ? (
        <>
          {job === undefined ? (
            <p className="text-read">No job open</p>
          ) : (
            <Far
              text={job.plate}
              className={job.plate.length > platesFit.all ? 'truncate' : 'block'}
            />
          )}
          {farLine(card, detail, nowMs) === undefined ? null : (
            <Far text={farLine(card, detail, nowMs) ?? ''} className="block" />
          )}
          {job === undefined ? null : <JobFacts card={card} job={job} nowMs={nowMs} />}
        </>
      ) : (
        <Middle {...props} />
      )}
    </a>
  );
});
