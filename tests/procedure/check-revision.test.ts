import { describe, expect, test } from 'vitest';
import { demoProcedures } from '@/demo/procedures';
import { checkRevision, revisionSchema, type Revision, type Step } from '@/lib/procedure';
import { hatchJob, lidJob } from '../job/lid-procedure';

/** A deep copy, free to be spoilt. */
const spoilt = (spoil: (revision: Revision) => void): Revision => {
  const copy = structuredClone(lidJob);
  spoil(copy);
  return copy;
};
const found = <T>(one: T | undefined): T => {
  if (one === undefined) throw new Error('the example has changed');
  return one;
};
const step = (revision: Revision, id: string): Step =>
  found(revision.steps.find((one) => one.id === id));
const group = (revision: Revision, id: string) =>
  found(revision.groups.find((one) => one.id === id));
const messages = (spoil: (revision: Revision) => void): readonly string[] =>
  checkRevision(spoilt(spoil)).faults.map(({ message }) => message);

describe('a sound revision', () => {
  test.each([lidJob, hatchJob, ...demoProcedures])('$procedure has no faults', (revision) => {
    expect(revisionSchema.safeParse(revision).error).toBeUndefined();
    expect(checkRevision(revision).faults).toEqual([]);
  });
});

describe('names that lead nowhere', () => {
  const cases: readonly (readonly [string, (revision: Revision) => void, string])[] = [
    [
      'a prerequisite',
      (r) => step(r, 'lamp').after.push('wash'),
      'There is no step “wash”: add it or correct the name.',
    ],
    [
      'a group shown',
      (r) => step(r, 'lamp').shows.push('roof'),
      'There is no group “roof”: add it or correct the name.',
    ],
    [
      'a drawing shown',
      (r) => {
        step(r, 'lamp').drawing = 'roof';
      },
      'There is no drawing “roof”: add it or correct the name.',
    ],
    [
      'a fluid',
      (r) => step(r, 'lamp').effects.push({ kind: 'fills', fluid: 'milk' }),
      'There is no fluid “milk”: add it or correct the name.',
    ],
    [
      'a part taken off',
      (r) => step(r, 'lamp').effects.push({ kind: 'takesOff', parts: ['roof'], groups: [] }),
      'There is no part “roof”: add it or correct the name.',
    ],
    [
      'a part fitted',
      (r) => step(r, 'lamp').effects.push({ kind: 'fits', part: 'roof', as: 'new', uses: [] }),
      'There is no part “roof”: add it or correct the name.',
    ],
    [
      'a kit item',
      (r) =>
        step(r, 'lamp').effects.push({
          kind: 'fits',
          part: 'lamp',
          as: 'new',
          uses: [{ kitItem: 'fuse', quantity: 1 }],
        }),
      'There is no kit item “fuse”: add it or correct the name.',
    ],
    [
      'a group loosened',
      (r) => step(r, 'lamp').effects.push({ kind: 'loosens', groups: ['roof'] }),
      'There is no group “roof”: add it or correct the name.',
    ],
    [
      'a group run in',
      (r) =>
        step(r, 'lamp').effects.push({
          kind: 'runsIn',
          groups: ['roof'],
          fasteners: 'same',
          uses: [],
        }),
      'There is no group “roof”: add it or correct the name.',
    ],
    [
      'a group tightened',
      (r) => step(r, 'lamp').effects.push({ kind: 'tightens', group: 'roof', pass: 'final' }),
      'There is no group “roof”: add it or correct the name.',
    ],
    [
      'a pass of another group',
      (r) => step(r, 'lamp').effects.push({ kind: 'tightens', group: 'lamp-screws', pass: 'snug' }),
      '“Lamp screws” has no pass “snug”: name one of its own passes.',
    ],
    [
      'a consumable',
      (r) =>
        step(r, 'lamp').effects.push({
          kind: 'applies',
          consumable: 'glue',
          groups: [],
          parts: [],
        }),
      'There is no consumable “glue”: add it or correct the name.',
    ],
    [
      'a part chosen',
      (r) => step(r, 'lamp').asks.push({ kind: 'choice', id: 'roof', label: 'Roof', part: 'roof' }),
      'There is no part “roof”: add it or correct the name.',
    ],
    [
      'a hole',
      (r) => {
        found(group(r, 'lid-bolts').fasteners[1]).hole = 'h9';
      },
      '“Lid bolts” 2 is in hole “h9”, which is not on its drawing: mark the hole.',
    ],
    [
      'the drawing of a group',
      (r) => {
        group(r, 'lid-bolts').drawing = 'roof';
      },
      'There is no drawing “roof”: add it or correct the name.',
    ],
    [
      'the thread-locker of a group',
      (r) => {
        group(r, 'hub-bolt').threadLocker = 'glue';
      },
      'There is no consumable “glue”: add it or correct the name.',
    ],
  ];
  test.each(cases)('%s is named that does not exist', (_, spoil, message) => {
    expect(messages(spoil)).toContain(message);
  });
  test('grease is no thread-locker', () => {
    expect(
      messages((r) => {
        group(r, 'hub-bolt').threadLocker = 'grease';
      }),
    ).toContain('“Grease” is no thread-locker: name one for “Hub bolt”.');
  });
});

describe('names given twice', () => {
  test.each<readonly [string, (r: Revision) => void, string]>([
    [
      'kit items',
      (r) => r.kit.push(found(r.kit[0])),
      'Two kit items are called “new-seal”: give each its own id.',
    ],
    [
      'fluids',
      (r) => r.fluids.push(found(r.fluids[0])),
      'Two fluids are called “oil”: give each its own id.',
    ],
    [
      'parts',
      (r) => r.parts.push(found(r.parts[0])),
      'Two parts are called “lid”: give each its own id.',
    ],
    [
      'steps',
      (r) => r.steps.push(step(r, 'lamp')),
      'Two steps are called “lamp”: give each its own id.',
    ],
    [
      'asks of a step',
      (r) => step(r, 'run').asks.push(found(step(r, 'run').asks[0])),
      'Two asks are called “dry”: give each its own id.',
    ],
    [
      'a fastener in two groups',
      (r) => {
        found(group(r, 'idler-nut').fasteners[0]).id = 'hub-1';
      },
      'Two fasteners (of any group) are called “hub-1”: give each its own id.',
    ],
    [
      'labels',
      (r) => {
        found(group(r, 'lid-bolts').fasteners[1]).label = '1';
      },
      '“Lid bolts” has two fasteners labelled “1”: number them apart.',
    ],
    [
      'holes',
      (r) => {
        found(group(r, 'lid-bolts').fasteners[1]).hole = 'lid-hole-1';
      },
      '“Lid bolts” has two fasteners in hole “lid-hole-1”: one hole, one fastener.',
    ],
  ])('%s', (_, spoil, message) => {
    expect(messages(spoil)).toContain(message);
  });
});

describe('tightening', () => {
  test.each<readonly [string, (r: Revision) => void, string]>([
    [
      'has a final pass',
      (r) => {
        group(r, 'lid-bolts').passes.pop();
      },
      '“Lid bolts” needs exactly one final pass; it has 0.',
    ],
    [
      'has one final pass',
      (r) => {
        found(group(r, 'lid-bolts').passes[0]).stage = 'final';
      },
      '“Lid bolts” needs exactly one final pass; it has 2.',
    ],
    [
      'ends with it',
      (r) => {
        group(r, 'lid-bolts').passes.reverse();
      },
      '“Lid bolts”: order its passes snug, intermediate, final.',
    ],
    [
      'skips no pass',
      (r) => {
        step(r, 'snug-lid').effects = [];
      },
      '“Lid bolts”: no step tightens its pass “snug”.',
    ],
    [
      'goes through its passes in turn',
      (r) => {
        step(r, 'tighten-lid').after = ['close-lid'];
      },
      '“Lid bolts”: pass “final” must come after pass “snug”. Add that to its prerequisites.',
    ],
    [
      'goes through its passes in turn in one step too',
      (r) => {
        step(r, 'snug-lid').effects = [];
        step(r, 'tighten-lid').effects.push({
          kind: 'tightens',
          group: 'lid-bolts',
          pass: 'snug',
        });
      },
      '“Lid bolts”: pass “final” must come after pass “snug”. Add that to its prerequisites.',
    ],
    [
      'names torque in a unit of torque',
      (r) => {
        found(group(r, 'lid-bolts').passes[1]).tightening = {
          kind: 'torque',
          torque: { kind: 'atLeast', unit: 'L', lower: 1 },
        };
      },
      '“Lid bolts”, pass “final”: The torque is given in a unit that is none of torque.',
    ],
    [
      'names an angle in degrees',
      (r) => {
        found(group(r, 'hub-bolt').passes[0]).tightening = {
          kind: 'torqueAngle',
          snugTorque: { kind: 'range', unit: 'N.m', lower: 1, upper: 2 },
          angle: { kind: 'atLeast', unit: 'mm', lower: 1 },
        };
      },
      '“Hub bolt”, pass “final”: The angle is given in a unit that is none of angle.',
    ],
    [
      'is never below zero',
      (r) => {
        found(group(r, 'lid-bolts').passes[1]).tightening = {
          kind: 'torque',
          torque: { kind: 'range', unit: 'N.m', lower: -1, upper: 2 },
        };
      },
      '“Lid bolts”, pass “final”: A limit in N·m cannot be below zero.',
    ],
    [
      'has limits the right way round',
      (r) => {
        found(group(r, 'lid-bolts').passes[1]).tightening = {
          kind: 'torque',
          torque: { kind: 'range', unit: 'N.m', lower: 12, upper: 9 },
        };
      },
      '“Lid bolts”, pass “final”: The lower limit is above the upper one.',
    ],
    [
      'has a window',
      (r) => {
        found(group(r, 'lid-bolts').passes[1]).tightening = {
          kind: 'torque',
          torque: {
            kind: 'target',
            unit: 'N.m',
            target: 10,
            tolerance: { in: 'unit', plus: 0, minus: 0 },
          },
        };
      },
      '“Lid bolts”, pass “final”: The limits leave no window: no reading can be shown to be in it.',
    ],
    [
      'follows a whole order',
      (r) => {
        group(r, 'lid-bolts').sheetOrder = ['lid-1', 'lid-1', 'lid-2'];
      },
      "The sheet's order of “Lid bolts” must name every fastener once.",
    ],
    [
      'is read where it has a figure',
      (r) => {
        step(r, 'tighten-lid').asks = [];
      },
      'The final pass of “Lid bolts” has a torque and no step asks for the reading.',
    ],
    [
      'has its angle read too',
      (r) => {
        step(r, 'tighten-hub').asks.splice(1, 1);
      },
      'The final pass of “Hub bolt” has an angle and no step asks for the reading.',
    ],
    [
      'reads angles only where there is one',
      (r) =>
        step(r, 'tighten-lid').asks.push({
          kind: 'value',
          id: 'a',
          label: 'Lid angle',
          of: { kind: 'pass', group: 'lid-bolts', pass: 'final', measure: 'angle', each: false },
        }),
      '“Lid angle” asks an angle of a pass that has a torque only.',
    ],
    [
      'ends final where a group was opened',
      (r) => {
        step(r, 'tighten-lid').effects = [];
      },
      '“Lid bolts”: opened, but no step tightens to the final pass.',
    ],
    [
      'follows running in',
      (r) => {
        step(r, 'close-lid').effects.pop();
      },
      '“Lid bolts”: taken off, but no step runs in again what came off.',
    ],
    [
      'renews thread-locker',
      (r) => {
        step(r, 'close-hub').effects.shift();
      },
      '“Hub bolt”: wants thread-locker, but no step applies it.',
    ],
    [
      'renews single-use bolts',
      (r) => {
        step(r, 'close-hub').effects[1] = {
          kind: 'runsIn',
          groups: ['hub-bolt'],
          fasteners: 'same',
          uses: [],
        };
      },
      '“Hub bolt”: single-use, but no step runs in new ones.',
    ],
  ])('%s', (_, spoil, message) => {
    expect(messages(spoil)).toContain(message);
  });
});

describe('parts, kit and fluids', () => {
  test.each<readonly [string, (r: Revision) => void, string]>([
    [
      'the kit holds what the steps use',
      (r) => {
        found(r.kit[4]).quantity = 1;
      },
      'The kit holds 1 of “Cable tie” and the steps use 2.',
    ],
    [
      'what comes off goes on again',
      (r) => {
        step(r, 'close-lid').effects.splice(2, 1);
      },
      '“Lid” comes off and no step fits it again.',
    ],
    [
      'what comes with the kit is fitted',
      (r) => {
        step(r, 'lamp').effects.shift();
      },
      '“Lamp” comes with the kit and no step fits it.',
    ],
    [
      'what is never used again is fitted new',
      (r) => {
        step(r, 'close-lid').effects[1] = { kind: 'fits', part: 'washer', as: 'reused', uses: [] };
      },
      '“Locking washer” must never be used again, but a step fits the same one.',
    ],
    [
      'what is drained is filled',
      (r) => {
        step(r, 'fill').effects = [];
      },
      '“Oil” is drained and no step fills it again.',
    ],
    [
      'what is drained is measured',
      (r) => {
        step(r, 'drain').asks = [];
      },
      'No step asks how much “Oil” was drained.',
    ],
    [
      'what is filled is measured',
      (r) => {
        step(r, 'fill').asks = [];
      },
      'No step asks how much “Oil” was filled.',
    ],
    [
      'a volume is a volume',
      (r) => {
        step(r, 'fill').asks = [
          {
            kind: 'value',
            id: 'filled',
            label: 'Oil filled',
            of: {
              kind: 'fluid',
              fluid: 'oil',
              use: 'filled',
              spec: { kind: 'noFigure', unit: 'V' },
            },
          },
        ];
      },
      '“Oil filled”: “V” is a unit of voltage, not of volume.',
    ],
  ])('%s', (_, spoil, message) => {
    expect(messages(spoil)).toContain(message);
  });
});

describe('steps', () => {
  test.each<readonly [string, (r: Revision) => void, string]>([
    [
      'never wait for themselves',
      (r) => step(r, 'lamp').after.push('lamp'),
      '“Fit the lamp” would have to come after itself: break the circle.',
    ],
    [
      'never wait in a circle',
      (r) => step(r, 'drain').after.push('run'),
      '“Drain the oil” would have to come after itself: break the circle.',
    ],
    [
      'ask before they fit as chosen',
      (r) => {
        step(r, 'close-lid').asks.shift();
      },
      '“Put on the lid” fits “gasket” as chosen, but does not ask whether it is reused or replaced.',
    ],
    [
      'check what cannot be undone',
      (r) => {
        step(r, 'press-seal').asks = [];
      },
      '“Press in the seal” cannot be undone: ask for a check of it in the same step.',
    ],
    [
      'follow from the step that took off what they fit',
      (r) => {
        step(r, 'close-lid').after = [];
      },
      '“Put on the lid” fits “Lid”: it must come after “Take off the lid”. Add that to its prerequisites.',
    ],
    [
      'follow from the step that drained what they fill',
      (r) => {
        step(r, 'fill').after = [];
      },
      '“Fill the oil” fills “Oil”: it must come after “Drain the oil”. Add that to its prerequisites.',
    ],
    [
      'follow from running in what they tighten',
      (r) => {
        step(r, 'tighten-hub').after = [];
      },
      '“Tighten the hub bolt and the idler nut” tightens “Hub bolt”: it must come after “Run in the hub bolt”. Add that to its prerequisites.',
    ],
  ])('%s', (_, spoil, message) => {
    expect(messages(spoil)).toContain(message);
  });
});
