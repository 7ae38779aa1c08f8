import { describe, expect, test } from 'vitest';
import { currentFigure, otherFigures } from '@/components/kiosk/step-figures';
import { currentStep } from '@/lib/kiosk';
import { coolantJob } from '../job/coolant-procedure';
import { Bay } from '../job/driver';
import { doSteps } from '../job/hands';
import { nutJob } from '../job/nut-procedure';

const atNuts = (): Bay => {
  const bay = new Bay(nutJob());
  doSteps(bay, 'look', 'open');
  bay.begin('close');
  return bay;
};
const read = (bay: Bay, ask: string, fastener: string, value: number): void => {
  bay.does({ type: 'readingTaken', step: 'close', ask, fastener, value, unit: 'N.m' });
};
const figure = (bay: Bay) => currentFigure(bay.state, currentStep(bay.state));

describe('the large figure of self-locking nuts', () => {
  test('is first what they may take to turn', () => {
    expect(figure(atNuts())).toMatchObject({
      label: 'turning',
      specification: { kind: 'range', lower: 2, upper: 12 },
    });
  });

  test('is then the value to set for the nut that is next, and how it comes about', () => {
    const bay = atNuts();
    read(bay, 'turning', 'lid-1', 6);
    read(bay, 'turning', 'lid-2', 3);
    expect(figure(bay)).toMatchObject({
      label: 'Hatch nuts, M10 10.9. 50 N·m specified + 6 N·m to turn the nut = 56 N·m',
      specification: { kind: 'target', target: 56 },
    });
    read(bay, 'torque', 'lid-1', 56);
    expect(figure(bay)).toMatchObject({
      label: 'Hatch nuts, M10 10.9. 50 N·m specified + 3 N·m to turn the nut = 53 N·m',
      specification: { kind: 'target', target: 53 },
    });
  });

  test('says what to do about a nut that will not do', () => {
    const bay = atNuts();
    read(bay, 'turning', 'lid-1', 1);
    read(bay, 'turning', 'lid-2', 3);
    expect(figure(bay)?.label).toBe(
      'Hatch nuts, M10 10.9. It turns at 1 N·m, allowed is 2–12 N·m: it no longer locks, take a new nut.',
    );
  });
});

test('a step that fills coolant says what to mix', () => {
  const bay = new Bay(coolantJob());
  const fill = bay.revision.steps.find(({ id }) => id === 'fill');
  if (fill === undefined) throw new Error('the example has changed');
  expect(otherFigures(bay.state, fill)).toContain(
    // The filter is not renewed yet: it holds 7.2 L.
    'Coolant 50 %: 3.60 L concentrate + 3.60 L water = 7.20 L',
  );
});
