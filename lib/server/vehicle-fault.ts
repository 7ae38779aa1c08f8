import type { JobEvent } from '../job';
import { parseSerial } from '../vehicle';
import { problem } from './problem';

/**
 * Refuses to open a job on a serial that is on no plate, as the kiosk does before. Here and not in the event's schema:
 * a job that is stored stays readable.
 */
export const vehicleFault = (events: readonly JobEvent[]): Response | undefined => {
  for (const [index, { happening }] of events.entries()) {
    if (happening.type !== 'jobOpened' || happening.vehicle.serial === undefined) continue;
    const { serial, serialAsRead } = happening.vehicle;
    const parsed = parseSerial(serial, serialAsRead);
    if (!parsed.ok) return problem('invalid', parsed.error.message, { index });
  }
  return undefined;
};
