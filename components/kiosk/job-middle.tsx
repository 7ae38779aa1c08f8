'use client';
import { useRouter } from 'next/navigation';
import { v7 as newId } from 'uuid';
import type { JobState } from '@/lib/job';
import { currentStep, toolsForStep, type ToolCabinet } from '@/lib/kiosk';
import { looseEnds } from '@/lib/ledger';
import type { Conflict } from '@/lib/outbox';
import type { Person } from '@/lib/people';
import { noteSoundDays } from '@/lib/shop';
import { AsideList } from './aside-list';
import { ForemanPanel } from './foreman-panel';
import { ConflictPanel } from './conflict-panel';
import { ElsewherePanel } from './elsewhere-panel';
import { HeldView } from './hold-panel';
import type { KioskDisk } from './keep/disk';
import { KioskPanel } from './kiosk-panel';
import type { KioskLink } from './link';
import { PersonPanel } from './person-panel';
import { QuestionPanel } from './question-panel';
import { asideOf } from './set-aside';
import { ShopSwitches } from './shop-switches';
import { StepScreen } from './step-screen';
import { wantedNumber } from './wanted-number';
import { useForeman } from './use-foreman';
import type { Overlay, RunningKiosk } from './use-kiosk';
import { ValuePad } from './value-pad';
import { ViewPanel } from './view-panel';

interface MiddleProps {
  readonly kiosk: RunningKiosk;
  readonly worker: Person;
  readonly device: string;
  readonly cabinet: ToolCabinet;
  readonly people: readonly Person[];
  readonly link: KioskLink;
  readonly disk: KioskDisk;
  readonly onSomebodyElse: () => void;
}

function Foreman({ kiosk, device, people, link }: MiddleProps) {
  const { state, send, setOverlay } = kiosk;
  const visit = useForeman(state.job, device, link, (job: JobState) => {
    send({ kind: 'job', job });
    setOverlay(undefined);
  });
  return (
    <ForemanPanel
      job={state.job}
      people={people}
      problem={visit.problem}
      busy={visit.busy}
      onDecide={visit.decide}
      onClose={() => {
        setOverlay(undefined);
      }}
    />
  );
}

function Shop({ cabinet, link }: MiddleProps) {
  const router = useRouter();
  return (
    <ShopSwitches
      settings={cabinet.settings ?? {}}
      link={link}
      onKept={() => {
        router.refresh();
      }}
    />
  );
}

function Over({ overlay, ...props }: MiddleProps & { readonly overlay: Overlay }) {
  const { kiosk } = props;
  const close = (): void => {
    kiosk.setOverlay(undefined);
  };
  switch (overlay.kind) {
    case 'foreman':
      return <Foreman {...props} />;
    case 'person':
      return (
        <PersonPanel
          name={props.worker.name}
          notStored={kiosk.outbox.count}
          onSomebodyElse={props.onSomebodyElse}
          onClose={close}
        />
      );
    case 'kiosk':
      return (
        <KioskPanel
          hearing={kiosk.hearing}
          trouble={kiosk.deaf}
          settings={kiosk.settings}
          voiceAvailable={kiosk.voiceAvailable}
          onSettings={kiosk.setSettings}
          onListen={() => {
            kiosk.ears.start();
          }}
          aside={<AsideList disk={props.disk} />}
          shop={props.worker.role === 'foreman' ? <Shop {...props} /> : undefined}
          onClose={close}
        />
      );
    case 'pad': {
      const { job, chosen } = kiosk.state;
      const wanted = wantedNumber(job, currentStep(job), chosen);
      return wanted === undefined ? null : (
        <ValuePad
          wanted={wanted}
          first={overlay.digit}
          onClose={close}
          onValue={(value, unit, by) => {
            const intent = {
              kind: 'value',
              value,
              ...(unit === undefined ? {} : { unit }),
            } as const;
            close();
            kiosk.send({ kind: 'act', intent, via: { by } });
          }}
        />
      );
    }
  }
}

function Conflicting({
  kiosk,
  worker,
  device,
  conflict,
  nameOf,
}: MiddleProps & { readonly conflict: Conflict; readonly nameOf: (person: string) => string }) {
  return (
    <ConflictPanel
      conflict={conflict}
      nameOf={nameOf}
      onTop={() => {
        kiosk.runner()?.putOnTop();
      }}
      onAside={() => {
        const env = { now: new Date().toISOString(), newId: () => newId() };
        const { aside, instead, job } = asideOf(conflict, { person: worker, device }, env);
        kiosk.runner()?.setAside(aside, instead, job);
      }}
      onAgain={() => {
        kiosk.runner()?.tryAgain();
      }}
    />
  );
}

/** The one thing in the middle of the screen: what lies over the job, a question, a panel, or the step. */
export function JobMiddle(props: MiddleProps) {
  const { kiosk, people } = props;
  const { state, send, overlay } = kiosk;
  const { job, question } = state;
  const nameOf = (id: string): string => people.find((person) => person.id === id)?.name ?? id;
  const act = (kind: 'yes' | 'no' | 'resume') => (): void => {
    send({ kind: 'act', intent: { kind }, via: { by: 'touch' } });
  };
  if (kiosk.outbox.conflict !== undefined)
    return <Conflicting {...props} conflict={kiosk.outbox.conflict} nameOf={nameOf} />;
  // How the kiosk sounds, and who works at it, is nothing of the job.
  if (overlay?.kind === 'kiosk' || overlay?.kind === 'person')
    return <Over {...props} overlay={overlay} />;
  if (kiosk.elsewhere !== undefined)
    return (
      <ElsewherePanel
        at={kiosk.elsewhere}
        nameOf={nameOf}
        onTakeOver={kiosk.takeOver}
        onLeave={props.onSomebodyElse}
      />
    );
  if (overlay !== undefined) return <Over {...props} overlay={overlay} />;
  if (question !== undefined)
    return (
      <QuestionPanel
        question={question}
        dictating={kiosk.dictating}
        soundDays={noteSoundDays(props.cabinet.settings ?? {})}
        onYes={act('yes')}
        onNo={act('no')}
        onReason={(text) => {
          send({ kind: 'reason', text, via: { by: 'touch' } });
        }}
        onDictate={kiosk.dictate}
      />
    );
  // Chosen from its own list, a hold leaves that list open underneath.
  if (job.hold !== undefined && (state.view === 'step' || state.view === 'hold'))
    return (
      <HeldView hold={job.hold} ends={looseEnds(job)} nameOf={nameOf} onResume={act('resume')} />
    );
  if (state.view !== 'step')
    return (
      <ViewPanel
        state={state}
        cabinet={props.cabinet}
        nameOf={nameOf}
        send={send}
        onAct={(chosen) => {
          kiosk.act(chosen, 'touch');
        }}
        onForeman={() => {
          kiosk.setOverlay({ kind: 'foreman' });
        }}
      />
    );
  return (
    <StepScreen
      state={state}
      forming={kiosk.forming}
      cramped={kiosk.trouble !== undefined}
      tools={toolsForStep(job, currentStep(job), props.cabinet, job.lastAt, state.adapter)}
      settings={props.cabinet.settings ?? {}}
      onChoose={(fastener) => {
        send({ kind: 'choose', fastener });
      }}
    />
  );
}
