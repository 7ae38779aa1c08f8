import { describe, expect, test } from 'vitest';
import { WallStream } from '@/components/wall/wall-stream';
import { stalledAfterMs, type WallMessage } from '@/lib/wall';

const beat: WallMessage = { kind: 'beat', now: '2026-03-02T12:00:00.000Z' };

/** A browser whose network and clock the test moves. */
const browser = () => {
  const state = { ms: 1_000_000 };
  const opened: string[] = [];
  const heard: (string | undefined)[] = [];
  let open = 0;
  let hear: ((data: unknown, lastEventId: string) => void) | undefined;
  const stream = new WallStream({
    open: (address, listen) => {
      opened.push(address);
      open += 1;
      hear = listen;
      return {
        close: () => {
          open -= 1;
        },
      };
    },
    now: () => state.ms,
    onMessage: (_, position) => heard.push(position),
  });
  return {
    stream,
    opened,
    heard,
    state,
    pass: (ms: number) => {
      state.ms += ms;
      stream.check();
    },
    comes: (data: unknown, lastEventId = '') => {
      hear?.(data, lastEventId);
    },
    open: () => open,
  };
};

describe('the stream of the wall', () => {
  test('is begun once, however often it is looked at, and is kept while messages come', () => {
    const wall = browser();
    for (let n = 0; n < 100; n += 1) {
      wall.pass(1_000);
      wall.comes(JSON.stringify(beat), `run-${n}`);
    }
    expect(wall.opened).toEqual(['/api/wall']);
    expect(wall.heard).toHaveLength(100);
  });

  test('that falls silent is begun anew from where it stood', () => {
    const wall = browser();
    wall.pass(0);
    wall.comes(JSON.stringify(beat), 'run-7');
    wall.pass(stalledAfterMs);
    expect(wall.opened).toHaveLength(1);
    wall.pass(1);
    expect(wall.open()).toBe(0);
    wall.pass(500);
    expect(wall.opened.at(-1)).toBe('/api/wall?after=run-7');
    expect(wall.open()).toBe(1);
  });

  test('is begun anew at the first look after a browser let no timer run for an hour', () => {
    const wall = browser();
    wall.pass(0);
    wall.comes(JSON.stringify(beat), 'run-7');
    wall.pass(3_600_000);
    wall.pass(60_000);
    expect(wall.opened).toHaveLength(2);
    wall.comes(JSON.stringify(beat), 'run-8');
    expect(wall.heard).toEqual(['run-7', 'run-8']);
  });

  test(
    'is tried for a week of no answer, ever less often but at least every half minute, one at a time',
    { timeout: 60_000 },
    () => {
      const wall = browser();
      let most = 0;
      for (let ms = 0; ms < 7 * 24 * 3_600_000; ms += 1_000) {
        wall.pass(1_000);
        most = Math.max(most, wall.open());
      }
      expect(most).toBe(1);
      expect(wall.opened.length).toBeGreaterThan((7 * 24 * 3600) / 30);
    },
  );

  test('that brings what is not understood is begun anew for the whole', () => {
    const wall = browser();
    wall.pass(0);
    wall.comes(JSON.stringify(beat), 'run-7');
    wall.comes('{"kind":"riddle"}', 'run-8');
    expect(wall.open()).toBe(0);
    wall.pass(1_000);
    expect(wall.opened.at(-1)).toBe('/api/wall');
  });

  test('is not held up by a clock that was set back a day', () => {
    const wall = browser();
    wall.pass(0);
    wall.comes(JSON.stringify(beat), 'run-7');
    wall.pass(-86_400_000);
    wall.pass(stalledAfterMs + 1);
    wall.pass(1_000);
    expect(wall.opened).toHaveLength(2);
  });

  test('says nothing more once it is stopped', () => {
    const wall = browser();
    wall.pass(0);
    wall.stream.stop();
    wall.comes(JSON.stringify(beat), 'run-1');
    wall.pass(3_600_000);
    wall.pass(3_600_000);
    expect(wall.heard).toEqual([]);
    expect(wall.open()).toBe(0);
    expect(wall.opened).toHaveLength(1);
  });
});
