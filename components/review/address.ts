import {
  filterNames,
  reviewFilterSchema,
  type Joint,
  type ReviewChoices,
  type ReviewFilter,
} from '@/lib/review';

/** What stands in the address of the review behind its question mark. */
export type Address = Readonly<Record<string, string | string[] | undefined>>;

/** Days that a review looks at where none are named. */
const USUAL_DAYS = 28;

const textIn = (address: Address, name: string): string | undefined => {
  const value = address[name];
  const text = (Array.isArray(value) ? value[0] : value)?.trim();
  return text === '' ? undefined : text;
};

const daysBefore = (day: string, days: number): string => {
  const date = new Date(`${day}T00:00:00Z`);
  date.setUTCDate(date.getUTCDate() - days);
  return date.toISOString().slice(0, 10);
};

/** The last four weeks, today with them. */
export const usualFilter = ({ today }: ReviewChoices): Pick<ReviewFilter, 'from' | 'to'> => ({
  from: daysBefore(today, USUAL_DAYS - 1),
  to: today,
});

/** "cover-bolts/3" as one name of a joint, as the filter's field has it. */
export const jointName = ({ ask, fastener }: Pick<Joint, 'ask' | 'fastener'>): string =>
  fastener === undefined ? ask : `${ask}/${fastener}`;

const jointIn = (name: string | undefined): Readonly<Record<string, string>> => {
  const [ask, fastener] = name?.split('/') ?? [];
  return { ...(ask && { ask }), ...(fastener && { fastener }) };
};

/** What only means something within a procedure, and is dropped with it when another one is chosen. */
const withinProcedure = (
  named: Readonly<Record<string, string>>,
  choices: ReviewChoices,
): Readonly<Record<string, string>> => {
  const { revision, step, ask, fastener, ...rest } = named;
  const sheet = choices.procedures.find(({ procedure }) => procedure === named['procedure']);
  if (sheet === undefined) return rest;
  const joint = sheet.joints.some(
    (one) => one.ask === ask && (fastener === undefined || one.fastener === fastener),
  );
  return {
    ...rest,
    ...(revision !== undefined && sheet.revisions.map(String).includes(revision) && { revision }),
    ...(step !== undefined && sheet.steps.some((one) => one.step === step) && { step }),
    ...(joint && ask !== undefined && { ask, ...(fastener !== undefined && { fastener }) }),
  };
};

export interface FilterAsked {
  readonly filter: ReviewFilter;
  /** The address asked for something that cannot be: the usual days are shown. */
  readonly problem?: string;
}

/** What an address asks to see; an empty field narrows nothing. */
export const filterOf = (address: Address, choices: ReviewChoices): FilterAsked => {
  const usual = usualFilter(choices);
  const joint = jointIn(textIn(address, 'joint'));
  const named: Record<string, string> = { ...usual, ...joint };
  for (const name of filterNames) {
    const text = textIn(address, name);
    if (text !== undefined) named[name] = text;
  }
  const asked = reviewFilterSchema.safeParse(withinProcedure(named, choices));
  if (asked.success) return { filter: asked.data };
  const why = asked.error.issues[0]?.message ?? 'it was not understood';
  return { filter: usual, problem: `This cannot be shown: ${why}. These are the last four weeks.` };
};

/** The address of the review with this filter, at one of its sections. */
export const reviewAddress = (
  filter: ReviewFilter,
  section = '',
  more: Readonly<Record<string, string>> = {},
): string => {
  const query = new URLSearchParams();
  for (const name of filterNames) {
    const value = filter[name];
    if (value !== undefined) query.set(name, String(value));
  }
  for (const [name, value] of Object.entries(more)) query.set(name, value);
  return `/review?${query.toString()}${section === '' ? '' : `#${section}`}`;
};

/** What the sections about one procedure look at, where the filter names none: the first, or what was asked for. */
export const procedureShown = (
  filter: ReviewFilter,
  address: Address,
  { procedures }: ReviewChoices,
): ReviewChoices['procedures'][number] | undefined => {
  const wanted = filter.procedure ?? textIn(address, 'sheet');
  return procedures.find(({ procedure }) => procedure === wanted) ?? procedures[0];
};

/** Which joint is charted: of the filter, or asked for, or the first. */
export const jointShown = (
  filter: ReviewFilter,
  address: Address,
  joints: readonly Joint[],
): Joint | undefined => {
  const { ask, fastener } = filter.ask === undefined ? jointIn(textIn(address, 'chart')) : filter;
  return (
    joints.find((one) => one.ask === ask && one.fastener === fastener) ??
    joints.find((one) => one.ask === ask) ??
    joints[0]
  );
};

/** The job's timeline, as it stood at an event. */
export const timelineAddress = ({ job, seq }: { job: string; seq: number }): string =>
  `/jobs/${job}?at=${seq}`;
