'use client';
import type { DeviationKind } from '@/lib/job';
import { Button } from '../design/button';
import { Panel } from '../design/panel';

/** What is noted by hand. A step left out and rework make their own note. */
const kinds: readonly { kind: DeviationKind; label: string; hint: string }[] = [
  { kind: 'anotherWay', label: 'Done another way', hint: 'Other tool, other method' },
  {
    kind: 'missingOrDamaged',
    label: 'Part missing or damaged',
    hint: 'On the vehicle or in the kit',
  },
  { kind: 'orderChanged', label: 'Order changed', hint: 'Other than the sheet has it' },
  { kind: 'reusedAgainstSheet', label: 'Part used again', hint: 'Where the sheet wants a new one' },
  { kind: 'outOfSpec', label: 'Out of spec', hint: 'Something measured or seen' },
];

/** Which kind of deviation; its reason is asked next. */
export function DeviationPanel({
  onKind,
  onClose,
}: {
  readonly onKind: (kind: DeviationKind) => void;
  readonly onClose: () => void;
}) {
  return (
    <Panel
      title="What was different?"
      onClose={onClose}
      lead="The foreman decides on it; the reason is asked next."
    >
      <div className="grid gap-4 wide:grid-cols-2">
        {kinds.map(({ kind, label, hint }) => (
          <Button
            key={kind}
            wide
            className="min-h-[8rem]"
            onPress={() => {
              onKind(kind);
            }}
          >
            <span className="block text-glance font-bold">{label}</span>
            <span className="text-body text-quiet">{hint}</span>
          </Button>
        ))}
      </div>
    </Panel>
  );
}
