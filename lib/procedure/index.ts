export * from './id';
export * from './drawing';
export * from './step';
export * from './revision';
export * from './lookup';
export * from './check-revision';
export type { Doubt, Fault, Finding } from './fault';
