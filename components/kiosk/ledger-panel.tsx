'use client';
import type { LooseEnd, LooseEndKind } from '@/lib/ledger';
import { looseEndKinds } from '@/lib/ledger';
import { Button } from '../design/button';
import { Glyph } from '../design/glyph';
import { Panel } from '../design/panel';
import { keyOf } from './key-of';

const headings: Readonly<Record<LooseEndKind, string>> = {
  fluidOut: 'Fluids out and not back',
  fluidUnbalanced: 'Fluids that do not balance',
  partOff: 'Parts off',
  kitUnaccounted: 'Kit items not accounted for',
  fastenerOpen: 'Fasteners not final',
  threadLockerDue: 'Thread-locker due',
  replacementDue: 'New ones due',
  readingMissing: 'Readings missing',
  readingOutOfSpec: 'Readings out of spec',
  readingNotProvable: 'Readings that cannot be proven',
  checkFailed: 'Checks failed',
  checkMissing: 'Checks not made',
  deviationUndecided: 'Deviations undecided',
  stepOpen: 'Steps open',
};

export interface LedgerPanelProps {
  readonly ends: readonly LooseEnd[];
  readonly nameOf: (person: string) => string;
  readonly stepNumber: (step: string) => number;
  readonly onGoTo: (step: string) => void;
  readonly onForeman: () => void;
  readonly onCloseJob: () => void;
  readonly onClose: () => void;
}

function Row({
  end,
  nameOf,
  stepNumber,
  onGoTo,
}: { end: LooseEnd } & Pick<LedgerPanelProps, 'nameOf' | 'stepNumber' | 'onGoTo'>) {
  const { step } = end;
  return (
    <li className="flex items-center gap-5 border-b border-line py-2">
      <Glyph
        name={end.signedBy === undefined ? 'open' : 'tick'}
        className={end.signedBy === undefined ? 'text-unsure' : 'text-good'}
      />
      <p className="min-w-0 grow">
        <span className="text-glance">{end.text}</span>
        {end.detail === undefined ? null : (
          <span className="block text-body text-quiet">{end.detail}</span>
        )}
        {end.signedBy === undefined ? null : (
          <span className="block text-body text-good">Signed by {nameOf(end.signedBy)}</span>
        )}
      </p>
      {step === undefined ? null : (
        <Button
          glyph="forward"
          onPress={() => {
            onGoTo(step);
          }}
        >
          Step {stepNumber(step)}
        </Button>
      )}
    </li>
  );
}

/** Everything that is still open on the vehicle, by kind; each leads to the step that settles it. */
export function LedgerPanel({
  ends,
  nameOf,
  stepNumber,
  onGoTo,
  onForeman,
  onCloseJob,
  onClose,
}: LedgerPanelProps) {
  const open = ends.filter(({ signedBy }) => signedBy === undefined).length;
  return (
    <Panel
      title={open === 0 ? 'Nothing is left open' : `${open} loose ${open === 1 ? 'end' : 'ends'}`}
      onClose={onClose}
      actions={
        open === 0 ? (
          <Button kind="main" glyph="close" keys={keyOf('close')} onPress={onCloseJob}>
            Close the job
          </Button>
        ) : (
          <Button glyph="person" onPress={onForeman}>
            Foreman decides
          </Button>
        )
      }
    >
      <div className="flex flex-col gap-6 pr-3">
        {looseEndKinds.map((kind) => {
          const these = ends.filter((end) => end.kind === kind);
          return these.length === 0 ? null : (
            <section key={kind} aria-label={headings[kind]}>
              <h3 className="text-body font-bold text-quiet">
                {headings[kind]} · {these.length}
              </h3>
              <ul>
                {these.map((end) => (
                  <Row
                    key={end.key}
                    end={end}
                    nameOf={nameOf}
                    stepNumber={stepNumber}
                    onGoTo={onGoTo}
                  />
                ))}
              </ul>
            </section>
          );
        })}
      </div>
    </Panel>
  );
}
