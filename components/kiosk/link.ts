import type { JobEvent, JobState } from '@/lib/job';
import type { Person } from '@/lib/people';
import type { Result } from '@/lib/result';
import type { ShopSettings } from '@/lib/shop';
import type { Delivery, StoredJob } from '@/lib/outbox';

/** Who works at this kiosk, and what the store calls the kiosk. */
export interface SignedOn {
  readonly person: Person;
  readonly device: string;
}

/** A bay as the server has it now. */
export interface BayNow {
  readonly job: { readonly id: string; readonly seq: number } | undefined;
  readonly signedOn: SignedOn | undefined;
}

/** What the kiosk wants of the shop's server. Errors are one sentence for the screen. */
export interface KioskLink {
  readonly signOn: (person: string, pin: string, bay: string) => Promise<Result<SignedOn, string>>;
  readonly signOff: () => Promise<Result<void, string>>;
  readonly deliver: (job: string, events: readonly JobEvent[]) => Promise<Delivery>;
  readonly readJob: (job: string) => Promise<Result<JobState, string>>;
  /** The job with its procedure and all its events. */
  readonly readRecord: (job: string) => Promise<Result<StoredJob, string>>;
  /** The bay's open job and who is signed on here, as the server has both. */
  readonly readBay: (bay: string) => Promise<Result<BayNow, string>>;
  /** The link of the job's last stored event. */
  readonly readHead: (job: string) => Promise<Result<string, string>>;
  /** Events of a second person, who gives a PIN for just these. */
  readonly foreman: (
    job: string,
    person: string,
    pin: string,
    events: readonly JobEvent[],
  ) => Promise<Result<void, string>>;
  /** What a foreman changes of how the shop works. */
  readonly keepShopSettings: (changed: ShopSettings) => Promise<Result<void, string>>;
  readonly keepClip: (id: string, clip: Blob) => Promise<Result<void, string>>;
}
