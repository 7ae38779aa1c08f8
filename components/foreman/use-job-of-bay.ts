'use client';
import { useCallback, useEffect, useState } from 'react';
import { v7 as newId } from 'uuid';
import type { Happening, JobState } from '@/lib/job';
import { httpLink } from '../kiosk/http-link';
import { foremanEvent } from './acts';
import { sendForemanEvents, type ForemanSignedOn } from './foreman-link';

export interface ForemansJob {
  /** As the store had it last; absent while it is read for the first time. */
  readonly job: JobState | undefined;
  readonly problem: string | undefined;
  readonly busy: boolean;
  readonly act: (happening: Happening) => Promise<boolean>;
}

/** A job as the store has it, read again whenever the wall says that it went on; and a foreman's acts on it. */
export const useForemansJob = (
  id: string,
  seq: number,
  me: ForemanSignedOn,
  onSignedOff: () => void,
): ForemansJob => {
  const [job, setJob] = useState<JobState>();
  const [problem, setProblem] = useState<string>();
  const [busy, setBusy] = useState(false);
  const read = useCallback(async (): Promise<void> => {
    const now = await httpLink.readJob(id);
    if (now.ok) setJob(now.value);
    else setProblem(now.error);
  }, [id]);
  const known = job?.job === id ? job.seq : 0;
  useEffect(() => {
    if (seq > known) void read();
  }, [seq, known, read]);
  const act = async (happening: Happening): Promise<boolean> => {
    if (job === undefined) return false;
    setProblem(undefined);
    const made = foremanEvent(job, me, happening, {
      now: new Date().toISOString(),
      newId: () => newId(),
    });
    if (!made.ok) {
      setProblem(made.error);
      return false;
    }
    setBusy(true);
    const sent = await sendForemanEvents(id, [made.value.event]);
    setBusy(false);
    if (sent.ok) {
      setJob(made.value.job);
      return true;
    }
    if (sent.error.signedOff) onSignedOff();
    await read();
    setProblem(sent.error.message);
    return false;
  };
  return { job: job?.job === id ? job : undefined, problem, busy, act };
};
