'use client';
import { Button } from '../design/button';
import { Panel } from '../design/panel';
import { PractiseButton } from './practise-button';

/** Who is signed on, and the way for somebody else to take over. */
export function PersonPanel({
  name,
  notStored,
  onSomebodyElse,
  onClose,
}: {
  readonly name: string;
  readonly notStored: number;
  readonly onSomebodyElse: () => void;
  readonly onClose: () => void;
}) {
  return (
    <Panel title={`${name} is signed on`} onClose={onClose}>
      <div className="flex flex-col items-start gap-5">
        {notStored === 0 ? null : (
          <p className="text-glance">
            {notStored} of {name}’s entries are not stored yet. They go out as {name}, so wait until
            they are stored.
          </p>
        )}
        <Button kind="main" glyph="person" onPress={onSomebodyElse} disabled={notStored > 0}>
          Somebody else works here now
        </Button>
        <PractiseButton onPress={onClose} />
      </div>
    </Panel>
  );
}
