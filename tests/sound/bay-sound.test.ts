import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  hearBay,
  heldDb,
  kindScores,
  noScores,
  soundKinds,
  tooLoudDb,
  trustIn,
  unknownBay,
  type BaySound,
  type KindScores,
  type SoundObservation,
} from '@/lib/sound';

const scores = (some: Partial<KindScores>): KindScores => ({ ...noScores, ...some });
const quiet = scores({ quiet: 0.9 });
const voice = scores({ speech: 0.9 });
const wrench = scores({ impactTool: 0.95, speech: 0.1 });

/** Windows of one second, one each half second. */
const hear = (
  bay: BaySound,
  fromS: number,
  windows: readonly (readonly [KindScores, number])[],
): BaySound =>
  windows.reduce(
    (known, [one, levelDb], i) =>
      hearBay(known, {
        startS: fromS + i / 2 - 1,
        endS: fromS + i / 2,
        levelDb,
        scores: one,
      }),
    bay,
  );
const times = <T>(count: number, one: T): T[] => Array.from({ length: count }, () => one);

describe('what the bay sounds like', () => {
  it('is shown when two windows in a row say so, and stays through a single other one', () => {
    const once = hear(unknownBay, 1, [[wrench, -20]]);
    expect(once.kind).toBe('quiet');
    const twice = hear(unknownBay, 1, times(2, [wrench, -20] as const));
    expect(twice.kind).toBe('impactTool');
    expect(hear(twice, 2, [[quiet, -60]]).kind).toBe('impactTool');
    expect(hear(twice, 2, times(2, [quiet, -60] as const)).kind).toBe('quiet');
  });

  it('is quiet where no kind is sure', () => {
    const bay = hear(unknownBay, 1, times(4, [scores({ musicOrRadio: 0.5, speech: 0.4 }), -40]));
    expect(bay.kind).toBe('quiet');
  });

  it('is low, raised or loud against a voice in this bay', () => {
    const bay = hear(unknownBay, 1, times(4, [voice, -30] as const));
    expect(tooLoudDb(bay)).toBe(-36);
    expect([-30, -40, -60].map((db) => hear(bay, 4, [[wrench, db]]).level)).toEqual([
      'loud',
      'raised',
      'low',
    ]);
  });
});

describe('what is said', () => {
  const bay = hear(unknownBay, 1, [
    ...times(4, [quiet, -60] as const),
    ...times(4, [voice, -30] as const),
  ]);

  it('is drowned by a loud tool at the same time, and not before or after it', () => {
    const worked = hear(bay, 6, times(3, [wrench, -20] as const));
    expect(worked.tooLoud).toEqual([{ startS: 5, endS: 7, voice: 0.1 }]);
    expect(trustIn(worked, { startS: 5.5, endS: 6 })).toBe('tooLoud');
    expect(trustIn(worked, { startS: 3, endS: 4.5 })).toBe('trusted');
    expect(trustIn(worked, { startS: 7.2, endS: 8 })).toBe('trusted');
  });

  it('is nothing worth a word where only the tool was there', () => {
    const alone = scores({ impactTool: 0.95, speech: 0.02 });
    const worked = hear(bay, 6, times(2, [alone, -20] as const));
    expect(trustIn(worked, { startS: 5.5, endS: 6 })).toBe('toolOnly');
  });

  it('is trusted through a tool far away, and where the voice is surer than the tool', () => {
    expect(hear(bay, 6, [[wrench, -50]]).tooLoud).toEqual([]);
    const over = scores({ speech: 0.9, impactTool: 0.7 });
    expect(hear(bay, 6, [[over, -20]]).tooLoud).toEqual([]);
  });

  it('is trusted while an engine runs or a radio plays: those go on, and the recogniser knows them', () => {
    const engine = scores({ engineOrCompressor: 0.9 });
    expect(hear(bay, 6, times(4, [engine, -25])).tooLoud).toEqual([]);
  });

  it('is measured against the room as long as nobody has spoken', () => {
    const room = hear(unknownBay, 1, times(3, [quiet, -70] as const));
    expect(tooLoudDb(room)).toBe(-55);
    expect(hear(room, 3, [[wrench, -50]]).tooLoud).toHaveLength(1);
    expect(hear(room, 3, [[wrench, -60]]).tooLoud).toHaveLength(0);
  });

  it('is measured against a louder voice when people begin to shout', () => {
    const shouting = hear(bay, 6, times(20, [voice, -12] as const));
    expect(tooLoudDb(bay)).toBeLessThan(-35);
    expect(tooLoudDb(shouting)).toBeGreaterThan(-20);
  });
});

describe('a bay that cannot be heard', () => {
  it('is one where tools have taken most of half a minute, until they leave most of it again', () => {
    const working = hear(unknownBay, 1, times(60, [wrench, -15] as const));
    expect(working.unheard).toBe(true);
    expect(hear(working, 31, times(20, [quiet, -60] as const)).unheard).toBe(true);
    expect(hear(working, 31, times(50, [quiet, -60] as const)).unheard).toBe(false);
  });

  it('is not one that has only just been listened to', () => {
    expect(hear(unknownBay, 1, times(6, [wrench, -15] as const)).unheard).toBe(false);
  });
});

describe('the level of a window', () => {
  it('is what three tenths of it reach, so that a dropped spanner does not count', () => {
    const click = [...times(47, -60), ...times(3, -5)];
    expect(heldDb(click)).toBe(-60);
    expect(heldDb([...times(30, -60), ...times(20, -10)])).toBe(-10);
    expect(heldDb([])).toBeUndefined();
  });
});

describe('labels of another classifier', () => {
  it('count for the kind that the table gives them, the surest first, and others for nothing', () => {
    const found = kindScores(
      [
        { label: 'Jackhammer', score: 0.4 },
        { label: 'Hammer', score: 0.7 },
        { label: 'Birdsong', score: 0.9 },
        { label: 'constructor', score: 0.9 },
      ],
      { Jackhammer: 'impactTool', Hammer: 'impactTool' },
    );
    expect(found).toEqual(scores({ impactTool: 0.7 }));
  });

  it('count for nothing where the score is none', () => {
    const found = kindScores(
      [
        { label: 'a', score: Number.NaN },
        { label: 'a', score: 7 },
        { label: 'a', score: -1 },
      ],
      { a: 'alarm' },
    );
    expect(found).toEqual(noScores);
  });
});

describe('for any sound', () => {
  const score = fc.double({ min: 0, max: 1, noNaN: true });
  const anyScores: fc.Arbitrary<KindScores> = fc.record(
    Object.fromEntries(soundKinds.map((kind) => [kind, score])) as Record<
      keyof KindScores,
      typeof score
    >,
  );
  const windows = fc.array(fc.tuple(anyScores, fc.double({ min: -100, max: 0, noNaN: true })), {
    maxLength: 150,
  });

  it('the stretches that were too loud are in order, apart, and of the last half minute', () => {
    fc.assert(
      fc.property(windows, (all) => {
        const { tooLoud } = hear(unknownBay, 1, all);
        const lastS = 1 + (all.length - 1) / 2;
        tooLoud.forEach(({ startS, endS }, i) => {
          expect(startS).toBeLessThan(endS);
          expect(endS).toBeGreaterThan(lastS - 30);
          expect(startS).toBeGreaterThan(tooLoud[i - 1]?.endS ?? -Infinity);
        });
      }),
    );
  });

  it('nothing is too loud, nor the bay unheard, where no tool is sure', () => {
    fc.assert(
      fc.property(windows, (all) => {
        const toolless = all.map(
          ([one, db]) => [{ ...one, impactTool: 0.5, grinderOrSaw: 0, alarm: 0.59 }, db] as const,
        );
        const bay = hear(unknownBay, 1, toolless);
        expect(bay.tooLoud).toEqual([]);
        expect(bay.unheard).toBe(false);
      }),
    );
  });

  it('what drowns a voice still does when it is louder', () => {
    fc.assert(
      fc.property(
        windows,
        anyScores,
        fc.double({ min: -90, max: -20, noNaN: true }),
        (all, one, db) => {
          const bay = hear(unknownBay, 1, all);
          const at = (levelDb: number): SoundObservation => ({
            startS: 500,
            endS: 501,
            levelDb,
            scores: one,
          });
          const drowned = (levelDb: number): boolean =>
            trustIn(hearBay(bay, at(levelDb)), { startS: 500.2, endS: 500.8 }) !== 'trusted';
          if (drowned(db)) expect(drowned(db + 15)).toBe(true);
        },
      ),
    );
  });

  it('a window that is none changes nothing', () => {
    const bay = hear(unknownBay, 1, times(3, [wrench, -20] as const));
    const broken = { startS: 9, endS: 9, levelDb: -20, scores: wrench };
    expect(hearBay(bay, broken)).toBe(bay);
    expect(hearBay(bay, { ...broken, endS: 10, levelDb: Number.NaN })).toBe(bay);
  });
});
