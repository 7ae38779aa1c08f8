'use client';
import { useCallback, useEffect, useRef, useState } from 'react';
import { v7 as newId } from 'uuid';
import { replay, type JobEvent, type JobState } from '@/lib/job';
import {
  kioskTransition,
  openKiosk,
  type KioskEffect,
  type KioskEnv,
  type KioskInput,
  type KioskState,
  type ToolCabinet,
} from '@/lib/kiosk';
import type { Person } from '@/lib/people';
import type { KioskDisk } from './keep/disk';
import { nothingWaits, OutboxRunner, type OutboxView } from './keep/outbox-runner';
import type { KioskLink } from './link';
import { onStoredJob } from './presence-signal';

export interface Worker {
  readonly person: Person;
  readonly device: string;
  readonly cabinet?: ToolCabinet;
}

/** What was done in the job before the page was loaded and is not acknowledged yet, and where it is kept. */
export interface Kept {
  readonly disk: KioskDisk;
  readonly waiting: readonly JobEvent[];
}

export interface RunningJob {
  readonly state: KioskState;
  readonly send: (input: KioskInput) => void;
  /** What is not yet stored at the server. */
  readonly outbox: OutboxView;
  /** What a person decides about it. */
  readonly runner: () => OutboxRunner | undefined;
  /** What is wrong with what was done last; cleared by the next input. */
  readonly problem: string | undefined;
}

const waitMs = (ms: number): Promise<void> =>
  new Promise((resolve) => {
    setTimeout(resolve, ms);
  });

const diskTrouble =
  'This kiosk cannot write to its own disk: do not switch it off before everything is stored.';

/**
 * The kiosk's state, fed by inputs. Effects that store go to the kiosk's own disk and then, in order, to the server;
 * the others go to `onEffect`.
 */
export const useJob = (
  initial: JobState,
  kept: Kept,
  worker: Worker,
  link: KioskLink,
  onEffect: (effect: Exclude<KioskEffect, { kind: 'store' }>, state: KioskState) => void,
  onSignOnNeeded: () => void,
): RunningJob => {
  const [state, setState] = useState(() => openKiosk(initial));
  const [outbox, setOutbox] = useState(nothingWaits);
  const [problem, setProblem] = useState<string>();
  const current = useRef(state);
  const ports = useRef({ worker, link, onEffect, onSignOnNeeded });
  useEffect(() => {
    ports.current = { worker, link, onEffect, onSignOnNeeded };
  });
  const queue = useRef<OutboxRunner>(undefined);
  const job = initial.job;
  const { disk } = kept;
  const atFirst = useRef(kept.waiting);

  const send = useCallback((input: KioskInput): void => {
    const { worker: by } = ports.current;
    const env: KioskEnv = {
      now: new Date().toISOString(),
      newId: () => newId(),
      actor: by.person.id,
      role: by.person.role,
      device: by.device,
      ...(by.cabinet === undefined ? {} : { cabinet: by.cabinet }),
    };
    const step = kioskTransition(current.current, input, env);
    current.current = step.state;
    setState(step.state);
    setProblem(undefined);
    queue.current?.push(step.effects.flatMap((one) => (one.kind === 'store' ? [one.event] : [])));
    for (const effect of step.effects)
      if (effect.kind !== 'store') ports.current.onEffect(effect, step.state);
  }, []);

  useEffect(() => {
    const made = new OutboxRunner(
      {
        job,
        disk,
        deliver: (events) => ports.current.link.deliver(job, events),
        readRecord: () => ports.current.link.readRecord(job),
        wait: waitMs,
        onChange: setOutbox,
        onSignOnNeeded: () => {
          ports.current.onSignOnNeeded();
        },
        onJob: (after) => {
          send({ kind: 'job', job: after });
        },
        onDiskTrouble: () => {
          setProblem(diskTrouble);
        },
      },
      atFirst.current,
    );
    queue.current = made;
    made.resume();
    const online = (): void => {
      made.resume();
    };
    window.addEventListener('online', online);
    return () => {
      window.removeEventListener('online', online);
      made.stop();
    };
  }, [job, disk, send]);

  // So that the job can be opened again without the server.
  useEffect(() => {
    void ports.current.link.readRecord(job).then((read) => {
      if (read.ok) void disk.keepRecord(job, read.value).catch(() => undefined);
    });
  }, [job, disk]);

  // A foreman wrote to the job from elsewhere: it is taken over while nothing of ours is under way.
  useEffect(() => {
    const behind = (seq: number): boolean =>
      queue.current?.view.count === 0 &&
      current.current.question === undefined &&
      seq > current.current.job.seq;
    return onStoredJob(({ id, seq }) => {
      if (id !== job || !behind(seq)) return;
      void ports.current.link.readRecord(job).then((read) => {
        if (!read.ok) return;
        const now = replay(read.value.revision, read.value.events);
        if (!now.ok || !behind(now.value.seq)) return;
        void disk.keepRecord(job, read.value).catch(() => undefined);
        send({ kind: 'job', job: now.value });
      });
    });
  }, [job, disk, send]);

  // Somebody signed on again: what waited goes out in their session.
  useEffect(() => {
    queue.current?.resume();
  }, [worker]);

  const runner = useCallback(() => queue.current, []);
  return { state, send, outbox, runner, problem };
};
