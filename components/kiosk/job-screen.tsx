'use client';
import type { JobState } from '@/lib/job';
import { currentStep, type Act } from '@/lib/kiosk';
import type { Person } from '@/lib/people';
import { Button } from '../design/button';
import { ActButtons, ActionBar } from './action-bar';
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
import { wantedNumber } from './wanted-number';
import type { Kept, Worker } from './use-job';
import { useKiosk } from './use-kiosk';
import { useRecordHead } from './use-record-head';
import { useSilence } from './use-presence';

export interface JobScreenProps {
  readonly job: JobState;
  readonly kept: Kept;
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
  const head = useRecordHead(kiosk.state.job, kiosk.outbox.count, link);
  const { state, overlay, setOverlay, send } = kiosk;
  const { job } = state;
  /** Something waits for an answer first. */
  /** Somebody must decide first what becomes of the job. */
  const decides = kiosk.outbox.conflict !== undefined || kiosk.elsewhere !== undefined;
  const busy =
    decides || overlay !== undefined || state.question !== undefined || state.view === 'adapter';
  const onStep = !busy && state.view === 'step' && job.phase === 'running';
  const onTouch = (act: Act): void => {
    kiosk.act(act, 'touch');
  };
  useSilence(kiosk.silent);
  return (
    <JobFrame
      header={
        <JobHeader
          job={job}
          person={worker.person.name}
          outbox={kiosk.outbox}
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
        kiosk.trouble === undefined ? null : (
          <Trouble text={kiosk.trouble}>
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
        decides ? null : (
          <footer className="flex flex-col gap-3">
            <div className="flex flex-wrap items-center gap-3 wide:flex-nowrap">
              <SayNow phrases={phrasesNow(state)} />
              <div className="flex flex-wrap gap-3 wide:shrink-0">
                {busy ? null : (
                  <ActButtons
                    state={state}
                    names={['deviation', 'hold', 'foreman']}
                    keys={false}
                    onAct={onTouch}
                  />
                )}
                <Button
                  onPress={() => {
                    setOverlay(undefined);
                    send({ kind: 'open', view: 'phrases' });
                  }}
                >
                  All phrases and keys
                </Button>
              </div>
            </div>
            {busy ? null : (
              <ActionBar
                state={state}
                wantsValue={
                  job.phase === 'running' &&
                  wantedNumber(job, currentStep(job), state.chosen) !== undefined
                }
                demo={<DemoBar demo={kiosk.demo} />}
                onAct={onTouch}
                onValue={() => {
                  setOverlay({ kind: 'pad', digit: '' });
                }}
              />
            )}
          </footer>
        )
      }
    >
      {!decides && job.phase === 'closed' && state.view === 'step' ? (
        <ClosedView
          job={job}
          record={{ events: job.seq, waiting: kiosk.outbox.count, head }}
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
              cabinet={worker.cabinet ?? { tools: [], cycles: {} }}
              people={people}
              link={link}
              disk={props.kept.disk}
              onSomebodyElse={props.onSomebodyElse}
            />
          </div>
          {onStep || decides ? null : (
            <HeardStrip outcome={state.outcome} forming={kiosk.forming} />
          )}
        </>
      )}
    </JobFrame>
  );
}
