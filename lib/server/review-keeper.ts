import { setTimeout } from 'node:timers/promises';
import type { Store } from '../store';
import { rebuildReview } from '../store/review';
import { log } from './log';

/** Between two transactions of the rebuild: bays come first. */
const pauseMs = 20;

/** Brings the review up to date beside the work of the bays; nobody waits for it. A stop in between does no harm. */
export const keepReview = (store: Store): void => {
  rebuildReview(store, () => setTimeout(pauseMs)).then(
    ({ jobs, faults }) => {
      if (jobs > 0) log.info({ jobs }, 'jobs taken into the review');
      for (const fault of faults) log.error({ fault }, 'a job is not in the review');
    },
    (error: unknown) => {
      log.error({ err: error }, 'the review was not brought up to date');
    },
  );
};
