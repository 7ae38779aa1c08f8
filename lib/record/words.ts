import type { Specification } from '../fastening/specification';
import { toleranceInterval } from '../fastening/specification';
import { digitsFor, formatQuantity, formatWindow } from '../quantity';

/** Whose name stands for an id; ids never reach the paper. */
export interface Names {
  readonly person: (id: string) => string;
  readonly tool: (id: string) => string;
}

const nameIn =
  (known: readonly { readonly id: string; readonly name: string }[], otherwise: string) =>
  (id: string): string =>
    known.find((one) => one.id === id)?.name ?? otherwise;

/** The names of a shop; who or what it no longer lists is said to be so. */
export const namesOf = (shop: {
  readonly people: readonly { readonly id: string; readonly name: string }[];
  readonly torqueTools: readonly { readonly id: string; readonly name: string }[];
}): Names => ({
  person: nameIn(shop.people, 'somebody who is no longer listed'),
  tool: nameIn(shop.torqueTools, 'a tool that is no longer listed'),
});

/** "10 N·m (9–11 N·m)", "at least 11.5 V", "no figure", in the unit of the sheet. */
export const askedWords = (spec: Specification): string => {
  const interval = toleranceInterval(spec);
  const window = formatWindow(interval, spec.unit);
  if (interval?.target === undefined) return window;
  const target = formatQuantity(interval.target, spec.unit, digitsFor(interval, spec.unit));
  return `${target} (${window})`;
};
