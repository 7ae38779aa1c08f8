import { checkGroupTightening } from '../fastening/check-group-tightening';
import { findingAt } from './check-specification';
import { checkPassSteps } from './check-pass-steps';
import { checkPrevailing } from './check-prevailing';
import { fault, repeated, type Fault, type Finding } from './fault';
import { stepsThat } from './lookup';
import type { FastenerGroup, Pass, Revision } from './revision';
import type { Effect } from './step';

/** What its torques and angles say by themselves, of each other, and of the thread that they are for. */
const tightening = (group: FastenerGroup): readonly Finding[] =>
  checkGroupTightening(group).map((found) =>
    found.pass === undefined
      ? findingAt(`groups/${group.id}`, `“${group.name}”`, found)
      : findingAt(
          `groups/${group.id}/${found.pass}`,
          `“${group.name}”, pass “${found.pass}”`,
          found,
        ),
  );

const labels = (group: FastenerGroup): readonly Fault[] => {
  const where = `groups/${group.id}`;
  const ids = group.fasteners.map(({ id }) => id);
  const { sheetOrder } = group;
  const isWhole =
    sheetOrder === undefined ||
    (sheetOrder.length === ids.length && ids.every((id) => sheetOrder.includes(id)));
  return [
    ...repeated(group.fasteners.map(({ label }) => label.trim().toLowerCase())).map((label) =>
      fault(where, `“${group.name}” has two fasteners labelled “${label}”: number them apart.`),
    ),
    ...repeated(group.fasteners.map(({ hole }) => hole)).map((hole) =>
      fault(where, `“${group.name}” has two fasteners in hole “${hole}”: one hole, one fastener.`),
    ),
    ...(isWhole
      ? []
      : [fault(where, `The sheet's order of “${group.name}” must name every fastener once.`)]),
  ];
};

const opens = (group: string) => (effect: Effect) =>
  (effect.kind === 'takesOff' || effect.kind === 'loosens' || effect.kind === 'runsIn') &&
  effect.groups.includes(group);

const takesOff = (group: string) => (effect: Effect) =>
  effect.kind === 'takesOff' && effect.groups.includes(group);

const runsIn = (group: string) => (effect: Effect) =>
  effect.kind === 'runsIn' && effect.groups.includes(group);

/** What was opened must be able to become final again. */
const endsFinal = (revision: Revision, group: FastenerGroup): readonly Fault[] => {
  const does = (effect: (e: Effect) => boolean) => stepsThat(revision, effect).length > 0;
  if (!does(opens(group.id))) return [];
  const final = group.passes.find((pass) => pass.stage === 'final');
  const missing = [
    {
      is: does(takesOff(group.id)) && !does(runsIn(group.id)),
      text: 'taken off, but no step runs in again what came off',
    },
    {
      is:
        final !== undefined &&
        !does((e) => e.kind === 'tightens' && e.group === group.id && e.pass === final.id),
      text: 'opened, but no step tightens to the final pass',
    },
    {
      is:
        group.threadLocker !== undefined &&
        !does(
          (e) =>
            e.kind === 'applies' &&
            e.consumable === group.threadLocker &&
            e.groups.includes(group.id),
        ),
      text: 'wants thread-locker, but no step applies it',
    },
    {
      is:
        group.fasteners.some(({ singleUse }) => singleUse) &&
        !does((e) => runsIn(group.id)(e) && e.kind === 'runsIn' && e.fasteners === 'new'),
      text: 'single-use, but no step runs in new ones',
    },
  ];
  return missing
    .filter(({ is }) => is)
    .map(({ text }) => fault(`groups/${group.id}`, `“${group.name}”: ${text}.`));
};

type Measure = 'torque' | 'angle';

const measures = (pass: Pass): readonly Measure[] => {
  const { tightening } = pass;
  if (tightening.kind === 'torque') return tightening.torque.kind === 'noFigure' ? [] : ['torque'];
  return tightening.kind === 'torqueAngle' ? ['torque', 'angle'] : [];
};

const measureWords: Readonly<Record<Measure, string>> = { torque: 'a torque', angle: 'an angle' };

/** A final figure that nobody reads can never be shown to be met. */
const isRead = (revision: Revision, group: FastenerGroup): readonly Fault[] => {
  const read = revision.steps
    .flatMap((step) => step.asks)
    .flatMap((ask) => (ask.kind === 'value' && ask.of.kind === 'pass' ? [ask.of] : []))
    .filter((of) => of.group === group.id);
  return group.passes
    .filter((pass) => pass.stage === 'final')
    .filter((pass) =>
      revision.steps.some((step) =>
        step.effects.some(
          (e) => e.kind === 'tightens' && e.pass === pass.id && e.group === group.id,
        ),
      ),
    )
    .flatMap((pass) =>
      measures(pass)
        .filter((measure) => !read.some((of) => of.pass === pass.id && of.measure === measure))
        .map((measure) =>
          fault(
            `groups/${group.id}/${pass.id}`,
            `The final pass of “${group.name}” has ${measureWords[measure]} and no step asks for the reading.`,
          ),
        ),
    );
};

/** Sense of fastener groups: passes, labels, orders, figures, and that what is opened can become final. */
export const checkGroups = (revision: Revision): readonly Finding[] =>
  revision.groups.flatMap((group) => [
    ...checkPassSteps(revision, group),
    ...tightening(group),
    ...checkPrevailing(revision, group),
    ...labels(group),
    ...endsFinal(revision, group),
    ...isRead(revision, group),
  ]);
