export { handOverRecord, type HandOverRecord } from './hand-over-record';
export type { MeasuredRow } from './measured';
export { namesOf, type Names } from './words';
