import type { HeardBefore, Input, JobEvent, JobState } from '../job';
import { noPhrase, phraseOf, usualValuePhrase } from './phrase';
import type { HearingCounts, ReviewWrite } from './rows';

const HALF_HOUR_MS = 30 * 60_000;

const nothing: HearingCounts = { heard: 0, askedBack: 0, declined: 0, takenBack: 0, saidAgain: 0 };

interface Count {
  readonly phrase: string;
  readonly add: Partial<HearingCounts>;
}

const became: Readonly<Record<HeardBefore['became'], Partial<HearingCounts>>> = {
  acted: { heard: 1 },
  confirmed: { heard: 1, askedBack: 1 },
  declined: { heard: 1, askedBack: 1, declined: 1 },
  saidAgain: { heard: 1, saidAgain: 1 },
  notThen: { heard: 1, saidAgain: 1 },
  notUnderstood: { heard: 1, saidAgain: 1 },
};

const dictated = (event: JobEvent): boolean => {
  const { happening } = event;
  switch (happening.type) {
    case 'stepLeftOut':
    case 'stepReopened':
    case 'kitLeftOver':
    case 'deviationNoted':
      return true;
    case 'answerGiven':
      return happening.answer.kind === 'choice' && happening.answer.reason !== undefined;
    case 'jobHeld':
      return phraseOf(event.input.by === 'voice' ? event.input.said : '') === noPhrase;
    default:
      return false;
  }
};

/** The words that a reading came from; of one that was confirmed, the record has the "yes" alone. */
const phraseBehind = (input: Input): string | undefined => {
  if (input.by !== 'voice') return undefined;
  return input.askedBack ? usualValuePhrase : phraseOf(input.said);
};

const takenBack = (before: JobState, entry: string): readonly Count[] => {
  const reading = before.readings.find(({ id }) => id === entry);
  const phrase = reading === undefined ? undefined : phraseBehind(reading.input);
  return phrase === undefined ? [] : [{ phrase, add: { takenBack: 1 } }];
};

/** Several events of one act have one instant, and the words that made them were said once. */
const sameAct = (before: JobState | undefined, event: JobEvent): boolean =>
  before?.lastAt === event.at && before.seq === event.seq - 1;

const counts = (before: JobState | undefined, event: JobEvent): readonly Count[] => {
  const { input, happening, heardBefore = [] } = event;
  const earlier = heardBefore.map(({ said, became: how }) => ({
    phrase: phraseOf(said),
    add: became[how],
  }));
  const own: readonly Count[] =
    input.by !== 'voice' || dictated(event) || sameAct(before, event)
      ? []
      : [{ phrase: phraseOf(input.said), add: { heard: 1 } }];
  // Written before what was heard before was kept: only that something was asked back is known.
  const unnamed: readonly Count[] =
    input.by === 'voice' &&
    input.askedBack &&
    happening.type === 'readingTaken' &&
    event.heardBefore === undefined
      ? [{ phrase: usualValuePhrase, add: { heard: 1, askedBack: 1 } }]
      : [];
  const back =
    happening.type === 'entryWithdrawn' && before !== undefined
      ? takenBack(before, happening.entry)
      : [];
  return [...earlier, ...own, ...unnamed, ...back];
};

const sum = (a: HearingCounts, b: Partial<HearingCounts>): HearingCounts => ({
  heard: a.heard + (b.heard ?? 0),
  askedBack: a.askedBack + (b.askedBack ?? 0),
  declined: a.declined + (b.declined ?? 0),
  takenBack: a.takenBack + (b.takenBack ?? 0),
  saidAgain: a.saidAgain + (b.saidAgain ?? 0),
});

/** What an event says of the phrases that were heard, one write a phrase. */
export const hearingWrites = (
  before: JobState | undefined,
  after: JobState,
  event: JobEvent,
): readonly ReviewWrite[] => {
  const sums = new Map<string, HearingCounts>();
  for (const { phrase, add } of counts(before, event))
    sums.set(phrase, sum(sums.get(phrase) ?? nothing, add));
  const atMs = Date.parse(event.at);
  const { procedure, revision } = after.revision;
  return [...sums].map(([phrase, add]) => ({
    kind: 'hearing',
    key: {
      halfHourMs: Math.floor(atMs / HALF_HOUR_MS) * HALF_HOUR_MS,
      bay: after.bay,
      procedure,
      revision,
      role: event.role,
      phrase,
    },
    add,
  }));
};
