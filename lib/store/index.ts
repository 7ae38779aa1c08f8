export { canonicalJson } from './canonical-json';
export { firstBreak, headOf, verifyAll, type Break, type Verification } from './chain';
export { clipShelf, type ClipFailure, type ClipShelf } from './clips';
export { jobLog, type AppendFailure, type JobLog, type Stored } from './job-log';
export { stateOf, type JobRecord, type JobSummary } from './job-records';
export { openStore, type Store } from './open';
export { newestRevisions, type ProcedureEntry } from './procedures';
export { readShop, setUpShop, type FirstDay } from './shop-records';
export { bayView, jobView, shopView, type BayView, type ShopView } from './views';
