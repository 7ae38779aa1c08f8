'use client';
import { useCallback, useEffect, useMemo, useState } from 'react';
import { v7 as newId } from 'uuid';
import { writeEvent, type JobEvent, type JobState } from '@/lib/job';
import type { ToolCabinet } from '@/lib/kiosk';
import type { Person } from '@/lib/people';
import type { Bay, Vehicle } from '@/lib/shop';
import type { DemoVoices } from './demo-mechanic';
import { httpLink } from './http-link';
import { JobScreen } from './job-screen';
import type { KioskLink, SignedOn } from './link';
import { SignOn } from './sign-on';
import { StartJob, type ProcedureChoice } from './start-job';
import { KioskVoiceProvider } from './kiosk-voice';
import { PracticeScreen } from './practice-screen';
import { keepingClips } from './keep/keeping-clips';
import type { Opened } from './keep/restore';
import { useOpenBay } from './use-open-bay';
import { useShell } from '../shell/use-shell';
import { usePresence } from './use-presence';
import { useKioskPractice } from './use-kiosk-practice';
import { voiceLink, type VoiceLink } from './voice-link';

export interface KioskProps {
  readonly bay: Bay;
  readonly people: readonly Person[];
  readonly procedures: readonly ProcedureChoice[];
  /** As the store has them when the page is opened. */
  readonly signedOn: SignedOn | undefined;
  readonly job: JobState | undefined;
  readonly cabinet: ToolCabinet;
  readonly demo: DemoVoices | undefined;
  /** PINs of the demo people, where the shop is the demo. */
  readonly hint: string | undefined;
  readonly link?: KioskLink;
  readonly voices?: VoiceLink;
}

/** A bay's kiosk: who works here, on which job, and then the job itself. */
export function Kiosk({ link = httpLink, voices = voiceLink, bay, people, ...props }: KioskProps) {
  usePresence(bay.id);
  const [signedOn, setSignedOn] = useState(props.signedOn);
  const [job, setJob] = useState(props.job);
  /** What could not go out because the session ended: only its author may sign on again for it. */
  const [waitsFor, setWaitsFor] = useState<Person>();
  const [problem, setProblem] = useState<string>();
  const [busy, setBusy] = useState(false);
  /** Done here before the page was loaded, and not acknowledged. */
  const [waiting, setWaiting] = useState<readonly JobEvent[]>([]);
  /** Counts up when the job on the screen is another than the page came with. */
  const [turn, setTurn] = useState(0);

  const onOpened = (opened: Opened): void => {
    const author = people.find(({ id }) => id === opened.waiting[0]?.actor);
    const authorIsHere = author === undefined || author.id === opened.signedOn?.person.id;
    setSignedOn(authorIsHere ? opened.signedOn : undefined);
    setWaitsFor(authorIsHere ? undefined : author);
    setWaiting(opened.waiting);
    setJob(opened.job);
    setProblem(opened.problem);
    if (opened.job !== props.job) setTurn((count) => count + 1);
  };
  useShell(job === undefined);
  const own = useOpenBay(bay.id, link, props, onOpened);
  const disk = own?.disk;
  const jobLink = useMemo(
    () => (disk === undefined ? link : keepingClips(link, disk)),
    [link, disk],
  );
  useEffect(() => {
    // A disk that fails says so where it matters: when events are written.
    void disk?.keepBay({ bay: bay.id, job: job?.job, signedOn }).catch(() => undefined);
  }, [disk, bay.id, job?.job, signedOn]);

  const work = async (task: () => Promise<string | undefined>): Promise<void> => {
    setBusy(true);
    setProblem(undefined);
    const trouble = await task();
    setProblem(trouble);
    setBusy(false);
  };

  /** The job as the store has it now, unless what is on this screen is ahead of it. */
  const openJob = async (id: string): Promise<string | undefined> => {
    const read = await link.readJob(id);
    if (!read.ok) return read.error;
    setJob(read.value);
    return undefined;
  };

  const onSignOn = (person: Person, pin: string): void => {
    void work(async () => {
      const session = await link.signOn(person.id, pin, bay.id);
      if (!session.ok) return session.error;
      const trouble =
        job === undefined || waitsFor !== undefined ? undefined : await openJob(job.job);
      setSignedOn(session.value);
      setWaitsFor(undefined);
      return trouble;
    });
  };

  const onStart = (choice: { procedure: string; revision: number }, vehicle: Vehicle): void => {
    if (signedOn === undefined) return;
    const { person, device } = signedOn;
    const id = newId();
    const opened = writeEvent(
      { job: id, seq: 0 },
      { type: 'jobOpened', ...choice, vehicle, bay: bay.id },
      {
        now: new Date().toISOString(),
        newId: () => newId(),
        actor: person.id,
        role: person.role,
        device,
        input: { by: 'touch' },
      },
    );
    void work(async () => {
      const delivery = await link.deliver(id, [opened]);
      switch (delivery.kind) {
        case 'stored':
          return openJob(id);
        case 'refused':
          return delivery.message;
        case 'overtaken':
          return 'This job is open already. Load the page again.';
        case 'signOn':
          setSignedOn(undefined);
          return undefined;
        case 'unreachable':
          return 'The server cannot be reached. The job is not opened yet; try again.';
      }
    });
  };

  const onSomebodyElse = useCallback(() => {
    void link.signOff().then(() => {
      setSignedOn(undefined);
      setWaiting([]);
    });
  }, [link]);

  /** Until it is known what waits here, nothing can be done. */
  const kept = disk === undefined ? undefined : { disk, waiting };
  const asks = signedOn === undefined || waitsFor !== undefined;
  const { hears, practice } = useKioskPractice(bay, asks ? undefined : signedOn.person, voices);
  return (
    <KioskVoiceProvider value={hears}>
      {practice === undefined ? null : (
        <main className="flex min-h-dvh flex-col p-6 wide:h-dvh">
          <PracticeScreen {...practice} />
        </main>
      )}
      {asks ? (
        <main className="flex min-h-dvh flex-col p-6 wide:h-dvh">
          <SignOn
            bay={bay.name}
            people={people.filter(
              ({ id, role }) =>
                (role === 'mechanic' || role === 'foreman') &&
                (waitsFor === undefined || id === waitsFor.id),
            )}
            problem={problem}
            busy={busy || kept === undefined}
            hint={
              waitsFor === undefined
                ? props.hint
                : `${waitsFor.name}, your session has ended. Sign on again so that what you did is stored.`
            }
            onSignOn={onSignOn}
          />
        </main>
      ) : null}
      {signedOn === undefined ? null : kept === undefined ? (
        <main className="flex min-h-dvh flex-col p-6 wide:h-dvh">
          <p role="status" className="text-glance">
            {problem ?? `Opening ${bay.name} …`}
          </p>
        </main>
      ) : job === undefined ? (
        <main hidden={practice !== undefined} className="flex min-h-dvh flex-col p-6 wide:h-dvh">
          <StartJob
            bay={bay.name}
            procedures={props.procedures}
            problem={problem}
            busy={busy}
            onStart={onStart}
          />
        </main>
      ) : (
        <div hidden={asks || practice !== undefined}>
          <JobScreen
            key={`${job.job} ${turn}`}
            job={job}
            kept={kept}
            worker={{ ...signedOn, cabinet: props.cabinet }}
            people={people}
            link={jobLink}
            demo={props.demo}
            away={asks || practice !== undefined}
            onSignOnNeeded={() => {
              setWaitsFor(signedOn.person);
            }}
            onSomebodyElse={onSomebodyElse}
            onNextJob={() => {
              setJob(undefined);
            }}
          />
        </div>
      )}
    </KioskVoiceProvider>
  );
}
