import type { HoldSection as Holds } from '@/lib/review';
import { DataTable, HoldsChart } from '../charts';
import { timelineAddress } from './address';
import type { Clock } from './clock';
import { Section } from './section';
import { WhyText } from './transcript';
import { minutesText } from '../design/duration';
import { stepWords } from './words';

/** Why jobs stood, how often and how long. */
export function HoldSection({
  holds,
  clock,
  foreman,
}: {
  readonly holds: Holds;
  readonly clock: Clock;
  readonly foreman: boolean;
}) {
  return (
    <Section id="holds" title="Holds" empty={holds.total === 0 ? 'No job was held.' : undefined}>
      <HoldsChart
        bars={holds.byReason.map((row) => ({
          ...row,
          reason: row.reason || 'In words of their own',
        }))}
      />
      <details className="text-note">
        <summary className="inline-flex min-h-[2rem] cursor-pointer items-center underline">
          Each hold, the newest first
        </summary>
        <div
          className="relative mt-2 max-h-[40rem] overflow-auto"
          tabIndex={0}
          role="group"
          aria-label="Each hold"
        >
          <DataTable
            caption={
              holds.total > holds.rows.length
                ? `The newest ${holds.rows.length} of ${holds.total} holds`
                : 'Each hold, the newest first'
            }
            columns={['When', 'Bay', 'Step', 'Why', 'By', 'How long']}
            rows={holds.rows.map((row) => ({
              key: `${row.job}/${row.seq}`,
              cells: [
                <a key="when" href={timelineAddress(row)} className="underline">
                  {clock.when(row.at)}
                </a>,
                row.bay.name,
                stepWords(row),
                <WhyText key="why" why={row.why} sounds={foreman} />,
                row.by.label,
                row.minutes === undefined ? 'still on hold' : minutesText(row.minutes),
              ],
            }))}
          />
        </div>
      </details>
    </Section>
  );
}
