import type { IntentKind } from './intent';

/**
 * What destroys, closes or opens again what was closed: it is always asked back, however it was given and however
 * surely it was heard. The one place where this is said: phrases, acts and the kiosk's machine read it.
 */
const table = {
  next: false,
  back: false,
  repeat: false,
  show: false,
  value: false,
  ambiguousValue: false,
  takeBack: true,
  yes: false,
  no: false,
  choice: false,
  check: false,
  leftOver: true,
  noteDeviation: false,
  leaveOut: true,
  reopen: true,
  goTo: false,
  hold: false,
  resume: false,
  callForeman: false,
  ready: false,
  closeJob: true,
} as const satisfies Record<IntentKind, boolean>;

export type CarefulKind = {
  [Kind in IntentKind]: (typeof table)[Kind] extends true ? Kind : never;
}[IntentKind];

/** Whether an act of this kind only ever asks, and is done by the yes to it. */
export const asksBack = (kind: IntentKind): kind is CarefulKind => table[kind];
