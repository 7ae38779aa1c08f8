export { momentAddress, pageAt, pageSize, parseFilter, type Filter, type Page } from './filter';
export { kindNames, kinds, type Kind } from './kind';
export { momentOf, type Moment, type MomentNames } from './moment';
export { pseudonyms } from './names';
export { type Row } from './row';
export { shownRow, type RowNames, type ShownMoment, type ShownRow } from './shown';
export { replaySlowly, snapshotEvery, stateAt, timelineOf, type Timeline } from './timeline';
export { timesIn, type Times } from './times';
export { marksOf, type Mark } from './marks';
