import type { HappeningType, JobEvent } from '../job';
import type { Person } from '../people';

/** Why somebody may not write an event. */
export type WriteFault = 'notYou' | 'notYourRole' | 'notYourKiosk' | 'notForForeman';

/** Whether the event was made by this person in their role at this kiosk; every write carries all three. */
export const writeFault = (
  event: JobEvent,
  { person, device }: { readonly person: Person; readonly device: string },
): WriteFault | undefined => {
  if (event.actor !== person.id) return 'notYou';
  if (event.role !== person.role) return 'notYourRole';
  if (event.device !== device) return 'notYourKiosk';
  return undefined;
};

/** The same, and of these kinds alone. */
const faultUnless = (
  allowed: ReadonlySet<HappeningType>,
  event: JobEvent,
  writer: { readonly person: Person; readonly device: string },
): WriteFault | undefined =>
  writeFault(event, writer) ?? (allowed.has(event.happening.type) ? undefined : 'notForForeman');

const visits: ReadonlySet<HappeningType> = new Set<HappeningType>([
  'deviationDecided',
  'looseEndSigned',
  'foremanAnswered',
  'stepReopened',
]);

/** The same for a second person who steps up to somebody else's kiosk to decide, sign or send back, and nothing else. */
export const visitFault = (
  event: JobEvent,
  visitor: { readonly person: Person; readonly device: string },
): WriteFault | undefined => faultUnless(visits, event, visitor);

const foremansOwn: ReadonlySet<HappeningType> = new Set<HappeningType>([
  ...visits,
  'jobHeld',
  'jobResumed',
  'jobReassigned',
]);

/** The same for a foreman at a screen of their own: what does not need to stand at the vehicle, in any bay. */
export const foremanFault = (
  event: JobEvent,
  foreman: { readonly person: Person; readonly device: string },
): WriteFault | undefined => faultUnless(foremansOwn, event, foreman);
