export * from './specification';
