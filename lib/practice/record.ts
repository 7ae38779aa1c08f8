import { z } from 'zod';
import type { OwnPhrase } from '../voice';
import { choicesFor, isValue, meaningOf } from './own-phrase';
import { mostTries, practicePhrase } from './phrases';

/** What became of one try: taken as meant; as meant, but not clear enough to act; as something else; as nothing. */
export const hearings = ['right', 'unclear', 'other', 'nothing'] as const;
export type Hearing = (typeof hearings)[number];

export const trySchema = z.object({
  as: z.enum(hearings),
  heard: z.string().max(200),
  /** The least of its words, 0 to 1. */
  confidence: z.number().min(0).max(1),
});
export type Try = z.infer<typeof trySchema>;

const practisedSchema = z.object({
  say: z.string().refine((say) => practicePhrase(say) !== undefined, 'is not practised'),
  /** None: it was passed over. */
  tries: z.array(trySchema).max(mostTries),
});
export type Practised = z.infer<typeof practisedSchema>;

const ownSchema = z.object({ insteadOf: z.string(), say: z.string() });
export type OwnChoice = z.infer<typeof ownSchema>;

/** The chosen words with their meanings; undefined where one may not be had. */
export const ownPhrases = (choices: readonly OwnChoice[]): readonly OwnPhrase[] | undefined => {
  const own: OwnPhrase[] = [];
  for (const { insteadOf, say } of choices) {
    const intent = meaningOf(insteadOf);
    if (intent === undefined || !choicesFor(insteadOf, own).includes(say)) return undefined;
    own.push({ say, intent });
  }
  return own;
};

/** What one practice found out about a voice, with one speech model. */
export const practiceSchema = z.strictObject({
  id: z.uuid(),
  /** The model's name: another hears otherwise. */
  model: z.string().min(1).max(100),
  phrases: z.array(practisedSchema).max(40),
  own: z
    .array(ownSchema)
    .max(20)
    .refine((own) => ownPhrases(own) !== undefined, 'holds words that may not be chosen'),
});
export type PracticeRecord = z.infer<typeof practiceSchema>;

/** As kept: whose it is, and when it was stored (RFC 3339). */
export const keptPracticeSchema = practiceSchema.extend({ person: z.string(), at: z.string() });
export type KeptPractice = z.infer<typeof keptPracticeSchema>;

/** How well a phrase works with this voice; a number may be heard rightly and still be read back each time. */
export type Works = 'works' | 'sometimes' | 'readBack' | 'fails' | 'notTried';

export const worksOf = ({ say, tries }: Practised): Works => {
  if (tries.length === 0) return 'notTried';
  const is = (...kinds: readonly Hearing[]): number =>
    tries.filter(({ as }) => kinds.includes(as)).length;
  if (is('right') === tries.length) return 'works';
  if (isValue(say) && is('right', 'unclear') === tries.length) return 'readBack';
  return is('right') > 0 ? 'sometimes' : 'fails';
};
