import type { HeardBefore } from '../job';
import type { KioskInput, KioskState, KioskStep } from './state';

/** An event names no more than this. */
const most = 40;

const saidIn = (input: KioskInput): string | undefined => {
  if (input.kind === 'notUnderstood') return input.said;
  return input.kind === 'act' && input.via.by === 'voice' ? input.via.said : undefined;
};

/** What became of the utterance that had raised the question which now is closed. */
const closing = (before: KioskState, input: KioskInput): HeardBefore['became'] => {
  if (before.question?.kind === 'whichValue') return 'saidAgain';
  if (input.kind === 'reason') return 'acted';
  return input.kind === 'act' && input.intent.kind === 'yes' ? 'confirmed' : 'declined';
};

const actedOn = (input: KioskInput, after: KioskState): HeardBefore['became'] => {
  if (input.kind === 'notUnderstood') return 'notUnderstood';
  if (after.outcome?.tone === 'bad') return 'notThen';
  const unsure =
    input.kind === 'act' && input.via.by === 'voice' && input.via.certainty === 'unsure';
  return unsure ? 'saidAgain' : 'acted';
};

/**
 * Remembers what was said and made no event, and hands it to the next event that is stored. It changes nothing of what
 * is done: only so can the shop learn which phrases fail.
 */
export const withHearing = (before: KioskState, input: KioskInput, after: KioskStep): KioskStep => {
  const said = saidIn(input);
  const { heard = [], asked } = before.hearing ?? {};
  const now = after.state.question;
  const closed = before.question !== undefined && now !== before.question;
  const opened = now !== undefined && now !== before.question;
  const stores = after.effects.some(({ kind }) => kind === 'store');
  const own = said !== undefined && !stores && !opened ? actedOn(input, after.state) : undefined;
  const all: readonly HeardBefore[] = [
    ...heard,
    ...(closed && asked !== undefined && input.kind !== 'job'
      ? [{ said: asked.slice(0, 400), became: closing(before, input) }]
      : []),
    ...(said === undefined || own === undefined
      ? []
      : [{ said: said.slice(0, 400), became: closed && own === 'saidAgain' ? 'acted' : own }]),
  ].slice(-most);
  const stillAsked = opened ? said : closed ? undefined : asked;
  const left = stores ? [] : all;
  const { hearing: _, ...state } = after.state;
  return {
    state:
      left.length === 0 && stillAsked === undefined
        ? state
        : {
            ...state,
            hearing: { heard: left, ...(stillAsked === undefined ? {} : { asked: stillAsked }) },
          },
    effects: stores && all.length > 0 ? told(after.effects, all) : after.effects,
  };
};

/** The first event of the act carries what was heard before it. */
const told = (
  effects: KioskStep['effects'],
  heardBefore: readonly HeardBefore[],
): KioskStep['effects'] => {
  const first = effects.findIndex(({ kind }) => kind === 'store');
  return effects.map((effect, at) =>
    at === first && effect.kind === 'store'
      ? { ...effect, event: { ...effect.event, heardBefore: [...heardBefore] } }
      : effect,
  );
};
