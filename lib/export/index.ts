export { csvRecord, guarded, unguarded, type Cell } from './csv';
export { utcInstant } from './instant';
export { columns, exportKinds, rowsOf, type ExportKind, type Row } from './tables';
export { exportFormats, exportText, type ExportFormat } from './write';
