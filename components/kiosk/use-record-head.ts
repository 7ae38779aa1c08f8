'use client';
import { useEffect, useState } from 'react';
import type { JobState } from '@/lib/job';
import type { KioskLink } from './link';

/** The head of a closed job's record, once all of it is stored; undefined until then, or where it cannot be read. */
export const useRecordHead = (
  { job, phase, seq }: JobState,
  pending: number,
  link: KioskLink,
): string | undefined => {
  const [head, setHead] = useState<string>();
  const whole = phase === 'closed' && pending === 0;
  useEffect(() => {
    if (!whole) return;
    let wanted = true;
    void link.readHead(job).then((read) => {
      if (wanted && read.ok) setHead(read.value);
    });
    return () => {
      wanted = false;
    };
  }, [whole, job, seq, link]);
  return whole ? head : undefined;
};
