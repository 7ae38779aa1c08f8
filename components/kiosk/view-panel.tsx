'use client';
import {
  currentStep,
  type Act,
  type KioskInput,
  type KioskState,
  type ToolCabinet,
} from '@/lib/kiosk';
import { handOver } from '@/lib/handover';
import { looseEnds } from '@/lib/ledger';
import { stepNumber } from '@/lib/procedure';
import { AdapterPanel } from './adapter-panel';
import { BoltsPanel } from './bolts-panel';
import { CautionPanel } from './caution-panel';
import { DeviationPanel } from './deviation-panel';
import { HandOverPanel } from './handover-panel';
import { HoldPanel } from './hold-panel';
import { LedgerPanel } from './ledger-panel';
import { OrderPanel } from './order-panel';
import { PartsPanel } from './parts-panel';
import { PhrasesPanel } from './phrases-panel';
import { torqueFigure } from './step-figures';

/** The panel that is open over the step; each says what was chosen as an input of the kiosk. */
export function ViewPanel({
  state,
  cabinet,
  nameOf,
  send,
  onAct,
  onForeman,
}: {
  readonly state: KioskState;
  readonly cabinet: ToolCabinet;
  readonly nameOf: (person: string) => string;
  readonly send: (input: KioskInput) => void;
  readonly onAct: (act: Act) => void;
  readonly onForeman: () => void;
}) {
  const { job } = state;
  const step = currentStep(job);
  const touch = { by: 'touch' } as const;
  const close = (): void => {
    send({ kind: 'open', view: 'step' });
  };
  const choose = (fastener: string): void => {
    send({ kind: 'choose', fastener });
  };
  switch (state.view) {
    case 'parts':
      return (
        <PartsPanel
          job={job}
          onClose={close}
          onLeftOver={(kitItem, count) => {
            send({ kind: 'leftOver', kitItem, count });
          }}
        />
      );
    case 'order':
      return (
        <OrderPanel job={job} step={step} chosen={state.chosen} onChoose={choose} onClose={close} />
      );
    case 'bolts':
      return <BoltsPanel job={job} onClose={close} />;
    case 'caution':
      return <CautionPanel step={step} onClose={close} />;
    case 'ledger':
      return (
        <LedgerPanel
          ends={looseEnds(job)}
          nameOf={nameOf}
          stepNumber={(id) => stepNumber(job.revision, id)}
          onGoTo={(id) => {
            const intent = { kind: 'goTo', step: stepNumber(job.revision, id) } as const;
            send({ kind: 'act', intent, via: touch });
          }}
          onForeman={onForeman}
          onCloseJob={() => {
            send({ kind: 'act', intent: { kind: 'closeJob' }, via: touch });
          }}
          onClose={close}
        />
      );
    case 'phrases':
      return <PhrasesPanel state={state} onAct={onAct} onClose={close} />;
    case 'adapter': {
      const figure = torqueFigure(job, step);
      return figure === undefined ? null : (
        <AdapterPanel
          label={figure.label}
          specification={figure.specification}
          cabinet={cabinet}
          inUse={state.adapter}
          now={job.lastAt}
          onUse={(inUse, by) => {
            send({ kind: 'adapter', inUse, via: { by } });
          }}
          onClose={close}
        />
      );
    }
    case 'deviation':
      return (
        <DeviationPanel
          onClose={close}
          onKind={(deviation) => {
            send({ kind: 'deviation', deviation });
          }}
        />
      );
    case 'hold':
      return (
        <HoldPanel
          onClose={close}
          onReason={(reason) => {
            send({ kind: 'act', intent: { kind: 'hold', reason }, via: touch });
          }}
          onOther={() => {
            send({ kind: 'act', intent: { kind: 'hold' }, via: touch });
          }}
        />
      );
    case 'handover':
      return (
        <HandOverPanel
          summary={handOver(job)}
          onSay={() => {
            send({ kind: 'act', intent: { kind: 'repeat' }, via: touch });
          }}
          onClose={close}
        />
      );
    case 'step':
      return null;
  }
}
