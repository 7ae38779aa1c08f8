import type { VoiceContext } from '../voice/intent';
import { validIntents } from './valid-intents';
import type { KioskState } from './state';
import { currentStep, quantityWanted } from './wanted';

/** What may be said now. Depends on the screen's state, never on the value that is expected. */
export const voiceContext = (state: KioskState): VoiceContext => {
  const { job } = state;
  const values = currentStep(job).asks.filter((ask) => ask.kind === 'value');
  // Of the whole step, so that the ears need not be made anew between two of its values.
  const [quantity, ...others] = new Set(values.map((ask) => quantityWanted(job, ask)));
  const group = values.flatMap(({ of }) => (of.kind === 'pass' && of.each ? [of.group] : []))[0];
  const fasteners = job.revision.groups.find(({ id }) => id === group);
  return {
    intents: validIntents(state),
    ...(quantity === undefined || others.length > 0 ? {} : { quantity }),
    ...(fasteners === undefined ? {} : { noun: fasteners.noun }),
    labels: fasteners?.fasteners.map(({ label }) => label) ?? [],
    steps: job.revision.steps.length,
  };
};
