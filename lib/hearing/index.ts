export { hearingAnswer, hearingFolders, type HearingFolders } from './answer';
export { findModel, sha256Of, type Model, type ModelTrouble } from './model-store';
export { manifestSchema, type Manifest, type ModelFile } from './manifest';
