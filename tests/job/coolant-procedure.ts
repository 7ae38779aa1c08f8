import type { Fluid, Revision, Step, ValueAsk } from '@/lib/procedure';
import { hatchJob } from './lid-procedure';

export type Use = Extract<ValueAsk['of'], { kind: 'fluid' }>['use'];

const ask = (use: Use): ValueAsk => ({
  kind: 'value',
  id: use,
  label: `Coolant ${use}`,
  of: { kind: 'fluid', fluid: 'coolant', use, spec: { kind: 'noFigure', unit: 'L' } },
});

/** Coolant is drained and filled to half concentrate: every volume is asked; 8 L with a new filter, 7.2 L without. */
export const coolantJob = (changes: Partial<Fluid> = {}): Revision => {
  const [look] = hatchJob.steps;
  if (look === undefined) throw new Error('the example has changed');
  const step = (id: string, rest: Partial<Step>): Step => ({
    ...look,
    id,
    title: id,
    asks: [],
    ...rest,
  });
  return {
    ...hatchJob,
    procedure: 'coolant',
    kit: [{ id: 'new-filter', name: 'Filter', quantity: 1 }],
    parts: [{ id: 'filter', name: 'Filter', starts: 'on', reuse: 'ask' }],
    groups: [],
    fluids: [
      {
        id: 'coolant',
        name: 'Coolant',
        capacityL: 8,
        toleranceL: 0.3,
        mayReturn: true,
        filter: { part: 'filter', capacityWithoutL: 7.2 },
        ...changes,
      },
    ],
    steps: [
      step('drain', {
        effects: [
          { kind: 'drains', fluid: 'coolant' },
          { kind: 'takesOff', parts: ['filter'], groups: [] },
        ],
        asks: [ask('drained'), ask('spilled')],
      }),
      step('filter', {
        after: ['drain'],
        effects: [
          {
            kind: 'fits',
            part: 'filter',
            as: 'asChosen',
            uses: [{ kitItem: 'new-filter', quantity: 1 }],
          },
        ],
        asks: [{ kind: 'choice', id: 'which', label: 'Filter', part: 'filter' }],
      }),
      step('fill', {
        after: ['filter'],
        effects: [{ kind: 'fills', fluid: 'coolant', strength: 0.5 }],
        asks: [ask('returned'), ask('filled')],
      }),
    ],
  };
};
