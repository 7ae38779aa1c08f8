'use client';
import { useEffect, useRef, useState } from 'react';
import { useRouter } from 'next/navigation';
import type { ShownMoment } from '@/lib/timeline';

interface Elsewhere {
  /** Where the page is, or soon will be: addresses that this hand-over went through. */
  readonly pages: readonly number[];
  readonly at: number;
  readonly shown: ShownMoment | undefined;
  readonly failed: boolean;
}

/** The page follows once nothing has moved for so long. */
const settleMs = 500;

const read = async (job: string, at: number, signal: AbortSignal): Promise<ShownMoment> => {
  const response = await fetch(`/api/jobs/${job}/moment?at=${at}`, { signal });
  if (!response.ok) throw new Error(`the server answered with ${response.status}`);
  return (await response.json()) as ShownMoment; // this build's own interface
};

/**
 * The moment that is shown: the page's own, or the one that somebody has just moved to. Moments come from the server,
 * which replays the record; the address follows when the hand rests.
 */
export const useMoment = (
  job: string,
  page: { readonly at: number; readonly shown: ShownMoment },
  addressOf: (at: number) => string,
) => {
  const router = useRouter();
  const [elsewhere, setElsewhere] = useState<Elsewhere>();
  const asking = useRef<AbortController>(undefined);
  const settling = useRef<ReturnType<typeof setTimeout>>(undefined);
  useEffect(
    () => () => {
      asking.current?.abort();
      clearTimeout(settling.current);
    },
    [],
  );
  const away =
    elsewhere?.pages.includes(page.at) === true && elsewhere.at !== page.at ? elsewhere : undefined;

  const change = (at: number, how: (old: Elsewhere) => Elsewhere): void => {
    setElsewhere((old) => (old?.at === at ? how(old) : old));
  };
  const go = (at: number): void => {
    asking.current?.abort();
    clearTimeout(settling.current);
    const asked = new AbortController();
    asking.current = asked;
    setElsewhere({
      pages: [...(away?.pages ?? []).slice(-20), page.at],
      at,
      shown: away?.shown,
      failed: false,
    });
    read(job, at, asked.signal).then(
      (shown) => {
        change(at, (old) => ({ ...old, shown }));
      },
      () => {
        if (!asked.signal.aborted) change(at, (old) => ({ ...old, failed: true }));
      },
    );
    settling.current = setTimeout(() => {
      change(at, (old) => ({ ...old, pages: [...old.pages, at] }));
      router.replace(addressOf(at), { scroll: false });
    }, settleMs);
  };
  return {
    at: away?.at ?? page.at,
    shown: away?.shown ?? page.shown,
    failed: away?.failed ?? false,
    go,
  };
};
