import { specificationFindings } from './check-specification';
import { fault, type Fault, type Finding } from './fault';
import { dependents, groupOf, passOf } from './lookup';
import type { Revision } from './revision';
import type { Effect, Step, ValueAsk } from './step';

/** Whether a step must follow itself. */
const circles = (revision: Revision): readonly Fault[] =>
  revision.steps
    .filter((step) =>
      step.after.some((id) => id === step.id || dependents(revision, step.id).includes(id)),
    )
    .map((step) =>
      fault(
        `steps/${step.id}`,
        `“${step.title}” would have to come after itself: break the circle.`,
      ),
    );

const valueFindings = (revision: Revision, where: string, ask: ValueAsk): readonly Finding[] => {
  const { of } = ask;
  if (of.kind === 'other') return specificationFindings(where, `“${ask.label}”`, of.spec);
  if (of.kind === 'fluid') return specificationFindings(where, `“${ask.label}”`, of.spec, 'volume');
  const group = groupOf(revision, of.group);
  const tightening = group && passOf(group, of.pass)?.tightening;
  return tightening?.kind === 'torque' && of.measure === 'angle'
    ? [fault(where, `“${ask.label}” asks an angle of a pass that has a torque only.`)]
    : [];
};

const stepFindings = (revision: Revision, step: Step): readonly Finding[] => {
  const where = `steps/${step.id}`;
  const choices = new Set(step.asks.flatMap((ask) => (ask.kind === 'choice' ? [ask.part] : [])));
  const unchosen = step.effects.flatMap((effect) =>
    effect.kind === 'fits' && effect.as === 'asChosen' && !choices.has(effect.part)
      ? [effect.part]
      : [],
  );
  return [
    ...unchosen.map((part) =>
      fault(
        where,
        `“${step.title}” fits “${part}” as chosen, but does not ask whether it is reused or replaced.`,
      ),
    ),
    ...(step.oneShot && !step.asks.some((ask) => ask.kind === 'check' || ask.kind === 'value')
      ? [fault(where, `“${step.title}” cannot be undone: ask for a check of it in the same step.`)]
      : []),
    ...step.asks.flatMap((ask) =>
      ask.kind === 'value' ? valueFindings(revision, `${where}/${ask.id}`, ask) : [],
    ),
  ];
};

interface Pair {
  readonly what: string;
  readonly before: (effect: Effect) => boolean;
  readonly after: (effect: Effect) => boolean;
}

const pairs = (revision: Revision): readonly Pair[] => [
  ...revision.fluids.map((fluid) => ({
    what: `fills “${fluid.name}”`,
    before: (e: Effect) => e.kind === 'drains' && e.fluid === fluid.id,
    after: (e: Effect) => e.kind === 'fills' && e.fluid === fluid.id,
  })),
  ...revision.parts.map((part) => ({
    what: `fits “${part.name}”`,
    before: (e: Effect) => e.kind === 'takesOff' && e.parts.includes(part.id),
    after: (e: Effect) => e.kind === 'fits' && e.part === part.id,
  })),
  ...revision.groups.flatMap((group) => [
    {
      what: `runs in “${group.name}”`,
      before: (e: Effect) =>
        (e.kind === 'takesOff' || e.kind === 'loosens') && e.groups.includes(group.id),
      after: (e: Effect) => e.kind === 'runsIn' && e.groups.includes(group.id),
    },
    {
      what: `tightens “${group.name}”`,
      before: (e: Effect) =>
        (e.kind === 'runsIn' || e.kind === 'loosens') && e.groups.includes(group.id),
      after: (e: Effect) => e.kind === 'tightens' && e.group === group.id,
    },
  ]),
];

/** Rework of a step undoes what follows from it: what puts back must follow from what took away. */
const orderFaults = (revision: Revision): readonly Fault[] =>
  pairs(revision).flatMap(({ what, before, after }) =>
    revision.steps.flatMap((first, at) => {
      if (!first.effects.some(before)) return [];
      const follow = new Set(dependents(revision, first.id));
      return revision.steps
        .slice(at + 1)
        .filter((step) => step.effects.some(after) && !follow.has(step.id))
        .map((step) =>
          fault(
            `steps/${step.id}`,
            `“${step.title}” ${what}: it must come after “${first.title}”. Add that to its prerequisites.`,
          ),
        );
    }),
  );

/** Sense of steps: their order, what they ask, and that rework of one reaches what lies on top of it. */
export const checkSteps = (revision: Revision): readonly Finding[] => [
  ...circles(revision),
  ...revision.steps.flatMap((step) => stepFindings(revision, step)),
  ...orderFaults(revision),
];
