export { shellAnswer } from './answer';
export { shellEntries, type ShellEntry } from './entries';
