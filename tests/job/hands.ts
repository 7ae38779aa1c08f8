import { askSpecification, canBegin, openAsks, type Happening } from '@/lib/job';
import { toleranceInterval } from '@/lib/fastening/specification';
import { looseEnds } from '@/lib/ledger';
import { stepOf, type Ask, type Revision } from '@/lib/procedure';
import { canonicalUnit, quantityOf } from '@/lib/quantity';
import type { Bay } from './driver';

type ReadingTaken = Extract<Happening, { type: 'readingTaken' }>;
const why = { text: 'because' };
const tool = { id: 'wrench', expandedUncertainty: 0.5 };

/** A value in the middle of what is asked, in the canonical unit; 3 (litres, the capacity) where there is no figure. */
const goodReading = (
  revision: Revision,
  step: string,
  ask: Extract<Ask, { kind: 'value' }>,
): Omit<ReadingTaken, 'fastener'> => {
  const spec = askSpecification(revision, ask);
  const { lower, upper } = toleranceInterval(spec) ?? {};
  const value = ((lower ?? upper ?? 3) + (upper ?? lower ?? 3)) / 2;
  const unit = canonicalUnit[quantityOf(spec.unit)];
  return { type: 'readingTaken', step, ask: ask.id, value, unit, tool };
};

/** What a careful mechanic enters for everything that the step still asks. */
export const goodEntries = (bay: Bay, step: string): readonly Happening[] =>
  openAsks(bay.state, step).flatMap(({ ask, fasteners }): Happening[] => {
    switch (ask.kind) {
      case 'value': {
        const reading = goodReading(bay.revision, step, ask);
        return fasteners.length === 0
          ? [reading]
          : fasteners.map(({ id }) => ({ ...reading, fastener: id }));
      }
      case 'count':
        return [
          {
            type: 'answerGiven',
            step,
            ask: ask.id,
            answer: { kind: 'count', count: ask.expected },
          },
        ];
      case 'choice':
        return [
          {
            type: 'answerGiven',
            step,
            ask: ask.id,
            answer: { kind: 'choice', option: 'replaced' },
          },
        ];
      case 'check':
        return [
          { type: 'answerGiven', step, ask: ask.id, answer: { kind: 'check', passed: true } },
        ];
    }
  });

/** Does one step as the sheet has it. */
export const doStep = (bay: Bay, step: string): void => {
  bay.begin(step);
  if (stepOf(bay.revision, step)?.oneShot === true) bay.does({ type: 'readyGiven', step });
  for (const entry of goodEntries(bay, step)) bay.does(entry);
  bay.does({ type: 'stepDone', step });
};

export const doSteps = (bay: Bay, ...steps: readonly string[]): void => {
  for (const step of steps) doStep(bay, step);
};

/** Does every open step as soon as it may begin. */
export const doAllOpen = (bay: Bay): void => {
  for (;;) {
    const next = bay.revision.steps.find(({ id }) => canBegin(bay.state, id).ok);
    if (next === undefined) return;
    doStep(bay, next.id);
  }
};

/**
 * Works the ledger off as it says itself: open steps are done, kit is declared left over, a foreman who did no work
 * accepts deviations, and whatever else is open is settled by reopening the step that the ledger names.
 * Signs nothing. Gives up after a number of rounds.
 */
export const workOff = (bay: Bay, rounds = 60): void => {
  if (bay.state.phase === 'held') bay.does({ type: 'jobResumed' });
  for (let round = 0; round < rounds; round += 1) {
    doAllOpen(bay);
    for (const end of looseEnds(bay.state)) {
      if (end.kind === 'deviationUndecided' && end.mark === 'undecided')
        bay.does(
          {
            type: 'deviationDecided',
            deviation: end.key.slice('deviationUndecided:'.length),
            decision: 'accepted',
            reason: why,
          },
          'fred',
        );
      if (end.kind === 'kitUnaccounted') {
        const id = end.key.slice('kitUnaccounted:'.length);
        const kit = bay.state.kit[id];
        const quantity = bay.revision.kit.find((item) => item.id === id)?.quantity ?? 0;
        const count = quantity - (kit?.used ?? 0) - (kit?.leftOver ?? 0);
        bay.does({ type: 'kitLeftOver', kitItem: id, count, reason: why });
      }
    }
    const [end] = looseEnds(bay.state);
    if (end === undefined) return;
    if (end.kind === 'kitUnaccounted' || end.mark === 'undecided') continue;
    // A volume that does not balance may be misread at either end: read both again.
    const step = end.kind === 'fluidUnbalanced' ? 'drain' : end.step;
    if (step === undefined) throw new Error(`nothing settles: ${end.text}`);
    bay.does({ type: 'stepReopened', step, reason: why });
  }
};
