'use client';
import { useCallback, useEffect, useRef, useState } from 'react';
import { v7 as newId } from 'uuid';
import type { JobState } from '@/lib/job';
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
import { EventQueue } from './event-queue';
import type { KioskLink } from './link';
import { onTopOf } from './on-top-of';
import { onStoredJob } from './presence-signal';

export interface Worker {
  readonly person: Person;
  readonly device: string;
  readonly cabinet?: ToolCabinet;
}

export interface RunningJob {
  readonly state: KioskState;
  readonly send: (input: KioskInput) => void;
  readonly pending: number;
  /** Why the store refused what was done last; cleared by the next input. */
  readonly problem: string | undefined;
  /** Takes over the job as the store has it. */
  readonly reload: () => Promise<void>;
}

const waitMs = (ms: number): Promise<void> =>
  new Promise((resolve) => {
    setTimeout(resolve, ms);
  });

/**
 * The kiosk's state, fed by inputs. Effects that store are queued to the server in order; the others go to `onEffect`.
 */
export const useJob = (
  initial: JobState,
  worker: Worker,
  link: KioskLink,
  onEffect: (effect: Exclude<KioskEffect, { kind: 'store' }>, state: KioskState) => void,
  onSignOnNeeded: () => void,
): RunningJob => {
  const [state, setState] = useState(() => openKiosk(initial));
  const [pending, setPending] = useState(0);
  const [problem, setProblem] = useState<string>();
  const current = useRef(state);
  const ports = useRef({ worker, link, onEffect, onSignOnNeeded });
  useEffect(() => {
    ports.current = { worker, link, onEffect, onSignOnNeeded };
  });
  const queue = useRef<EventQueue>(undefined);
  const job = initial.job;

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

  const reload = useCallback(async (): Promise<void> => {
    const read = await ports.current.link.readJob(job);
    if (read.ok) send({ kind: 'job', job: read.value });
    else setProblem(read.error);
  }, [job, send]);

  useEffect(() => {
    const made = new EventQueue({
      deliver: (events) => ports.current.link.deliver(job, events),
      wait: waitMs,
      onChange: setPending,
      onSignOnNeeded: () => {
        ports.current.onSignOnNeeded();
      },
      onRefused: (message, overtaken) => {
        void ports.current.link.readJob(job).then((read) => {
          const again = read.ok ? onTopOf(read.value, overtaken) : undefined;
          if (again === undefined) {
            void reload().then(() => {
              setProblem(message);
            });
            return;
          }
          send({ kind: 'job', job: again.job });
          made.push(again.events);
        });
      },
    });
    queue.current = made;
    const online = (): void => {
      made.resume();
    };
    window.addEventListener('online', online);
    return () => {
      window.removeEventListener('online', online);
      made.stop();
    };
  }, [job, reload, send]);

  // A foreman wrote to the job from elsewhere: it is taken over while nothing of ours is under way.
  useEffect(() => {
    const behind = (seq: number): boolean =>
      queue.current?.pending === 0 &&
      current.current.question === undefined &&
      seq > current.current.job.seq;
    return onStoredJob(({ id, seq }) => {
      if (id !== job || !behind(seq)) return;
      void ports.current.link.readJob(job).then((read) => {
        if (read.ok && behind(read.value.seq)) send({ kind: 'job', job: read.value });
      });
    });
  }, [job, send]);

  // Somebody signed on again: what waited goes out in their session.
  useEffect(() => {
    queue.current?.resume();
  }, [worker]);

  return { state, send, pending, problem, reload };
};
