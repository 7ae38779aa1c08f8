import { anchorStore, type Store } from '../store';
import { log } from './log';

const everyMs = 10 * 60_000;

/** Anchors the record also on days on which nobody writes. A day that has its anchor gets no other. */
export const keepAnchoring = (store: Store, now: () => Date): void => {
  setInterval(() => {
    anchorStore(store, now()).catch((error: unknown) => {
      log.error({ err: error }, 'the day could not be anchored');
    });
  }, everyMs).unref();
};
