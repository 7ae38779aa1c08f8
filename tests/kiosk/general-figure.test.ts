import { describe, expect, test } from 'vitest';
import { generalForGroup } from '@/lib/kiosk';
import { revisionSchema, type FastenerGroup, type Revision } from '@/lib/procedure';
import { Driver } from './driver';
import { tinyCover } from './tiny-cover';

const [cover] = tinyCover.groups;
if (cover === undefined) throw new Error('the example has changed');
const feel: FastenerGroup = {
  ...cover,
  passes: [{ id: 'final', stage: 'final', tightening: { kind: 'byFeel' } }],
};
const on = { showGeneralFigures: true };
const figure = (group: FastenerGroup, revision: Revision = tinyCover) =>
  generalForGroup(revision, group, on)?.torqueNm;

describe('a general figure', () => {
  test('is off unless the shop wants it', () => {
    expect(generalForGroup(tinyCover, feel, {})).toBeUndefined();
    expect(generalForGroup(tinyCover, feel, on)?.heading).toBe(
      'General guidance, not the maker’s value',
    );
  });

  test('is three quarters of the proof load by the nut factor of dry steel', () => {
    // M6 8.8: 20.1 mm² · 580 MPa = 11 658 N; 0.2 · 0.75 · 11 658 N · 6 mm. The table of ISO 898-1 rounds it to 11 600 N.
    expect(figure(feel)).toBeCloseTo(10.49, 1);
  });

  test('is lower where the sheet puts something on the threads', () => {
    expect((figure({ ...feel, threadLocker: 'locker' }) ?? 0) / (figure(feel) ?? 1)).toBeCloseTo(
      0.15 / 0.2,
      9,
    );
  });

  test('is given for no safety-critical fastener, no plug, and no unknown strength', () => {
    expect(figure({ ...feel, safetyCritical: true })).toBeUndefined();
    expect(figure({ ...feel, noun: 'plug' })).toBeUndefined();
    expect(figure({ ...feel, strengthClass: 'soft' })).toBeUndefined();
  });

  test('judges nothing: a reading there is recorded, never in spec', () => {
    const d = new Driver().toTighten();
    const revision = revisionSchema.parse({ ...tinyCover, groups: [feel] });
    d.state = { ...d.state, job: { ...d.state.job, revision } };
    d.value(10.4);
    expect(d.state.job.readings.at(-1)).toMatchObject({ value: 10.4, verdict: 'noFigure' });
  });
});
