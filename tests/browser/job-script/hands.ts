import type { Page } from 'playwright-core';
import type { Act } from '@/lib/kiosk';

/** One way to work the kiosk without speaking. */
export interface Hands {
  readonly page: Page;
  /** Presses a button by what stands on it; the one at place `nth` where several are called so. */
  readonly press: (name: string | RegExp, nth?: number) => Promise<void>;
  /** One act of the kiosk: by its button or by its key. */
  readonly act: (act: Act) => Promise<void>;
  /** Opens the pad for what is wanted, and gives the number. */
  readonly number: (digits: string) => Promise<void>;
  /** A PIN, on the pad that is shown. */
  readonly pin: (digits: string) => Promise<void>;
  /** Writes into the field with this label. */
  readonly write: (label: string, text: string) => Promise<void>;
  /** The panel of all loose ends. */
  readonly ledger: () => Promise<void>;
  /** Notes a deviation of the kind "done another way", up to its reason. */
  readonly deviation: () => Promise<void>;
}
