import { bayView } from '../store';
import { answer, problem } from './problem';
import type { Endpoint } from './route';

/** GET /api/bays/BAY: the bay, its open job or null, and the shop's people, torque tools, adapters, settings and procedures. */
export const readBayView: Endpoint<{ readonly bay: string }> = async ({ store }, _, { bay }) => {
  const view = await bayView(store, bay);
  return view === undefined
    ? problem('unknownBay', 'The shop has no such bay.')
    : answer({ ...view, job: view.job ?? null });
};
