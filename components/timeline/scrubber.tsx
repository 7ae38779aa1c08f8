'use client';
import { momentAddress, type Filter, type Mark, type ShownMoment } from '@/lib/timeline';
import { Glyph, type GlyphName } from '../design/glyph';
import { MarkStrip } from './mark-strip';
import { MomentView } from './moment-view';
import { useMoment } from './use-moment';

/** A way to another moment: a link, so that it works without scripts, that moves at once where they run. */
function Step({
  to,
  glyph,
  name,
  there,
  address,
  onGo,
}: {
  readonly to: number;
  readonly glyph: GlyphName;
  readonly name: string;
  readonly there: boolean;
  readonly address: string;
  readonly onGo: (at: number) => void;
}) {
  const look =
    'inline-flex min-h-[44px] min-w-[44px] items-center justify-center gap-2 rounded-block border-2 px-4';
  if (!there)
    return (
      <span className={`${look} border-line text-quiet`}>
        <Glyph name={glyph} />
        {name}
      </span>
    );
  return (
    <a
      href={address}
      onClick={(click) => {
        if (click.metaKey || click.ctrlKey || click.shiftKey) return;
        click.preventDefault();
        onGo(to);
      }}
      className={`${look} border-edge bg-surface`}
    >
      <Glyph name={glyph} />
      {name}
    </a>
  );
}

/** Goes through a job event by event, and shows how it stood at each. */
export function Scrubber({
  job,
  filter,
  page,
  of,
  marks,
}: {
  readonly job: string;
  readonly filter: Filter;
  readonly page: { readonly at: number; readonly shown: ShownMoment };
  readonly of: number;
  readonly marks: readonly Mark[];
}) {
  const addressOf = (at: number): string => momentAddress(job, filter, at);
  const { at, shown, failed, go } = useMoment(job, page, addressOf);
  const reached = shown.moment.seq === at;
  const words = reached ? `, ${shown.row.clock}, ${shown.row.what}` : '';
  const step = { onGo: go };
  return (
    <section aria-labelledby="moment" className="flex flex-col gap-3">
      <h2 id="moment" className="text-glance font-bold">
        As it stood after event {at} of {of}
      </h2>
      <form action={`/jobs/${job}`} className="flex flex-col gap-2">
        {filter.kinds.map((kind) => (
          <input key={kind} type="hidden" name="kind" value={kind} />
        ))}
        {filter.step === undefined ? null : <input type="hidden" name="step" value={filter.step} />}
        <input
          type="range"
          name="at"
          className="scrubber"
          min={1}
          max={of}
          step={1}
          value={at}
          onChange={(change) => {
            go(change.currentTarget.valueAsNumber);
          }}
          aria-label="Moment in the job"
          aria-valuetext={`Event ${at} of ${of}${words}`}
        />
        <MarkStrip marks={marks} of={of} />
        <div className="flex flex-wrap gap-3">
          <Step
            {...step}
            to={at - 1}
            glyph="back"
            name="Event before"
            there={at > 1}
            address={addressOf(Math.max(1, at - 1))}
          />
          <Step
            {...step}
            to={at + 1}
            glyph="forward"
            name="Event after"
            there={at < of}
            address={addressOf(Math.min(of, at + 1))}
          />
          <noscript>
            <button
              type="submit"
              className="min-h-[44px] rounded-block border-2 border-edge bg-surface px-5 font-bold"
            >
              Show this moment
            </button>
          </noscript>
        </div>
      </form>
      {failed ? (
        <p role="alert" className="font-bold text-bad">
          Event {at} could not be read; what is shown is event {shown.moment.seq}. Move again.
        </p>
      ) : null}
      <div aria-busy={!reached && !failed} className="text-note">
        <MomentView shown={shown} />
      </div>
    </section>
  );
}
