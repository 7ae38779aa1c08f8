import { writeEvents, type Happening, type Input } from '../job';
import type { KioskEffect, KioskEnv, KioskState, KioskStep, Outcome, Via } from './state';

const inputOf = (via: Via, askedBack: boolean): Input =>
  via.by === 'voice'
    ? {
        by: 'voice',
        said: via.said,
        confidence: via.confidence,
        askedBack,
        ...(via.unsure === undefined ? {} : { unsure: [...via.unsure] }),
      }
    : { by: via.by };

/** Makes events of happenings and applies them: all of them, or none and the refusal's message. */
export const happen = (
  state: KioskState,
  happenings: readonly Happening[],
  how: { readonly via: Via; readonly askedBack?: boolean },
  env: KioskEnv,
):
  | { readonly ok: true; readonly state: KioskState; readonly effects: KioskEffect[] }
  | { readonly ok: false; readonly message: string } => {
  const { now, newId, actor, role, device } = env;
  const input = inputOf(how.via, how.askedBack ?? false);
  const writing = { now, newId, actor, role, device, input };
  const written = writeEvents(state.job, happenings, writing);
  if (!written.ok) return { ok: false, message: written.error.message };
  const { events, job } = written.value;
  const effects = events.map((event): KioskEffect => ({ kind: 'store', event }));
  return { ok: true, state: { ...state, job }, effects };
};

const saidOf = (via: Via): { said?: string } => (via.by === 'voice' ? { said: via.said } : {});

/** Shows what became of an input, and changes nothing else. */
export const show = (
  state: KioskState,
  via: Via,
  outcome: Omit<Outcome, 'said'>,
  effects: readonly KioskEffect[] = [],
): KioskStep => ({ state: { ...state, outcome: { ...saidOf(via), ...outcome } }, effects });

/** A polite no: what was wanted cannot be done now, and why. */
export const refuse = (state: KioskState, via: Via, text: string): KioskStep =>
  show(state, via, { tone: 'bad', text }, [
    { kind: 'tone', tone: 'bad' },
    { kind: 'say', text },
  ]);

/** `happen`, then the outcome; a refusal is shown instead. */
export const happenAndShow = (
  state: KioskState,
  happenings: readonly Happening[],
  how: { readonly via: Via; readonly askedBack?: boolean },
  env: KioskEnv,
  outcome: Omit<Outcome, 'said'>,
  more: readonly KioskEffect[] = [],
): KioskStep => {
  const done = happen(state, happenings, how, env);
  if (!done.ok) return refuse(state, how.via, done.message);
  const tone = outcome.tone === 'bad' ? 'bad' : 'good';
  return show(done.state, how.via, outcome, [...done.effects, { kind: 'tone', tone }, ...more]);
};

/** Closes the open question, whatever it was. */
export const answered = (state: KioskState): KioskState => {
  const { question: _closed, ...rest } = state;
  return rest;
};

export const ask = (
  state: KioskState,
  via: Via,
  question: NonNullable<KioskState['question']>,
  text: string,
): KioskStep =>
  show({ ...state, question }, via, { tone: 'ask', text }, [
    { kind: 'tone', tone: 'ask' },
    { kind: 'say', text },
    ...(question.kind === 'reason' ? [{ kind: 'dictate' } as const] : []),
  ]);
