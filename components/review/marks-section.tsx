import type { SheetMark } from '@/lib/review';
import { DataTable } from '../charts';
import { timelineAddress } from './address';
import type { Clock } from './clock';
import { MarkDone } from './mark-done';
import { Section } from './section';

const stateOf = ({ done }: SheetMark, clock: Clock): string => {
  if (done === undefined) return 'open';
  const by =
    done.revision === undefined ? (done.by?.label ?? 'a writer') : `revision ${done.revision}`;
  return `dealt with by ${by}, ${clock.day(done.at)}`;
};

/** What the writers of the sheets have been asked to change. */
export function MarksSection({
  marks,
  clock,
  writer,
}: {
  readonly marks: readonly SheetMark[];
  readonly clock: Clock;
  /** A writer is signed on and may say that a mark was dealt with. */
  readonly writer: boolean;
}) {
  return (
    <Section
      id="sheets"
      title="Sheets to change"
      empty={
        marks.length === 0
          ? 'No sheet is marked. A foreman marks one with “Change the sheet” at a deviation.'
          : undefined
      }
    >
      <div className="overflow-x-auto" tabIndex={0} role="group" aria-label="Sheets to change">
        <DataTable
          caption="Marked for the writers, the newest first"
          columns={['Sheet', 'Step', 'What should change', 'By', 'When', 'State']}
          rows={marks.map((mark) => ({
            key: mark.id,
            cells: [
              `${mark.title}, revision ${mark.revision}`,
              mark.stepTitle ?? 'The whole sheet',
              <q key="note">{mark.note}</q>,
              mark.by.label,
              mark.seen === undefined ? (
                clock.when(mark.at)
              ) : (
                <a key="when" href={timelineAddress(mark.seen)} className="underline">
                  {clock.when(mark.at)}
                </a>
              ),
              writer && mark.done === undefined ? (
                <MarkDone key="done" id={mark.id} what={mark.note} />
              ) : (
                stateOf(mark, clock)
              ),
            ],
          }))}
        />
      </div>
    </Section>
  );
}
