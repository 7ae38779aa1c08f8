import { unreachable } from '../result';
import type { OwnPhrase, Understanding } from '../voice';
import { judgeTry } from './judge';
import { choicesFor } from './own-phrase';
import { mostTries, practicePhrases } from './phrases';
import { ownPhrases, worksOf, type OwnChoice, type Practised, type Try } from './record';

/** One practice as it goes on. */
export interface PracticeState {
  readonly phrases: readonly Practised[];
  readonly own: readonly OwnChoice[];
  readonly at:
    /** Says the phrase at this place; `last` is how it was just heard, until one goes on. */
    | { readonly kind: 'phrase'; readonly index: number; readonly last?: Try }
    | { readonly kind: 'results' }
    /** Tries words of one's own; they are kept when they are understood as often as they are asked for. */
    | {
        readonly kind: 'own';
        readonly insteadOf: string;
        readonly say: string;
        readonly tries: readonly Try[];
        readonly last?: Try;
      };
}

export type PracticeInput =
  | { readonly kind: 'heard'; readonly understanding: Understanding }
  /** How it was heard has been seen. */
  | { readonly kind: 'goOn' }
  /** The phrase is left, with what was tried of it. */
  | { readonly kind: 'skip' }
  /** Enough: what is left stays untried. */
  | { readonly kind: 'end' }
  | { readonly kind: 'choose'; readonly insteadOf: string; readonly say: string }
  /** Words of one's own are given up again. */
  | { readonly kind: 'drop'; readonly insteadOf: string };

export const beginPractice = (): PracticeState => ({
  phrases: practicePhrases.map(({ say }) => ({ say, tries: [] })),
  own: [],
  at: { kind: 'phrase', index: 0 },
});

/** What is to be said now. */
export const toSay = ({ phrases, at }: PracticeState): string | undefined =>
  at.kind === 'phrase' ? phrases[at.index]?.say : at.kind === 'own' ? at.say : undefined;

/** The words that are listened for beside everybody's: those chosen, and those being tried. */
export const ownOf = ({ own, at }: PracticeState): readonly OwnPhrase[] => {
  const others = own.filter(({ insteadOf }) => at.kind !== 'own' || insteadOf !== at.insteadOf);
  const tried = at.kind === 'own' ? [{ insteadOf: at.insteadOf, say: at.say }] : [];
  return ownPhrases([...others, ...tried]) ?? [];
};

/** Phrases that do not always work with this voice, and what else may be chosen for them. */
export const choices = (state: PracticeState, { say }: Practised): readonly string[] => {
  const chosen = state.own.filter(({ insteadOf }) => insteadOf !== say);
  return choicesFor(say, ownPhrases(chosen) ?? []);
};

const afterPhrase = (state: PracticeState, index: number): PracticeState => ({
  ...state,
  at: index + 1 < state.phrases.length ? { kind: 'phrase', index: index + 1 } : { kind: 'results' },
});

const heard = (state: PracticeState, understanding: Understanding): PracticeState => {
  const { at } = state;
  const say = toSay(state);
  if (at.kind === 'results' || at.last !== undefined || say === undefined) return state;
  const last = judgeTry(say, understanding, ownOf(state));
  if (last === undefined) return state;
  if (at.kind === 'own') return { ...state, at: { ...at, tries: [...at.tries, last], last } };
  const phrases = state.phrases.map((one, index) =>
    index === at.index ? { ...one, tries: [...one.tries, last] } : one,
  );
  return { ...state, phrases, at: { ...at, last } };
};

const goOn = (state: PracticeState): PracticeState => {
  const { at } = state;
  if (at.kind === 'results' || at.last === undefined) return state;
  if (at.kind === 'phrase') {
    const tries = state.phrases[at.index]?.tries.length ?? 0;
    return at.last.as === 'right' || tries >= mostTries
      ? afterPhrase(state, at.index)
      : { ...state, at: { kind: 'phrase', index: at.index } };
  }
  const { last: _seen, ...trying } = at;
  if (at.last.as !== 'right') return { ...state, at: { kind: 'results' } };
  if (at.tries.length < mostTries) return { ...state, at: trying };
  const others = state.own.filter(({ insteadOf }) => insteadOf !== at.insteadOf);
  return {
    ...state,
    own: [...others, { insteadOf: at.insteadOf, say: at.say }],
    at: { kind: 'results' },
  };
};

/** The practice as a pure machine. What cannot be done now changes nothing. */
export const practise = (state: PracticeState, input: PracticeInput): PracticeState => {
  switch (input.kind) {
    case 'heard':
      return heard(state, input.understanding);
    case 'goOn':
      return goOn(state);
    case 'skip':
      if (state.at.kind === 'results') return state;
      return state.at.kind === 'phrase'
        ? afterPhrase(state, state.at.index)
        : { ...state, at: { kind: 'results' } };
    case 'end':
      return { ...state, at: { kind: 'results' } };
    case 'choose': {
      const { insteadOf, say } = input;
      const phrase = state.phrases.find((one) => one.say === insteadOf);
      const may = phrase !== undefined && choices(state, phrase).includes(say);
      return state.at.kind !== 'results' || !may
        ? state
        : { ...state, at: { kind: 'own', insteadOf, say, tries: [] } };
    }
    case 'drop':
      return {
        ...state,
        own: state.own.filter(({ insteadOf }) => insteadOf !== input.insteadOf),
      };
    default:
      return unreachable(input);
  }
};

/** Phrases that did not work each time, the worst first, and how each did. */
export const troubled = ({ phrases }: PracticeState): readonly Practised[] =>
  phrases
    .filter((phrase) => ['fails', 'sometimes', 'readBack'].includes(worksOf(phrase)))
    .sort((a, b) => order.indexOf(worksOf(a)) - order.indexOf(worksOf(b)));

const order = ['fails', 'sometimes', 'readBack'];
