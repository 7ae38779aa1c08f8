export { hearingAnswer, hearingFolders, type HearingFolders } from './answer';
export { findModel, type Model, type ModelTrouble } from './model-store';
export { manifestSchema, type Manifest } from './manifest';
