export type * from './intent';
