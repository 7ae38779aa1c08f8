export * from './loose-end';
export * from './ledger';
