import { z } from 'zod';
import { namesOf } from '../record';
import type { Shop } from '../shop';
import { readShop } from '../store';
import {
  marksOf,
  momentOf,
  pageAt,
  pseudonyms,
  shownRow,
  stateAt,
  timesIn,
  type Filter,
  type Mark,
  type RowNames,
  type ShownMoment,
  type ShownRow,
} from '../timeline';
import type { JobParams } from './jobs';
import { readStory, storyAtHand, type JobStory } from './job-story';
import { answer, problem } from './problem';
import type { Endpoint } from './route';
import type { ShopServer } from './shop-server';
import { foremanIn } from './signed-on';

/** Names of people are for a foreman who is signed on at a screen of their own; all others see numbers. */
const namesFor = async (
  { clips }: ShopServer,
  story: JobStory,
  shop: Shop,
  foreman: boolean,
): Promise<RowNames> => {
  const { person, tool } = namesOf(shop);
  const spoken = story.timeline.rows.flatMap(({ reason }) => reason?.clip ?? []);
  const deleted = foreman ? await clips.deletedOf(spoken) : new Map<string, string>();
  return {
    person: foreman ? person : pseudonyms(story.timeline.events),
    bay: (id) => shop.bays.find((one) => one.id === id)?.name ?? 'a bay that is no longer listed',
    tool,
    sounds: foreman,
    soundDeletedAt: (clip) => deleted.get(clip),
    times: timesIn(shop.settings?.timeZone),
  };
};

const shownMoment = (story: JobStory, at: number, names: RowNames): ShownMoment | undefined => {
  const { timeline } = story;
  const state = stateAt(timeline, at);
  const row = timeline.rows[at - 1];
  return state === undefined || row === undefined || timeline.last === undefined
    ? undefined
    : { row: shownRow(row, timeline.last, names), moment: momentOf(state, names) };
};

/** All that the page of a job's timeline shows. */
export interface TimelinePage {
  readonly job: string;
  readonly title: string;
  readonly plate: string;
  readonly bay: string;
  readonly foreman: boolean;
  readonly chain: { readonly head: string | undefined; readonly broken: string | undefined };
  readonly stored: number;
  /** The event from which on nothing can be replayed. */
  readonly stoppedAt: number | undefined;
  readonly at: number;
  readonly of: number;
  readonly shown: ShownMoment;
  readonly marks: readonly Mark[];
  readonly rows: readonly ShownRow[];
  readonly matching: number;
  readonly before: number;
  readonly earlier: number | undefined;
  readonly later: number | undefined;
  readonly steps: readonly { readonly id: string; readonly title: string }[];
}

/** What cannot be shown: no such job, or a record of which not even the opening can be read. */
export type NoTimeline = 'unknownJob' | { readonly broken: string };

const unreadable = 'Not even the first event of this job can be read.';

/** The page of a job at a moment; without one, or with one that never was, at the last. */
export const timelinePage = async (
  server: ShopServer,
  cookies: string | null,
  job: string,
  { filter, at: asked }: { readonly filter: Filter; readonly at: number | undefined },
): Promise<TimelinePage | NoTimeline> => {
  const story = await readStory(server, job);
  const shop = await readShop(server.store);
  if (story === undefined || shop === undefined) return 'unknownJob';
  const { timeline, broken } = story;
  const of = timeline.rows.length;
  const at = asked !== undefined && asked >= 1 && asked <= of ? asked : of;
  const foreman = (await foremanIn(server, cookies)) !== undefined;
  const names = await namesFor(server, story, shop, foreman);
  const shown = shownMoment(story, at, names);
  const { last } = timeline;
  if (shown === undefined || last === undefined) return { broken: broken?.message ?? unreadable };
  const page = pageAt(timeline.rows, filter, at);
  return {
    job,
    title: last.revision.title,
    plate: last.vehicle.plate,
    bay: last.bay,
    foreman,
    chain: { head: story.head, broken: broken?.message },
    stored: story.stored,
    stoppedAt: story.stored > of ? of + 1 : undefined,
    at,
    of,
    shown,
    marks: marksOf(story.timeline.rows),
    rows: page.rows.map((row) => shownRow(row, last, names)),
    matching: page.matching,
    before: page.before,
    earlier: page.earlier,
    later: page.later,
    steps: last.revision.steps.map(({ id, title }) => ({ id, title })),
  };
};

/** A moment as an address names it. */
export const momentNumber = z.coerce.number().int().positive();

/**
 * GET /api/jobs/JOB/moment?at=N: how the job stood right after event N, in plain words. Names of people for a foreman
 * who is signed on at a screen of their own, else numbers.
 */
export const readMoment: Endpoint<JobParams> = async (server, request, { job }) => {
  const at = momentNumber.safeParse(new URL(request.url).searchParams.get('at'));
  if (!at.success) return problem('invalid', 'A moment is the number of an event, from 1.');
  const story = await storyAtHand(server, job);
  const shop = await readShop(server.store);
  if (story === undefined || shop === undefined)
    return problem('unknownJob', 'There is no such job.');
  const foreman = (await foremanIn(server, request.headers.get('cookie'))) !== undefined;
  const names = await namesFor(server, story, shop, foreman);
  const shown = shownMoment(story, at.data, names);
  return shown === undefined ? problem('notFound', 'The job has no such event.') : answer(shown);
};
