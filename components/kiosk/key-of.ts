import { acts } from '@/lib/kiosk';

const printed: Readonly<Record<string, string>> = {
  ArrowRight: '→',
  ArrowLeft: '←',
  Escape: 'Esc',
  PageDown: 'Page down',
  PageUp: 'Page up',
};

/** A `KeyboardEvent.key` as it is printed on keyboards. */
export const keyText = (key: string): string =>
  printed[key] ?? (key.length === 1 ? key.toUpperCase() : key);

/** The first key of an act, as printed; the act's definition is the only place that names it. */
export const keyOf = (name: string): string | undefined => {
  const key = acts.find((act) => act.name === name)?.keys[0];
  return key === undefined ? undefined : keyText(key);
};
