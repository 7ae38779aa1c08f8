export * from './id';
export * from './drawing';
export * from './step';
export * from './revision';
export * from './lookup';
