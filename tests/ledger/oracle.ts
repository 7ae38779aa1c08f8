import type { JobEvent, JobState } from '@/lib/job';
import { dependents, type Effect, type Revision, type Step } from '@/lib/procedure';

/** One effect of a step as it was done, or undone by rework. */
interface Turn {
  readonly done: boolean;
  readonly effect: Effect;
  /** Parts chosen new in that step. */
  readonly chosenNew: readonly string[];
}

/** Everything that was done and undone, in order, told from the accepted events alone. */
export const turns = (revision: Revision, log: readonly JobEvent[]): readonly Turn[] => {
  const all: Turn[] = [];
  const doneOrder: string[] = [];
  const answers = new Map<string, string>();
  const withdrawn = new Set(
    log.flatMap(({ happening }) => (happening.type === 'entryWithdrawn' ? [happening.entry] : [])),
  );
  const chosenNew = (step: Step): readonly string[] =>
    step.asks.flatMap((ask) =>
      ask.kind === 'choice' && answers.get(`${step.id} ${ask.id}`) === 'replaced' ? [ask.part] : [],
    );
  const play = (step: Step, done: boolean): void => {
    const effects = done ? step.effects : [...step.effects].reverse();
    for (const effect of effects) all.push({ done, effect, chosenNew: chosenNew(step) });
  };
  for (const { id, happening } of log) {
    if (happening.type === 'answerGiven' && happening.answer.kind === 'choice')
      if (!withdrawn.has(id))
        answers.set(`${happening.step} ${happening.ask}`, happening.answer.option);
    if (happening.type === 'stepDone') {
      const step = revision.steps.find((one) => one.id === happening.step);
      if (step) play(step, true);
      doneOrder.push(happening.step);
    }
    if (happening.type === 'stepReopened') {
      const again = [happening.step, ...dependents(revision, happening.step)];
      for (const step of [...doneOrder].reverse().filter((one) => again.includes(one))) {
        const found = revision.steps.find((one) => one.id === step);
        if (found) play(found, false);
        doneOrder.splice(doneOrder.indexOf(step), 1);
      }
    }
  }
  return all;
};

/** What happened last of several things; nothing where none of them did. */
const last = <T>(all: readonly Turn[], what: (turn: Turn) => T | undefined): T | undefined =>
  all.map(what).findLast((one) => one !== undefined);

const after = (
  all: readonly Turn[],
  opens: (turn: Turn) => boolean,
): readonly Turn[] | undefined => {
  const at = all.findLastIndex(opens);
  return at < 0 ? undefined : all.slice(at + 1);
};

const of = (effect: Effect, group: string): boolean =>
  'groups' in effect
    ? effect.groups.includes(group)
    : effect.kind === 'tightens' && effect.group === group;

const isNew = ({ effect, chosenNew }: Turn): boolean =>
  effect.kind === 'fits' &&
  (effect.as === 'new' || (effect.as === 'asChosen' && chosenNew.includes(effect.part)));

/** What is open on the vehicle by a second way of reckoning: look back at what happened last to each thing. */
export const openThings = (revision: Revision, log: readonly JobEvent[]) => {
  const all = turns(revision, log);
  const fluidOut = revision.fluids.filter(
    ({ id }) =>
      last(all, ({ done, effect }) => {
        if (effect.kind === 'drains' && effect.fluid === id && done) return true;
        return effect.kind === 'fills' && effect.fluid === id ? !done : undefined;
      }) === true,
  );
  const partOff = revision.parts.filter(
    ({ id, starts }) =>
      last(all, ({ done, effect }) => {
        if (effect.kind === 'takesOff' && effect.parts.includes(id) && done) return true;
        return effect.kind === 'fits' && effect.part === id ? !done : undefined;
      }) ?? starts === 'off',
  );
  const partDue = revision.parts.filter(({ id, reuse }) => {
    if (reuse !== 'never') return false;
    const since = after(
      all,
      ({ done, effect }) =>
        (effect.kind === 'takesOff' && effect.parts.includes(id) && done) ||
        (effect.kind === 'fits' && effect.part === id && !done),
    );
    return (
      since?.every(
        (turn) => !(turn.effect.kind === 'fits' && turn.effect.part === id && isNew(turn)),
      ) ?? false
    );
  });
  const groupOpen = revision.groups.filter(({ id, passes }) => {
    const mine = all.filter(({ effect }) => of(effect, id) && effect.kind !== 'applies');
    const kit = revision.steps.flatMap(({ effects }) => effects).find((e) => of(e, id));
    const finals = passes.filter(({ stage }) => stage === 'final').map((pass) => pass.id);
    const wentOff = mine.findLastIndex(
      ({ done, effect }) =>
        (effect.kind === 'takesOff' && done) || (effect.kind === 'runsIn' && !done),
    );
    const runIn = mine.findLastIndex(({ done, effect }) => effect.kind === 'runsIn' && done);
    const startsOff = kit?.kind === 'runsIn' || kit?.kind === 'applies';
    if (wentOff > runIn || (startsOff && runIn < 0)) return true;
    // Undoing what is off, and opening what is to be opened again, do not count for more.
    const turn = mine.findLast(({ done, effect }) => done || effect.kind !== 'takesOff');
    if (turn === undefined) return false;
    const telling = mine.findLast(
      ({ done, effect }) => done || effect.kind === 'tightens' || effect.kind === 'runsIn',
    );
    if (telling === undefined) return false;
    return !(
      telling.done &&
      telling.effect.kind === 'tightens' &&
      finals.includes(telling.effect.pass)
    );
  });
  const opened = (group: string) => (turn: Turn) =>
    of(turn.effect, group) &&
    (turn.done
      ? turn.effect.kind === 'takesOff' || turn.effect.kind === 'loosens'
      : turn.effect.kind === 'runsIn' || turn.effect.kind === 'tightens');
  const lockerDue = revision.groups.filter(({ id, threadLocker }) => {
    if (threadLocker === undefined) return false;
    const locks = ({ effect }: Turn) =>
      effect.kind === 'applies' && effect.consumable === threadLocker && of(effect, id);
    const since = after(all, (turn) => opened(id)(turn) || (locks(turn) && !turn.done));
    return since !== undefined && !since.some((turn) => locks(turn) && turn.done);
  });
  const fastenersDue = revision.groups.filter(({ id, fasteners }) => {
    if (!fasteners.some(({ singleUse }) => singleUse)) return false;
    const since = after(all, opened(id));
    return (
      since !== undefined &&
      !since.some(
        ({ done, effect }) =>
          done && effect.kind === 'runsIn' && effect.fasteners === 'new' && of(effect, id),
      )
    );
  });
  return {
    fluidOut: fluidOut.map(({ id }) => `fluidOut:${id}`),
    partOff: partOff.map(({ id }) => `partOff:${id}`),
    fastenerOpen: groupOpen.flatMap(({ fasteners }) =>
      fasteners.map(({ id }) => `fastenerOpen:${id}`),
    ),
    threadLockerDue: lockerDue.map(({ id }) => `threadLockerDue:${id}`),
    replacementDue: [
      ...partDue.map(({ id }) => `replacementDue:part:${id}`),
      ...fastenersDue.map(({ id }) => `replacementDue:group:${id}`),
    ],
  };
};

/** Kit pieces taken in all, by what was done and what came off again fit to go on again. */
export const piecesTaken = (
  revision: Revision,
  log: readonly JobEvent[],
  kitItem: string,
): number =>
  turns(revision, log).reduce((sum, turn) => {
    const { effect, done } = turn;
    if (effect.kind !== 'fits' && effect.kind !== 'runsIn') return sum;
    const pieces = effect.uses
      .filter((use) => use.kitItem === kitItem)
      .reduce((all, { quantity }) => all + quantity, 0);
    if (effect.kind === 'fits' && !isNew(turn)) return sum;
    if (done) return sum + pieces;
    const spent =
      effect.kind === 'fits'
        ? effect.as === 'asChosen' ||
          revision.parts.find(({ id }) => id === effect.part)?.reuse === 'never'
        : revision.groups.some(
            ({ id, fasteners }) =>
              effect.groups.includes(id) && fasteners.some(({ singleUse }) => singleUse),
          );
    return spent ? sum : sum - pieces;
  }, 0);

/** Whether nothing is open, told without the ledger. */
export const isSettled = (state: JobState, log: readonly JobEvent[]): boolean => {
  const { revision } = state;
  const counted = state.readings.filter(({ status }) => status === 'counted');
  const accepted = (id: string) =>
    state.deviations.some(
      (one) => one.id === id && one.decision !== undefined && one.decision.word !== 'rework',
    );
  const open = openThings(revision, log);
  const reuseAccepted = (key: string): boolean =>
    state.answers.some(
      ({ id, status, step, ask }) =>
        status === 'counted' &&
        accepted(`reusedAgainstSheet:${id}`) &&
        revision.steps
          .find((one) => one.id === step)
          ?.asks.some(
            (one) => one.kind === 'choice' && one.id === ask && key.endsWith(`:${one.part}`),
          ),
    );
  const steps = Object.entries(state.steps);
  const asksMet = steps
    .filter(([, { status }]) => status === 'leftOut')
    .every(([id]) =>
      revision.steps.find((one) => one.id === id)?.asks.every(({ kind }) => kind === 'choice'),
    );
  const balanced = Object.entries(state.fluids).every(([id, { state: now, drainedL, filledL }]) => {
    const fluid = revision.fluids.find((one) => one.id === id);
    const drained = revision.steps.some(
      (step) =>
        state.steps[step.id]?.status === 'done' &&
        step.effects.some((e) => e.kind === 'drains' && e.fluid === id),
    );
    if (fluid === undefined || now !== 'refilled' || !drained) return true;
    if (drainedL === undefined || filledL === undefined) return false;
    const far = Math.max(Math.abs(filledL - drainedL), Math.abs(filledL - fluid.capacityL));
    return far <= fluid.toleranceL + 1e-6;
  });
  return (
    steps.every(([, { status }]) => status !== 'open') &&
    asksMet &&
    balanced &&
    [...open.fluidOut, ...open.partOff, ...open.fastenerOpen, ...open.threadLockerDue].length ===
      0 &&
    open.replacementDue.every(reuseAccepted) &&
    revision.kit.every(({ id, quantity }) => {
      const kit = state.kit[id];
      return kit !== undefined && kit.used + kit.leftOver === quantity;
    }) &&
    counted.every(
      ({ verdict, id }) =>
        verdict !== 'notProvable' && (verdict !== 'outOfSpec' || accepted(`outOfSpec:${id}`)),
    ) &&
    state.answers
      .filter(({ status }) => status === 'counted')
      .every(({ answer, step, ask }) => {
        if (answer.kind === 'check') return answer.passed;
        if (answer.kind === 'choice') return true;
        const asked = revision.steps.find((one) => one.id === step)?.asks.find((a) => a.id === ask);
        return asked?.kind === 'count' && asked.expected === answer.count;
      }) &&
    state.deviations.every(({ decision, step }) => {
      if (decision === undefined) return false;
      const settled = state.steps[step]?.settledSeq;
      return decision.word !== 'rework' || (settled !== undefined && settled > decision.seq);
    })
  );
};
