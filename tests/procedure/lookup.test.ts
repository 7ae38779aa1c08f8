import { describe, expect, test } from 'vitest';
import {
  comesWithKit,
  dependents,
  fastenerName,
  fastenerOf,
  groupOf,
  passOf,
  stepNumber,
  stepOf,
  type FastenerGroup,
} from '@/lib/procedure';
import { lidJob } from '../job/lid-procedure';

describe('a fastener', () => {
  const named = (name: string, noun: FastenerGroup['noun'], lone: boolean): string => {
    const found = fastenerOf(lidJob, 'lid-3');
    if (found === undefined) throw new Error('the example has changed');
    const { group, fastener } = found;
    const fasteners = lone ? [fastener] : group.fasteners;
    return fastenerName({ ...group, name, noun, fasteners }, fastener);
  };

  test('is called by its group and label, and a lone one by its group', () => {
    expect(named('Cover bolts', 'bolt', false)).toBe('Cover bolt 3');
    expect(named('Cover', 'bolt', false)).toBe('Cover bolt 3');
    expect(named('Wheel Nuts', 'nut', false)).toBe('Wheel Nut 3');
    expect(named('Pulley bolt', 'bolt', true)).toBe('Pulley bolt');
    expect(named('Sump', 'plug', true)).toBe('Sump plug');
  });

  test('is found with its group, and an unknown one is not', () => {
    expect(fastenerOf(lidJob, 'hub-1')?.group.id).toBe('hub-bolt');
    expect(fastenerOf(lidJob, 'constructor')).toBeUndefined();
  });

  test('comes with the kit when running it in is the first that happens to it', () => {
    expect(lidJob.groups.filter(({ id }) => comesWithKit(lidJob, id)).map(({ id }) => id)).toEqual([
      'lamp-screws',
    ]);
  });
});

describe('steps', () => {
  test('are numbered as in the sheet', () => {
    expect(stepNumber(lidJob, 'drain')).toBe(1);
    expect(stepNumber(lidJob, 'run')).toBe(12);
    expect(stepNumber(lidJob, 'polish')).toBe(0);
    expect(stepOf(lidJob, 'open-hub')?.title).toBe('Take out the hub bolt');
  });

  test('depend on what they come after, also through others', () => {
    expect(dependents(lidJob, 'snug-lid')).toEqual(['tighten-lid', 'fill', 'run']);
    expect(dependents(lidJob, 'run')).toEqual([]);
    expect(dependents(lidJob, 'polish')).toEqual([]);
  });

  test('that go in a circle do not depend on themselves for ever', () => {
    const steps = lidJob.steps.map((one) =>
      one.id === 'close-hub' ? { ...one, after: ['tighten-hub'] } : one,
    );
    expect(dependents({ ...lidJob, steps }, 'close-hub')).toEqual(['tighten-hub', 'run']);
  });
});

test('a pass is looked up in its own group', () => {
  const group = groupOf(lidJob, 'lid-bolts');
  expect(group && passOf(group, 'snug')?.stage).toBe('snug');
  expect(group && passOf(group, 'polish')).toBeUndefined();
});
