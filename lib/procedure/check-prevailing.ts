import { specificationQuantity, type Specification } from '../fastening/specification';
import { nominal } from '../fastening/check-tightening';
import { specificationFindings } from './check-specification';
import { doubt, fault, type Finding } from './fault';
import { dependents } from './lookup';
import type { FastenerGroup, Pass, Revision } from './revision';
import type { ValueAsk } from './step';

type OfPass = Extract<ValueAsk['of'], { kind: 'pass' }>;

interface AskAt {
  readonly step: string;
  /** Its place among the asks of its step. */
  readonly at: number;
  readonly of: OfPass;
}

const asksOf = (
  revision: Revision,
  group: FastenerGroup,
  pass: Pass,
  measure: OfPass['measure'],
): readonly AskAt[] =>
  revision.steps.flatMap((step) =>
    step.asks.flatMap((ask, at) =>
      ask.kind === 'value' &&
      ask.of.kind === 'pass' &&
      ask.of.group === group.id &&
      ask.of.pass === pass.id &&
      ask.of.measure === measure
        ? [{ step: step.id, at, of: ask.of }]
        : [],
    ),
  );

const torqueOf = ({ tightening }: Pass): Specification | undefined => {
  if (tightening.kind === 'byFeel') return undefined;
  const torque = tightening.kind === 'torque' ? tightening.torque : tightening.snugTorque;
  return torque.kind === 'noFigure' ? undefined : torque;
};

const figures = (where: string, what: string, pass: Pass, allowed: Specification): Finding[] => {
  const torque = torqueOf(pass);
  const most = nominal(allowed);
  const aim = torque && nominal(torque);
  return [
    ...specificationFindings(where, `${what}, prevailing torque`, allowed, 'torque'),
    ...(allowed.kind === 'noFigure'
      ? [fault(where, `${what}: say how much or how little its nuts may take to turn.`)]
      : []),
    ...(torque === undefined
      ? [fault(where, `${what}: there is no torque that its nuts could add to.`)]
      : []),
    ...(specificationQuantity(allowed) === 'torque' &&
    most !== undefined &&
    aim !== undefined &&
    most >= aim
      ? [doubt(where, `${what}: its nuts would take more to turn than to tighten.`)]
      : []),
  ];
};

/** The nut is turned before it is tightened: its reading must be there when the torque is judged. */
const inTime = (revision: Revision, nut: AskAt, torque: AskAt): boolean =>
  nut.step === torque.step
    ? nut.at < torque.at
    : dependents(revision, nut.step).includes(torque.step);

const readings = (
  revision: Revision,
  where: string,
  what: string,
  nuts: readonly AskAt[],
  torques: readonly AskAt[],
): readonly Finding[] => {
  if (nuts.length === 0)
    return [fault(where, `${what}: no step asks what its nuts take to turn before they seat.`)];
  return torques.flatMap((torque) => [
    ...(nuts.some((nut) => inTime(revision, nut, torque))
      ? []
      : [fault(where, `${what}: ask what its nuts take to turn before the torque is asked for.`)]),
    ...(nuts.some((nut) => !nut.of.each || torque.of.each)
      ? []
      : [fault(where, `${what}: its nuts are measured each, so ask the torque of each too.`)]),
  ]);
};

/** Self-locking nuts: that what they take to turn makes sense, and is read before the torque that it comes on top of. */
export const checkPrevailing = (revision: Revision, group: FastenerGroup): readonly Finding[] =>
  group.passes.flatMap((pass): readonly Finding[] => {
    const where = `groups/${group.id}/${pass.id}`;
    const what = `“${group.name}”, pass “${pass.id}”`;
    const nuts = asksOf(revision, group, pass, 'prevailing');
    if (pass.prevailing === undefined)
      return nuts.length === 0
        ? []
        : [fault(where, `${what}: a step asks what its nuts take to turn, and it allows nothing.`)];
    return [
      ...figures(where, what, pass, pass.prevailing),
      ...readings(revision, where, what, nuts, asksOf(revision, group, pass, 'torque')),
    ];
  });
