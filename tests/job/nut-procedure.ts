import type { FastenerGroup, Revision, Step, ValueAsk } from '@/lib/procedure';
import { hatchJob } from './lid-procedure';

type Measure = Extract<ValueAsk['of'], { kind: 'pass' }>['measure'];

export const nutAsk = (id: string, measure: Measure, each: boolean): ValueAsk => ({
  kind: 'value',
  id,
  label: id,
  of: { kind: 'pass', group: 'hatch-bolts', pass: 'final', measure, each },
});

/** Two self-locking nuts: 50 N·m ± 10 % without what they take to turn, which may be 2 to 12 N·m. */
export const nutGroup = (safetyCritical: boolean): FastenerGroup => {
  const [group] = hatchJob.groups;
  if (group === undefined) throw new Error('the example has changed');
  return {
    ...group,
    name: 'Hatch nuts',
    noun: 'nut',
    thread: 'M10',
    strengthClass: '10.9',
    safetyCritical,
    passes: [
      {
        id: 'final',
        stage: 'final',
        tightening: {
          kind: 'torque',
          torque: {
            kind: 'target',
            unit: 'N.m',
            target: 50,
            tolerance: { in: 'percent', plus: 10, minus: 10 },
          },
        },
        prevailing: { kind: 'range', unit: 'N.m', lower: 2, upper: 12 },
      },
    ],
  };
};

/** The hatch on self-locking nuts: what they take to turn, then their torque, in one step, of each nut or of both at once. */
export const nutJob = (options: { safetyCritical?: boolean; each?: boolean } = {}): Revision => {
  const each = options.each ?? true;
  const asks = (step: Step): Step =>
    step.id === 'close'
      ? { ...step, asks: [nutAsk('turning', 'prevailing', each), nutAsk('torque', 'torque', each)] }
      : step;
  return {
    ...hatchJob,
    procedure: 'nuts',
    groups: [nutGroup(options.safetyCritical ?? false)],
    steps: hatchJob.steps.map(asks),
  };
};
