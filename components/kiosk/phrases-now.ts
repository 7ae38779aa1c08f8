import { availableActs, currentStep, openWants, type KioskState } from '@/lib/kiosk';
import { phraseTable, type Intent } from '@/lib/voice';

/** The phrase that the screen names for an intent. */
export const phraseFor = (intent: Intent): string | undefined =>
  phraseTable.find(
    (row) => 'intent' in row && JSON.stringify(row.intent) === JSON.stringify(intent),
  )?.say[0];

const noun = (state: KioskState): string | undefined => {
  const group = currentStep(state.job).asks.flatMap((ask) =>
    ask.kind === 'value' && ask.of.kind === 'pass' && ask.of.each ? [ask.of.group] : [],
  )[0];
  return state.job.revision.groups.find(({ id }) => id === group)?.noun;
};

/**
 * How a value is said here, with the words for the number left open: the screen never suggests the expected one.
 */
const valuePhrases = (state: KioskState): readonly string[] => {
  const wants = openWants(state.job, currentStep(state.job));
  const torque = wants.some(
    ({ ask }) => ask.kind === 'value' && ask.of.kind === 'pass' && ask.of.measure !== 'angle',
  );
  const number = wants.some(({ ask }) => ask.kind === 'value' || ask.kind === 'count');
  const named = noun(state);
  if (!number) return [];
  const measured = wants.some(({ ask }) => ask.kind === 'value');
  if (!torque) return [measured ? 'measured …' : '(the number)'];
  return named === undefined ? ['torqued …'] : ['torqued …', `${named} 3 torqued …`];
};

const first = ['yes', 'no', 'resume', 'ready', 'passed', 'failed', 'replaced', 'reused'] as const;
const then = ['next', 'takeBack', 'deviation', 'repeat', 'back'] as const;

/** What is worth saying now, the likeliest first. */
export const phrasesNow = (state: KioskState): readonly string[] => {
  if (state.question?.kind === 'reason') return ['(why, in your own words)', 'no'];
  const now = availableActs(state);
  const spoken = (names: readonly string[]): readonly string[] =>
    names.flatMap((name) => {
      const act = now.find((candidate) => candidate.name === name);
      const phrase = act === undefined ? undefined : phraseFor(act.intent);
      return phrase === undefined ? [] : [phrase];
    });
  const numbers =
    state.question === undefined && state.job.phase === 'running' && state.view !== 'adapter'
      ? valuePhrases(state)
      : state.question?.kind === 'value' || state.question?.kind === 'whichValue'
        ? ['(the value again)']
        : [];
  return [...spoken(first), ...numbers, ...spoken(then)];
};
