import type { Happening } from '../job';
import { answered, ask, happenAndShow, refuse } from './happen';
import type { KioskEnv, KioskState, KioskStep, Via } from './state';
import { currentStep, standing, type Want } from './wanted';

/** A counted number: what is not the expected count is asked back. */
export const takeCount = (
  state: KioskState,
  want: Want,
  count: number,
  via: Via,
  env: KioskEnv,
): KioskStep => {
  if (want.ask.kind !== 'count') return refuse(state, via, 'This step asks for no count');
  if (!Number.isInteger(count))
    return refuse(state, via, `${want.ask.label}: a whole number is needed`);
  const step = currentStep(state.job).id;
  const earlier = standing(state.job, step, want);
  const happenings: readonly Happening[] = [
    ...(earlier === undefined ? [] : [{ type: 'entryWithdrawn' as const, entry: earlier.id }]),
    { type: 'answerGiven', step, ask: want.ask.id, answer: { kind: 'count', count } },
  ];
  const right = count === want.ask.expected;
  const text = `${want.ask.label}: ${count}${right ? '' : `, ${want.ask.expected} expected`}`;
  const unsure = via.by === 'voice' && via.certainty === 'unsure';
  if (!right || unsure || earlier !== undefined)
    return ask(
      state,
      via,
      { kind: 'confirm', text: `${text}?`, act: { kind: 'happen', happenings, done: text } },
      `${text}?`,
    );
  return happenAndShow(answered(state), happenings, { via }, env, { tone: 'good', text });
};
