export * from './event';
export type * from './state';
