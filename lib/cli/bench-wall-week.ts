import type { Browser } from 'playwright-core';
import { inPage } from './in-page';

/** What a wall holds while it is told what a whole week brings, as fast as it takes it. */
export interface WeekMeasures {
  readonly messages: number;
  readonly tookS: number;
  /** The page's heap after a collection, MB: at the beginning, half-way, at the end. */
  readonly heapMb: readonly number[];
}

/** 60 bays, four jobs a day with 150 events each, on six days (assumption). */
const messages = 60 * 4 * 150 * 6;
const rounds = 60;

declare global {
  interface Window {
    tellWall: (count: number) => Promise<void>;
    gc?: () => void;
  }
}

/** Stands in for the stream: gives the first message of the real one, then as many changes as it is asked for. */
const fakeStream = (): void => {
  const Real = window.EventSource;
  let whole: { kind: string; bays: { bay: { id: string }; job?: { seq: number } }[] } | undefined;
  let told = 0;
  let wall: EventSource | undefined;
  class Told extends EventTarget {
    onmessage: ((event: MessageEvent<string>) => void) | null = null;
    constructor(address: string) {
      super();
      // The page keeps this one; the real one is closed once it has said how the shop stands.
      wall = this as unknown as EventSource;
      if (whole !== undefined) return;
      const real = new Real(address);
      real.onmessage = (event: MessageEvent<string>) => {
        whole = JSON.parse(event.data) as typeof whole;
        real.close();
        this.onmessage?.(event);
      };
    }
    close(): void {
      this.onmessage = null;
    }
  }
  window.EventSource = Told as unknown as typeof EventSource;
  window.tellWall = async (count) => {
    for (let n = 0; n < count; n += 1) {
      told += 1;
      const card = whole?.bays[told % whole.bays.length];
      if (card === undefined) throw new Error('the stream has not begun');
      const bays = [card.job === undefined ? card : { ...card, job: { ...card.job, seq: told } }];
      const data = JSON.stringify({ kind: 'some', now: new Date().toISOString(), bays });
      wall?.onmessage?.(new MessageEvent('message', { data, lastEventId: `week-${told}` }));
      // As a stream would, let the page draw now and then.
      if (n % 20 === 19) await new Promise((resolve) => setTimeout(resolve));
    }
  };
};

/** Tells a wall in a page of its own what a week brings, and looks at its heap. */
export const simulateWeek = async (
  browser: Browser,
  address: string,
  bays: number,
): Promise<WeekMeasures> => {
  const context = await browser.newContext({ viewport: { width: 1920, height: 1080 } });
  await context.addInitScript(inPage(fakeStream));
  const page = await context.newPage();
  await page.goto(`${address}/wall`);
  await page.locator(`[data-bay="bay-${bays}"]`).waitFor();
  const session = await context.newCDPSession(page);
  const heap = async (): Promise<number> => {
    await session.send('HeapProfiler.collectGarbage');
    const { usedSize } = await session.send('Runtime.getHeapUsage');
    return usedSize / 2 ** 20;
  };
  const heapMb: number[] = [];
  const began = performance.now();
  for (let round = 0; round < rounds; round += 1) {
    await page.evaluate((count) => window.tellWall(count), messages / rounds);
    if (round === 0 || round === rounds / 2 || round === rounds - 1) heapMb.push(await heap());
  }
  const shown = await page.locator('[data-bay]').count();
  if (shown !== bays) throw new Error(`the wall shows ${shown} of ${bays} bays after the week`);
  await context.close();
  return { messages, tookS: (performance.now() - began) / 1000, heapMb };
};
