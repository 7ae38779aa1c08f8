import type { JobState } from '../job';
import { looseEnds } from '../ledger';
import type { Caution } from '../procedure';
import {
  cautionsFor,
  deviationRows,
  dueLines,
  signedRows,
  type DeviationRow,
  type SignedRow,
} from './decided';
import { applied, kitUsed, type KitUsed } from './kit';
import { checkRows, measuredRows, type CheckRow, type MeasuredRow } from './measured';
import { fluidsUsed, partsUsed, type FluidUsed, type PartsUsed } from './parts';
import { unreadRows, type UnreadRow } from './unread';
import type { Names } from './words';

/** What goes with the vehicle when it is handed over. Plain words only; instants as stored, for the page to write. */
export interface HandOverRecord {
  readonly title: string;
  readonly sheet: string;
  readonly vehicle: readonly { readonly name: string; readonly value: string }[];
  readonly openedAt: string;
  /** Absent: the job is not closed, and this is no final record. */
  readonly closed?: { readonly at: string; readonly by: string };
  readonly workers: readonly string[];
  readonly parts: PartsUsed;
  readonly kit: KitUsed;
  /** What was put on fasteners and parts. */
  readonly applied: readonly string[];
  readonly fluids: readonly FluidUsed[];
  readonly tightened: readonly MeasuredRow[];
  /** Tightened, and no value was asked: by feel, or by the sheet's figure alone. */
  readonly unread: readonly UnreadRow[];
  readonly measured: readonly MeasuredRow[];
  readonly checks: readonly CheckRow[];
  readonly deviations: readonly DeviationRow[];
  readonly signed: readonly SignedRow[];
  /** Open and signed by nobody: only on a job that is not closed. */
  readonly open: readonly string[];
  readonly due: readonly string[];
  readonly cautions: readonly Caution[];
}

const vehicleFacts = ({ vehicle }: JobState): HandOverRecord['vehicle'] => [
  { name: 'Plate', value: vehicle.plate },
  { name: 'Vehicle', value: vehicle.description },
  ...(vehicle.serial === undefined ? [] : [{ name: 'Serial number', value: vehicle.serial }]),
  ...(vehicle.odometerKm === undefined
    ? []
    : [{ name: 'Odometer', value: `${vehicle.odometerKm} km` }]),
];

/** The hand-over record of a job as it stands. */
export const handOverRecord = (state: JobState, names: Names): HandOverRecord => ({
  title: state.revision.title,
  sheet: `${state.revision.source.sheet}, revision ${state.revision.source.revision}`,
  vehicle: vehicleFacts(state),
  openedAt: state.openedAt,
  ...(state.closedAt === undefined || state.closedBy === undefined
    ? {}
    : { closed: { at: state.closedAt, by: names.person(state.closedBy) } }),
  workers: state.workers.map(names.person),
  parts: partsUsed(state),
  kit: kitUsed(state),
  applied: applied(state),
  fluids: fluidsUsed(state),
  tightened: measuredRows(state, names, 'pass'),
  unread: unreadRows(state),
  measured: measuredRows(state, names, 'other'),
  checks: checkRows(state),
  deviations: deviationRows(state, names),
  signed: signedRows(state, names),
  open: looseEnds(state)
    .filter(({ signedBy }) => signedBy === undefined)
    .map(({ text }) => text),
  due: dueLines(state),
  cautions: cautionsFor(state),
});
