export { reviewOf, type Review } from './review';
export { rebuildReview, type Rebuilt } from './rebuild';
export { openMarks } from './open-marks';
export { closeMark, markSheet, type MarkFault, type NewSheetMark } from './sheet-marks';
