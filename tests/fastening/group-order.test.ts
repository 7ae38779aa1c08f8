import { describe, expect, it } from 'vitest';
import { groupOrder, groupRound, passPlan } from '@/lib/fastening/group-order';
import { drawingSchema, fastenerGroupSchema } from '@/lib/procedure';

const corners = [
  { id: 'top-left', xMm: 0, yMm: 0 },
  { id: 'top-right', xMm: 100, yMm: 0 },
  { id: 'bottom-right', xMm: 100, yMm: 80 },
  { id: 'bottom-left', xMm: 0, yMm: 80 },
];

const drawing = drawingSchema.parse({
  id: 'cover',
  title: 'Cover',
  description: 'A cover with four bolts.',
  widthMm: 120,
  heightMm: 100,
  shapes: [],
  marks: [],
  holes: corners.map((hole) => ({ ...hole, diameterMm: 9 })),
});

const group = (changes: object = {}) =>
  fastenerGroupSchema.parse({
    id: 'cover-bolts',
    name: 'Cover bolts',
    noun: 'bolt',
    drawing: 'cover',
    thread: 'M8',
    strengthClass: '8.8',
    safetyCritical: false,
    fasteners: corners.map(({ id }, k) => ({
      id: `bolt-${k + 1}`,
      label: String(k + 1),
      hole: id,
      singleUse: false,
    })),
    passes: [
      { id: 'first', stage: 'snug', tightening: { kind: 'byFeel' } },
      {
        id: 'last',
        stage: 'final',
        tightening: {
          kind: 'torque',
          torque: {
            kind: 'target',
            unit: 'N.m',
            target: 22,
            tolerance: { in: 'percent', plus: 10, minus: 10 },
          },
        },
      },
    ],
    ...changes,
  });

describe('the order of a group', () => {
  it('is computed from where its holes lie on the drawing', () => {
    expect(groupOrder(group(), drawing)).toEqual({
      order: ['bolt-1', 'bolt-3', 'bolt-2', 'bolt-4'],
      from: 'computed',
      unplaced: [],
    });
  });

  it("is the maker's sheet's, where the sheet has one", () => {
    const sheetOrder = ['bolt-4', 'bolt-1', 'bolt-2', 'bolt-3'];
    expect(groupOrder(group({ sheetOrder }), drawing)).toEqual({
      order: sheetOrder,
      from: 'sheet',
      unplaced: [],
    });
  });

  it('keeps every fastener once, and names those that the sheet forgot', () => {
    const sheetOrder = ['bolt-4', 'bolt-2', 'bolt-4', 'bolt-9'];
    expect(groupOrder(group({ sheetOrder }), drawing)).toEqual({
      order: ['bolt-4', 'bolt-2', 'bolt-1', 'bolt-3'],
      from: 'sheet',
      unplaced: ['bolt-1', 'bolt-3'],
    });
  });

  it('names those whose hole is not on the drawing', () => {
    const bare = { ...drawing, holes: drawing.holes.slice(1) };
    expect(groupOrder(group(), bare).unplaced).toEqual(['bolt-1']);
  });

  it('is walked in every pass, and once round for a check', () => {
    expect(passPlan(group(), drawing).map(({ pass, order }) => [pass.id, order])).toEqual([
      ['first', ['bolt-1', 'bolt-3', 'bolt-2', 'bolt-4']],
      ['last', ['bolt-1', 'bolt-3', 'bolt-2', 'bolt-4']],
    ]);
    expect(groupRound(group(), drawing).order).toEqual(['bolt-1', 'bolt-2', 'bolt-3', 'bolt-4']);
  });
});
