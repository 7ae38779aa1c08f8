'use client';
import type { JobState } from '@/lib/job';
import { currentStep } from '@/lib/kiosk';
import type { Person } from '@/lib/people';
import { Button } from '../design/button';
import { ActionBar } from './action-bar';
import { ClosedView } from './closed-view';
import { DemoBar } from './demo-bar';
import type { DemoVoices } from './demo-mechanic';
import { HeardStrip } from './heard-strip';
import { JobFrame, Trouble } from './job-frame';
import { JobHeader } from './job-header';
import { JobMiddle } from './job-middle';
import type { KioskLink } from './link';
import { phrasesNow } from './phrases-now';
import { SayNow } from './say-now';
import { wantedNumber } from './step-view';
import type { Worker } from './use-job';
import { useKiosk } from './use-kiosk';

export interface JobScreenProps {
  readonly job: JobState;
  readonly worker: Worker;
  readonly people: readonly Person[];
  readonly link: KioskLink;
  readonly demo: DemoVoices | undefined;
  readonly onSignOnNeeded: () => void;
  /** Somebody must sign on first. */
  readonly away: boolean;
  readonly onSomebodyElse: () => void;
  readonly onNextJob: () => void;
}

/** One job on the screen. */
export function JobScreen(props: JobScreenProps) {
  const { worker, people, link } = props;
  const kiosk = useKiosk(props);
  const { state, overlay, setOverlay, send } = kiosk;
  const { job } = state;
  const onStep =
    overlay === undefined &&
    state.question === undefined &&
    state.view === 'step' &&
    job.phase === 'running';
  const trouble = kiosk.problem ?? (kiosk.settings.listens ? kiosk.deaf : undefined);
  return (
    <JobFrame
      header={
        <JobHeader
          job={job}
          person={worker.person.name}
          notStored={kiosk.pending}
          hearing={kiosk.hearing}
          onHearing={() => {
            setOverlay({ kind: 'kiosk' });
          }}
          onLedger={() => {
            setOverlay(undefined);
            send({ kind: 'open', view: 'ledger' });
          }}
          onPerson={() => {
            setOverlay({ kind: 'person' });
          }}
        />
      }
      alert={
        trouble === undefined ? null : (
          <Trouble text={trouble}>
            {kiosk.deaf === undefined || kiosk.problem !== undefined ? null : (
              <Button
                glyph="ear"
                onPress={() => {
                  kiosk.ears.start();
                }}
              >
                Listen again
              </Button>
            )}
          </Trouble>
        )
      }
      footer={
        <footer className="flex flex-col gap-3">
          <div className="flex items-center gap-4">
            <SayNow
              phrases={phrasesNow(state)}
              onAll={() => {
                setOverlay(undefined);
                send({ kind: 'open', view: 'phrases' });
              }}
            />
            <DemoBar demo={kiosk.demo} />
          </div>
          {overlay !== undefined || state.question !== undefined ? null : (
            <ActionBar
              state={state}
              wantsValue={wantedNumber(job, currentStep(job), state.chosen) !== undefined}
              onAct={(act) => {
                kiosk.act(act, 'touch');
              }}
              onValue={() => {
                setOverlay({ kind: 'pad', digit: '' });
              }}
            />
          )}
        </footer>
      }
    >
      {job.phase === 'closed' && state.view === 'step' ? (
        <ClosedView
          job={job}
          record={{ events: job.seq, head: undefined }}
          nameOf={(id) => people.find((person) => person.id === id)?.name ?? id}
          onNew={props.onNextJob}
        />
      ) : (
        <>
          <div className="min-h-0 grow">
            <JobMiddle
              kiosk={kiosk}
              worker={worker.person}
              device={worker.device}
              people={people}
              link={link}
              onSomebodyElse={props.onSomebodyElse}
            />
          </div>
          {onStep ? null : <HeardStrip outcome={state.outcome} />}
        </>
      )}
    </JobFrame>
  );
}
