import {
  dayIn,
  jointsOf,
  spansOf,
  type DeviationList,
  type HearingSection,
  type HoldSection,
  type JointSection,
  type OverviewSection,
  type ParetoSection,
  type ReviewChoices,
  type ReviewFilter,
  type ReworkSection,
  type SheetMark,
  type StepTimesSection,
} from '../../review';
import { usualShifts, type Shop } from '../../shop';
import type { Store } from '../open';
import type { Reader } from '../reader';
import { readShop } from '../shop-records';
import { deviationList, deviationPareto } from './deviations';
import { holdSection } from './holds';
import { hearings, jointReadings, overview, stepTimes } from './measures';
import { namesOf } from './names';
import type { Asked } from './narrow';
import { reworkSection } from './reworks';
import { sheetMarks } from './sheet-marks';
import { newestSheets } from './sheets';

/** The review of a shop: each section as it is asked for. */
export interface Review {
  choices(): Promise<ReviewChoices>;
  overview(filter: ReviewFilter): Promise<OverviewSection>;
  deviations(filter: ReviewFilter): Promise<DeviationList>;
  pareto(filter: ReviewFilter): Promise<ParetoSection>;
  reworks(filter: ReviewFilter): Promise<ReworkSection>;
  /** Nothing unless the filter names a joint that the sheet has. */
  joint(filter: ReviewFilter): Promise<JointSection | undefined>;
  /** Nothing unless the filter names a procedure. */
  stepTimes(filter: ReviewFilter): Promise<StepTimesSection | undefined>;
  hearings(filter: ReviewFilter): Promise<HearingSection>;
  holds(filter: ReviewFilter): Promise<HoldSection>;
  /** Newest first; of one procedure, or of one of its revisions. */
  marks(procedure?: string, revision?: number): Promise<readonly SheetMark[]>;
}

const zoneOf = ({ settings }: Shop): string =>
  settings?.timeZone ?? new Intl.DateTimeFormat().resolvedOptions().timeZone;

const shiftsOf = ({ settings }: Shop) => settings?.shifts ?? usualShifts;

const choices = async (db: Reader, shop: Shop, now: Date): Promise<ReviewChoices> => {
  const all = await db
    .selectFrom('procedure_revisions')
    .select(['procedure', 'revision'])
    .orderBy('revision', 'desc')
    .execute();
  return {
    bays: shop.bays.map(({ id, name }) => ({ id, name })),
    shifts: shiftsOf(shop),
    timeZone: zoneOf(shop),
    today: dayIn(now.getTime(), zoneOf(shop)),
    procedures: (await newestSheets(db)).map((sheet) => ({
      procedure: sheet.procedure,
      title: sheet.title,
      revisions: all
        .filter(({ procedure }) => procedure === sheet.procedure)
        .map(({ revision }) => revision),
      steps: sheet.steps.map(({ id, title }, at) => ({ step: id, number: at + 1, title })),
      joints: jointsOf(sheet),
    })),
  };
};

/**
 * The review of the shop, or nothing before it has been set up. `names`: a foreman is signed on and sees who it was;
 * nobody else does. A shift that the shop does not have has no rows.
 */
export const reviewOf = async (
  store: Store,
  { names: shown, now }: { readonly names: boolean; readonly now: Date },
): Promise<Review | undefined> => {
  const { db } = store;
  const shop = await readShop(store);
  if (shop === undefined) return undefined;
  const names = namesOf(db, shop, shown);
  const asked = (filter: ReviewFilter): Asked => {
    const shift = shiftsOf(shop).find(({ id }) => id === filter.shift);
    const none = filter.shift !== undefined && shift === undefined;
    return { filter, spans: none ? [] : spansOf(filter, shift, zoneOf(shop)) };
  };
  return {
    choices: () => choices(db, shop, now),
    overview: (filter) => overview(db, asked(filter)),
    deviations: (filter) => deviationList(db, asked(filter), names),
    pareto: (filter) => deviationPareto(db, asked(filter), names),
    reworks: (filter) => reworkSection(db, asked(filter), names),
    joint: (filter) => jointReadings(db, asked(filter), names),
    stepTimes: (filter) => stepTimes(db, asked(filter)),
    hearings: (filter) => hearings(db, asked(filter)),
    holds: (filter) => holdSection(db, asked(filter), names),
    marks: (procedure, revision) => sheetMarks(db, names, procedure, revision),
  };
};
