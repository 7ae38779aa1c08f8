import type { LooseEndKind } from '../ledger/loose-end';
import type { BayCard, Want } from './card';

/** What a bay wants, in few words: "Foreman called", "2 to decide". */
export const wantWords = ({ kind, count }: Want): string => {
  switch (kind) {
    case 'foremanCalled':
      return 'Foreman called';
    case 'waitsForForeman':
      return 'Held for foreman';
    case 'outOfSpec':
      return count === 1 ? 'Out of spec' : `${count} out of spec`;
    case 'signature':
      return `${count} to sign`;
    case 'kioskOffline':
      return 'Kiosk offline';
    case 'cannotBeHeard':
      return 'Cannot be heard';
    case 'decision':
      return `${count} to decide`;
  }
};

/** The same in one word, for a small card. */
export const wantWord = ({ kind }: Want): string => {
  switch (kind) {
    case 'foremanCalled':
      return 'Called';
    case 'waitsForForeman':
      return 'Held';
    case 'outOfSpec':
      return 'Spec';
    case 'signature':
      return 'Sign';
    case 'kioskOffline':
      return 'Offline';
    case 'cannotBeHeard':
      return 'Deaf';
    case 'decision':
      return 'Decide';
  }
};

const endNames: Readonly<Record<LooseEndKind, readonly [one: string, many: string]>> = {
  fluidOut: ['fluid out', 'fluids out'],
  fluidUnbalanced: ['fluid not balanced', 'fluids not balanced'],
  partOff: ['part off', 'parts off'],
  kitUnaccounted: ['kit item not accounted for', 'kit items not accounted for'],
  fastenerOpen: ['fastener not final', 'fasteners not final'],
  threadLockerDue: ['thread-locker due', 'thread-lockers due'],
  replacementDue: ['new part due', 'new parts due'],
  readingMissing: ['reading missing', 'readings missing'],
  readingOutOfSpec: ['reading out of spec', 'readings out of spec'],
  readingNotProvable: ['reading not provable', 'readings not provable'],
  checkFailed: ['check failed', 'checks failed'],
  checkMissing: ['check not made', 'checks not made'],
  deviationUndecided: ['deviation undecided', 'deviations undecided'],
  stepOpen: ['step to do', 'steps to do'],
};

/** "3 fasteners not final", by kind. */
export const endWords = (kind: LooseEndKind, count: number): string =>
  `${count} ${endNames[kind][count === 1 ? 0 : 1]}`;

/** What a bay is called on a small card: "12" of "Bay 12" where all bays are called so. */
export const shortBayNames = (cards: readonly BayCard[]): Readonly<Record<string, string>> => {
  const parts = cards.map(({ bay }) => /^(.*?)\s*(\d{1,3}[a-z]?)$/i.exec(bay.name));
  const first = parts[0]?.[1];
  const alike = first !== undefined && parts.every((part) => part?.[1] === first);
  return Object.fromEntries(
    cards.map(({ bay }, at) => [bay.id, alike ? (parts[at]?.[2] ?? bay.name) : bay.name]),
  );
};

/** An age in words: "3 s", "4 min", "2 h 05". */
export const ageWords = (ms: number): string => {
  const seconds = Math.max(0, Math.floor(ms / 1000));
  if (seconds < 60) return `${seconds} s`;
  const minutes = Math.floor(seconds / 60);
  if (minutes < 60) return `${minutes} min`;
  return `${Math.floor(minutes / 60)} h ${String(minutes % 60).padStart(2, '0')}`;
};
