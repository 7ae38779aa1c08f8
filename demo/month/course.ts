import { currentStep } from '@/lib/kiosk';
import { unsigned, type LooseEnd } from '@/lib/ledger';
import type { Happening } from '@/lib/job';
import type { Person } from '@/lib/people';
import { stepNumber } from '@/lib/procedure';
import type { HoldReason } from '@/lib/voice';
import type { BenchHand } from './bench-hand';
import type { Chance } from './chance';
import * as words from './words';

/** Where the course of a job may be left and taken up again. */
export type Pause =
  /** Between two steps. */
  | { readonly kind: 'step' }
  /** On hold until then. */
  | { readonly kind: 'held'; readonly untilMs: number };

const HOUR = 60;

const hold = function* (hand: BenchHand, dice: Chance): Generator<Pause, void> {
  const reason = dice.weighted<HoldReason>([
    ['parts', 5],
    ['tool', 2],
    ['foreman', 2],
    ['approval', 2],
    ['break', 3],
  ]);
  hand.act({ kind: 'hold', reason });
  const minutes = {
    parts: dice.between(2, 22) * HOUR,
    tool: dice.between(10, 60),
    foreman: dice.between(5, 30),
    approval: dice.between(1, 6) * HOUR,
    break: dice.between(15, 35),
  }[reason];
  if (minutes > HOUR) yield { kind: 'held', untilMs: hand.nowMs + minutes * 60_000 };
  else hand.pass(minutes);
  resume(hand);
};

export const resume = (hand: BenchHand): void => {
  if (hand.job.phase === 'held') hand.act({ kind: 'resume' });
  // Whoever takes over reads the summary first, and says so.
  hand.act({ kind: 'show', what: 'step' });
};

const oneStep = function* (hand: BenchHand, dice: Chance): Generator<Pause, void> {
  const step = currentStep(hand.job);
  if (dice.is(0.022)) yield* hold(hand, dice);
  // Some steps take longer than the book says, at this shop as at any other.
  const lean = 0.8 + 0.55 * ((step.title.length * 7) % 10) * 0.1;
  const minutes = step.bookMinutes * lean * Math.exp(dice.normal(0, 0.28));
  if (step.effects.length === 0 && step.asks.length > 0 && dice.is(0.005)) {
    hand.pass(1);
    hand.leaveOut(dice.pick(words.leftOut));
    return;
  }
  if (step.oneShot) hand.act({ kind: 'ready' });
  const pieces = 1 + hand.job.revision.groups.length;
  hand.pass(minutes * 0.6);
  hand.answerAll((minutes * 0.4) / pieces);
  if (dice.is(0.008)) hand.deviation('anotherWay', dice.pick(words.anotherWay));
  else if (dice.is(0.005)) hand.deviation('missingOrDamaged', dice.pick(words.missing));
  hand.act({ kind: 'next' });
  if (dice.is(0.006) && hand.job.steps[step.id]?.status === 'done') reopen(hand, step.id, dice);
};

const reopen = (hand: BenchHand, step: string, dice: Chance): void => {
  hand.act({ kind: 'reopen', step: stepNumber(hand.job.revision, step) });
  hand.settle('yes');
  hand.reason(dice.pick(words.again));
};

const openSteps = function* (hand: BenchHand, dice: Chance): Generator<Pause, void> {
  for (let tries = 0; tries < 200; tries += 1) {
    if (hand.job.steps[hand.job.currentStep]?.status !== 'open') {
      const seq = hand.job.seq;
      hand.act({ kind: 'next' });
      if (hand.job.seq === seq) return;
      continue;
    }
    yield* oneStep(hand, dice);
    yield { kind: 'step' };
  }
  throw new Error(`${hand.job.revision.procedure} never ends`);
};

const deviationOf = (end: LooseEnd): string => end.key.slice('deviationUndecided:'.length);

/** A foreman's word on what is open; sent back to be done again at most on the first round. */
const decides = (end: LooseEnd, dice: Chance, mayRework: boolean): Happening => {
  if (end.kind !== 'deviationUndecided')
    return {
      type: 'looseEndSigned',
      looseEnd: end.key,
      mark: end.mark,
      reason: { text: dice.pick(words.signed) },
    };
  const decision = dice.weighted<'accepted' | 'acceptedRecheckDue' | 'rework'>([
    ['accepted', 7],
    ['acceptedRecheckDue', 2],
    ['rework', mayRework && end.step !== undefined ? 1.5 : 0],
  ]);
  const all: Readonly<Record<typeof decision, readonly [string, ...string[]]>> = {
    accepted: words.accepted,
    acceptedRecheckDue: words.recheck,
    rework: words.doAgain,
  };
  return {
    type: 'deviationDecided',
    deviation: deviationOf(end),
    decision,
    reason: { text: dice.pick(all[decision]) },
  };
};

/** Settles what the mechanic can; what is left is a foreman's. */
const byHand = (hand: BenchHand, ends: readonly LooseEnd[], dice: Chance): readonly LooseEnd[] =>
  ends.filter((end) => {
    if (end.kind === 'kitUnaccounted') {
      hand.act({ kind: 'leftOver' });
      hand.settle('yes');
      hand.reason(dice.pick(words.leftOver));
      return false;
    }
    if (end.kind === 'deviationUndecided' && end.mark === 'rework due' && end.step !== undefined) {
      if (hand.job.steps[end.step]?.status !== 'open') reopen(hand, end.step, dice);
      return false;
    }
    return end.kind !== 'stepOpen';
  });

/** A whole job from its first step until it is closed, with all that comes between. */
export const course = function* (
  hand: BenchHand,
  foreman: Person,
  dice: Chance,
): Generator<Pause, void> {
  for (let round = 0; round < 15; round += 1) {
    yield* openSteps(hand, dice);
    const ends = unsigned(hand.job);
    if (ends.length === 0) {
      hand.act({ kind: 'closeJob' });
      hand.settle('yes');
      if (hand.job.phase === 'closed') return;
      continue;
    }
    const left = byHand(hand, ends, dice);
    if (left.length === 0) continue;
    if (hand.job.foremanCalledAt === undefined) hand.act({ kind: 'callForeman' });
    hand.pass(dice.between(2, 25));
    hand.foreman(foreman, { type: 'foremanAnswered' });
    for (const end of left) {
      hand.pass(dice.between(0.5, 2));
      hand.foreman(foreman, decides(end, dice, round === 0));
    }
  }
  const open = unsigned(hand.job).map(({ text }) => text);
  throw new Error(`${hand.job.revision.procedure} never closes: ${open.join('; ')}`);
};
