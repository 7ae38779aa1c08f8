'use client';
import { useEffect, useRef, useState } from 'react';
import type { JobState } from '@/lib/job';
import { ownDisk, type OwnDisk } from './keep/own-disk';
import { openBay, type Opened } from './keep/restore';
import type { KioskLink, SignedOn } from './link';

const tryAgainMs = 5_000;

/**
 * Finds out what this kiosk has done that is not stored, and tells it once, before anything can be done here; again
 * and again where the job cannot be shown yet. Answers the disk once that is through.
 */
export const useOpenBay = (
  bay: string,
  link: KioskLink,
  shown: { readonly job: JobState | undefined; readonly signedOn: SignedOn | undefined },
  onOpened: (opened: Opened) => void,
): OwnDisk | undefined => {
  const [disk, setDisk] = useState<OwnDisk>();
  const ports = useRef({ link, shown, onOpened });
  useEffect(() => {
    let wanted = true;
    let timer: ReturnType<typeof setTimeout> | undefined;
    const { link: server, shown: page, onOpened: tell } = ports.current;
    const open = async (): Promise<void> => {
      const own = await ownDisk();
      const opened = await openBay(own.disk, server, bay, page);
      if (!wanted) return;
      tell(opened);
      if (opened.job === undefined && opened.waiting.length > 0)
        timer = setTimeout(() => void open(), tryAgainMs);
      else setDisk(own);
    };
    void open();
    return () => {
      wanted = false;
      clearTimeout(timer);
    };
  }, [bay]);
  return disk;
};
