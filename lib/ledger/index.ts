export * from './loose-end';
