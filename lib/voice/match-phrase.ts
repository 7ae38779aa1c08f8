import type { Quantity } from '../quantity';
import type { Intent, VoiceContext } from './intent';
import { asHeard } from './number-words';
import { parseNumber } from './parse-number';
import { phraseTable, rowKind, type PhraseRow } from './phrase-table';
import { pairSense, splitUnit } from './unit-words';

type Words = readonly string[];

/** What a run of words means as a whole phrase, or that it is none. */
export type Match =
  | { readonly kind: 'phrase'; readonly intent: Intent; readonly row: PhraseRow }
  | { readonly kind: 'none' };

export const nouns = ['bolt', 'nut', 'screw', 'stud', 'plug'] as const;

type Value = Extract<Intent, { kind: 'value' | 'ambiguousValue' }>;

/** "one hundred and twenty newton meters". */
const readValue = (words: Words, quantity: Quantity | undefined): Value | undefined => {
  const { number, unit } = splitUnit(words);
  const parsed = parseNumber(number, pairSense(unit, quantity));
  // Bare "degrees" stand for the unit that is asked when it is a temperature.
  const said = unit === 'deg' && quantity === 'temperature' ? undefined : unit;
  const with_ = said === undefined ? {} : { unit: said };
  switch (parsed.kind) {
    case 'number':
      return { kind: 'value', value: parsed.value, ...with_ };
    case 'ambiguous':
      return { kind: 'ambiguousValue', candidates: parsed.candidates, ...with_ };
    case 'none':
      return undefined;
  }
};

const candidatesOf = (value: Value): readonly number[] =>
  value.kind === 'value' ? [value.value] : value.candidates;

/** "torqued to ten" and "torqued two ten" sound alike: both are offered. */
const readAfterVerb = (words: Words, quantity: Quantity | undefined): Value | undefined => {
  const asTwo = readValue(words, quantity);
  const asTo = words[0] === 'two' ? readValue(words.slice(1), quantity) : undefined;
  if (asTo === undefined || asTwo === undefined) return asTwo ?? asTo;
  const candidates = [...candidatesOf(asTo), ...candidatesOf(asTwo)];
  const { unit } = asTwo;
  return { kind: 'ambiguousValue', candidates, ...(unit === undefined ? {} : { unit }) };
};

const readWhole = (words: Words): number | undefined => {
  const parsed = parseNumber(words);
  return parsed.kind === 'number' && Number.isInteger(parsed.value) ? parsed.value : undefined;
};

const readFastener = (words: Words, context: VoiceContext): string | undefined => {
  const [noun, ...label] = words;
  const known =
    context.noun === undefined ? nouns.some((one) => one === noun) : noun === context.noun;
  const number = known ? readWhole(label) : undefined;
  return number === undefined ? undefined : String(number);
};

interface Slots {
  readonly value?: Value;
  readonly fastener?: string;
  readonly step?: number;
}

/** Lays a pattern over the words; every way in which its slots can be filled. */
const fill = (
  pattern: Words,
  words: Words,
  context: VoiceContext,
  slots: Slots,
  before: string | undefined,
): readonly Slots[] => {
  const [part, ...others] = pattern;
  if (part === undefined) return words.length === 0 ? [slots] : [];
  if (!part.startsWith('{'))
    return words[0] === asHeard(part) ? fill(others, words.slice(1), context, slots, part) : [];
  const found: Slots[] = [];
  for (let length = 1; length <= words.length - others.length; length += 1) {
    const run = words.slice(0, length);
    const filled = fillSlot(part, run, context, before);
    if (filled !== undefined)
      found.push(...fill(others, words.slice(length), context, { ...slots, ...filled }, part));
  }
  return found;
};

/** Behind these the shop may put "to". */
const verbs: ReadonlySet<string> = new Set(['torqued', 'torque', 'tightened']);

const fillSlot = (
  part: string,
  run: Words,
  context: VoiceContext,
  before: string | undefined,
): Slots | undefined => {
  if (part === '{value}') {
    const read = before !== undefined && verbs.has(before) ? readAfterVerb : readValue;
    const value = read(run, context.quantity);
    return value === undefined ? undefined : { value };
  }
  if (part === '{fastener}') {
    const fastener = readFastener(run, context);
    return fastener === undefined ? undefined : { fastener };
  }
  const step = readWhole(run);
  return step === undefined ? undefined : { step };
};

const intentOf = (phrase: PhraseRow, slots: Slots): Intent | undefined => {
  if ('intent' in phrase) return phrase.intent;
  switch (phrase.filled) {
    case 'value':
      return slots.value === undefined
        ? undefined
        : { ...slots.value, ...(slots.fastener === undefined ? {} : { label: slots.fastener }) };
    case 'reopen':
    case 'goTo':
      return slots.step === undefined ? undefined : { kind: phrase.filled, step: slots.step };
  }
};

/** A phrase of whoever is signed on. It never takes the place of one that everybody has. */
const matchOwn = (words: Words, { intents, voice }: VoiceContext): Match => {
  const text = words.join(' ');
  const found = voice?.own.find(({ say, intent }) => say === text && intents.includes(intent.kind));
  return found === undefined
    ? { kind: 'none' }
    : {
        kind: 'phrase',
        intent: found.intent,
        row: { intent: found.intent, say: [found.say] },
      };
};

/** The phrase that these words are, whole; only phrases that may be said now count. */
export const matchPhrase = (said: Words, context: VoiceContext): Match => {
  const words = said.map(asHeard);
  const matches: Match[] = [];
  for (const phrase of phraseTable) {
    if (!context.intents.includes(rowKind(phrase))) continue;
    for (const say of phrase.say)
      for (const slots of fill(say.split(' '), words, context, {}, undefined)) {
        const intent = intentOf(phrase, slots);
        if (intent !== undefined) matches.push({ kind: 'phrase', intent, row: phrase });
      }
  }
  return matches[0] ?? matchOwn(words, context);
};
