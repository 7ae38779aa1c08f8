import { describe, expect, test } from 'vitest';
import { demoProcedures } from '@/demo';
import { checkRevision, revisionSchema } from '@/lib/procedure';

const each = demoProcedures.map((revision) => [revision.procedure, revision] as const);

describe.each(each)('the demo procedure %s', (_name, revision) => {
  test('has the shape of a published revision', () => {
    expect(revisionSchema.parse(revision)).toEqual(revision);
  });

  test('has nothing that keeps it from being published, and nothing to look at again', () => {
    expect(checkRevision(revision)).toEqual({ faults: [], doubts: [] });
  });

  test('says each instruction in one short sentence', () => {
    for (const { instruction } of revision.steps) {
      expect(instruction.length).toBeLessThanOrEqual(110);
      expect(instruction).toMatch(/^[A-Z][^.!?]*\.$/);
    }
  });

  test('draws every group whose fasteners a step shows', () => {
    for (const step of revision.steps)
      for (const shown of step.shows)
        expect(revision.groups.find(({ id }) => id === shown)?.drawing).toBe(step.drawing);
  });

  test('keeps every hole and mark inside its drawing', () => {
    for (const { widthMm, heightMm, holes, marks } of revision.drawings)
      for (const { xMm, yMm } of [...holes, ...marks]) {
        expect(xMm).toBeGreaterThan(0);
        expect(xMm).toBeLessThan(widthMm);
        expect(yMm).toBeGreaterThan(0);
        expect(yMm).toBeLessThan(heightMm);
      }
  });

  test('keeps holes of one drawing apart', () => {
    for (const { holes } of revision.drawings)
      for (const [at, a] of holes.entries())
        for (const b of holes.slice(at + 1))
          expect(Math.hypot(a.xMm - b.xMm, a.yMm - b.yMm)).toBeGreaterThan(
            (a.diameterMm + b.diameterMm) / 2,
          );
  });

  test('names the sheet that its text comes from', () => {
    expect(revision.source.sheet).toMatch(/^Fleet sheet FS-\d\d$/);
    expect(revision.source.revision).toMatch(/^issue [A-Z]$/);
  });
});

test('the cover has twelve bolts of three lengths', () => {
  const cover = demoProcedures[0]?.groups.find(({ id }) => id === 'cover-bolts');
  expect(cover?.fasteners).toHaveLength(12);
  expect(new Set(cover?.fasteners.map(({ lengthMm }) => lengthMm))).toEqual(new Set([25, 40, 60]));
});

test('the accessory kit holds the pieces that the first step counts', () => {
  const kit = demoProcedures.find(({ procedure }) => procedure === 'beacon-kit');
  const pieces = kit?.kit.reduce((sum, { quantity }) => sum + quantity, 0);
  expect(kit?.steps[0]?.asks[0]).toMatchObject({ kind: 'count', expected: pieces });
});

test('the accessory kit holds one fuse more than the steps use', () => {
  const kit = demoProcedures.find(({ procedure }) => procedure === 'beacon-kit');
  const used = new Map<string, number>();
  for (const effect of kit?.steps.flatMap(({ effects }) => effects) ?? [])
    for (const { kitItem, quantity } of 'uses' in effect ? effect.uses : [])
      used.set(kitItem, (used.get(kitItem) ?? 0) + quantity);
  expect(kit?.kit.filter(({ id, quantity }) => used.get(id) !== quantity)).toEqual([
    { id: 'fuse', name: 'Blade fuse, 15 A', quantity: 2 },
  ]);
});
