/** What happens in a page, ms of its own clock (`performance.now()`). */
export interface Marks {
  /** A loud sound began, as heard from the microphone. */
  readonly sounds: number[];
  /** The answer to events that were sent has come: they are on the server's disk. */
  readonly stored: number[];
  /** What was last heard has changed on the screen: the second frame after the change. */
  readonly painted: number[];
  /** The badge first said that the model is loading, and that the kiosk listens. */
  readonly loading: number[];
  readonly listening: number[];
}

declare global {
  interface Window {
    benchMarks: Marks;
  }
}

/** Runs in the page before its own scripts: notes the times, and listens to the microphone beside the kiosk. */
export const noteMarks = (): void => {
  const marks: Marks = { sounds: [], stored: [], painted: [], loading: [], listening: [] };
  window.benchMarks = marks;

  const listenBeside = (stream: MediaStream): void => {
    const context = new AudioContext({ sampleRate: 16_000 });
    // Deprecated, but the only tap that needs no script of its own, which the page's policy would refuse.
    // eslint-disable-next-line @typescript-eslint/no-deprecated
    const tap = context.createScriptProcessor(256, 1, 1);
    let lastLoudMs = -Infinity;
    // eslint-disable-next-line @typescript-eslint/no-deprecated
    tap.onaudioprocess = ({ inputBuffer }) => {
      const loud = inputBuffer.getChannelData(0).some((sample) => Math.abs(sample) > 0.05);
      if (!loud) return;
      const now = performance.now();
      if (now - lastLoudMs > 150) marks.sounds.push(now);
      lastLoudMs = now;
    };
    context.createMediaStreamSource(stream).connect(tap);
    tap.connect(context.destination);
  };
  const open = navigator.mediaDevices.getUserMedia.bind(navigator.mediaDevices);
  navigator.mediaDevices.getUserMedia = async (wanted) => {
    const stream = await open(wanted);
    listenBeside(stream);
    return stream;
  };

  new PerformanceObserver((list) => {
    for (const entry of list.getEntries())
      if (entry instanceof PerformanceResourceTiming && entry.name.endsWith('/events'))
        marks.stored.push(entry.responseEnd);
  }).observe({ type: 'resource' });

  let heard = '';
  new MutationObserver(() => {
    const now = performance.now();
    const badge = document.querySelector('header')?.textContent ?? '';
    if (marks.loading.length === 0 && badge.includes('Loading')) marks.loading.push(now);
    if (marks.listening.length === 0 && badge.includes('Listening')) marks.listening.push(now);
    const text = document.querySelector('[aria-label="Last heard"]')?.textContent ?? '';
    if (text === heard) return;
    heard = text;
    requestAnimationFrame(() => {
      requestAnimationFrame(() => {
        marks.painted.push(performance.now());
      });
    });
  }).observe(document, { subtree: true, childList: true, characterData: true });
};
