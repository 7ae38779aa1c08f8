import type { Generated } from 'kysely';
import type { ReviewTables } from './review/tables';

/** The tables as the newest migration leaves them. JSON columns hold canonical text (RFC 8785); times are RFC 3339. */
export interface Tables extends ReviewTables {
  /** One row, made when the shop is set up. `facts`: adapters and settings of lib/shop; settings may change. */
  shop: { id: number; name: string; set_up_at: string; facts: Generated<string> };
  people: { id: string; place: number; name: string; role: string };
  /** `hash`: see lib/access/pin-hash. */
  pins: { person: string; hash: string };
  /** `facts`: what is set for the bay, of lib/shop; may change. */
  bays: { id: string; place: number; name: string; facts: Generated<string> };
  /** `facts`: a torque tool of lib/shop. */
  torque_tools: { id: string; place: number; facts: string };
  /** Published revisions, `content` as in lib/procedure; never changed. */
  procedure_revisions: {
    procedure: string;
    revision: number;
    title: string;
    published_at: string;
    content: string;
  };
  /** One row a job, so that lists need no replay. Everything but the id follows from its events. */
  jobs: {
    id: string;
    bay: string;
    procedure: string;
    revision: number;
    vehicle: string;
    phase: string;
    seq: number;
    opened_at: string;
    opened_by: string;
    closed_at: string | null;
  };
  /** The append-only record. `entry` is the order of arrival over all jobs; `event` the whole event. */
  job_events: {
    entry: Generated<number>;
    id: string;
    job: string;
    seq: number;
    type: string;
    at: string;
    actor: string;
    bay: string;
    stored_at: string;
    event: string;
  };
  /** A chain through the events of each job; see lib/store/chain. */
  job_links: { job: string; seq: number; link: string };
  /** A daily anchor over all chains; see lib/store/anchors. `entry`: the last event that had arrived. */
  anchors: {
    number: number;
    day: string;
    made_at: string;
    entry: number;
    previous: string;
    hash: string;
  };
  /** How far the jobs had come that went on since the anchor before. */
  anchor_heads: { number: number; job: string; seq: number; link: string };
  /** Sound clips; the sound itself is a file named by the id, until `deleted_at`. */
  clips: {
    id: string;
    sha256: string;
    bytes: number;
    person: string;
    device: string;
    stored_at: string;
    deleted_at: string | null;
  };
  /** What practices of a voice found out, `practice` as in lib/practice; never changed. `model`: the speech model. */
  voice_practices: {
    entry: Generated<number>;
    id: string;
    person: string;
    model: string;
    at: string;
    practice: string;
  };
  /** `token_hash`: SHA-256 of the cookie's value. */
  sessions: {
    token_hash: string;
    person: string;
    bay: string;
    device: string;
    began_ms: number;
    ends_ms: number;
  };
  /** Wrong PINs in a row, by whom or where; see lib/access/throttle. */
  pin_attempts: { counter: string; failures: number; last_failed_ms: number };
  /** Kiosks on which a person has signed on before. */
  known_kiosks: { person: string; device: string; first_ms: number };
}
