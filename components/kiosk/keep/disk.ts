import type { JobEvent } from '@/lib/job';
import type { SetAside, StoredJob } from '@/lib/outbox';
import type { Result } from '@/lib/result';
import type { SignedOn } from '../link';

/** Which job is on a bay's kiosk, and who works on it. */
export interface KeptBay {
  readonly bay: string;
  readonly job?: string | undefined;
  readonly signedOn?: SignedOn | undefined;
}

/** A job as this kiosk knows it. */
export interface KeptJob {
  /** As the store had it when it was last heard of; absent where the server was never reached for it. */
  readonly record: StoredJob | undefined;
  /** Done here and not yet acknowledged, in order. */
  readonly waiting: readonly JobEvent[];
}

export interface KeptClip {
  readonly id: string;
  /** WAV */
  readonly sound: ArrayBuffer;
}

/**
 * The kiosk's own disk. What is written is on it when the promise is kept; a promise is broken only where the disk
 * itself fails. What was written and cannot be read any more is an error, and is left where it is.
 */
export interface KioskDisk {
  readonly keepBay: (bay: KeptBay) => Promise<void>;
  readonly readBay: (bay: string) => Promise<Result<KeptBay | undefined, string>>;
  /** The job as the store has it. */
  readonly keepRecord: (job: string, record: StoredJob) => Promise<void>;
  readonly readJob: (job: string) => Promise<Result<KeptJob, string>>;
  readonly keepWaiting: (events: readonly JobEvent[]) => Promise<void>;
  /** These do not wait any more; the store has them. */
  readonly keepStored: (events: readonly JobEvent[]) => Promise<void>;
  /** What waited becomes something else, all at once. */
  readonly keepInstead: (of: readonly JobEvent[], events: readonly JobEvent[]) => Promise<void>;
  /** What could not be stored leaves the queue and stays here, and what is done instead joins it, all at once. */
  readonly putAside: (aside: SetAside, instead: readonly JobEvent[]) => Promise<void>;
  /** Sound of a reason that the server does not have yet. */
  readonly keepClip: (clip: KeptClip) => Promise<void>;
  readonly readClips: () => Promise<readonly KeptClip[]>;
  readonly dropClip: (id: string) => Promise<void>;
  readonly readAside: () => Promise<Result<readonly SetAside[], string>>;
}
