'use client';
import type { HandOver } from '@/lib/handover';
import { Button } from '../design/button';
import { Panel } from '../design/panel';
import { keyOf } from './key-of';

/** More is not read in twenty seconds; the rest stands in the ledger. */
const mostLines = 6;

function Lines({ title, lines }: { readonly title: string; readonly lines: readonly string[] }) {
  if (lines.length === 0) return null;
  const shown = lines.length > mostLines ? lines.slice(0, mostLines - 1) : lines;
  const rest = lines.length - shown.length;
  return (
    <section>
      <h3 className="text-body font-bold">{title}</h3>
      <ul className="text-glance">
        {shown.map((line) => (
          <li key={line}>{line}</li>
        ))}
        {rest === 0 ? null : <li>and {rest} more in the list of loose ends</li>}
      </ul>
    </section>
  );
}

/** Where a job stands, for who takes it over: read in twenty seconds, gone with "next". */
export function HandOverPanel({
  summary,
  onSay,
  onClose,
}: {
  readonly summary: HandOver;
  readonly onSay: () => void;
  readonly onClose: () => void;
}) {
  const { where, loose, trays, lastHeard, before } = summary;
  return (
    <Panel
      title="You take this job over"
      actions={
        <>
          <Button glyph="speak" keys={keyOf('repeat')} onPress={onSay}>
            Say it
          </Button>
          <Button kind="main" glyph="forward" keys={keyOf('next')} onPress={onClose}>
            I know, go on
          </Button>
        </>
      }
    >
      <div className="grid gap-x-10 gap-y-5 wide:grid-cols-2">
        <p className="text-read font-bold wide:col-span-2" data-handover="where">
          {where}
        </p>
        <Lines
          title={
            before.length === 0
              ? 'By the record nothing is open on the vehicle'
              : 'Before it is started or moved'
          }
          lines={before}
        />
        <Lines title="Loose right now" lines={loose} />
        <Lines
          title="In the trays"
          lines={trays.map(({ tray, holds }) => `${tray}: ${holds.join('; ')}`)}
        />
        <Lines title="Last value" lines={lastHeard === undefined ? [] : [lastHeard]} />
      </div>
    </Panel>
  );
}
