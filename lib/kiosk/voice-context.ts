import type { VoiceContext } from '../voice/intent';
import { validIntents } from './valid-intents';
import type { KioskState } from './state';
import { currentStep } from './wanted';

/** What may be said now. Depends on the screen's state, never on the value that is expected. */
export const voiceContext = (state: KioskState): VoiceContext => {
  const asks = currentStep(state.job).asks;
  const group = asks.flatMap((ask) =>
    ask.kind === 'value' && ask.of.kind === 'pass' && ask.of.each ? [ask.of.group] : [],
  )[0];
  const fasteners = state.job.revision.groups.find(({ id }) => id === group);
  return {
    intents: validIntents(state),
    ...(fasteners === undefined ? {} : { noun: fasteners.noun }),
    labels: fasteners?.fasteners.map(({ label }) => label) ?? [],
    steps: state.job.revision.steps.length,
  };
};
