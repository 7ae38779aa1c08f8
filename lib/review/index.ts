export * from './filter';
export * from './sections';
