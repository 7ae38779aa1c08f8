import type { Intent } from './intent';

const inOrder = (intent: Intent): string =>
  JSON.stringify(Object.entries(intent).sort(([one], [other]) => one.localeCompare(other)));

/** Whether both mean the same, in every detail. */
export const sameIntent = (a: Intent, b: Intent): boolean => inOrder(a) === inOrder(b);
