/** Rows of the review as the database has them; see lib/review/rows for what they mean. */
interface Common {
  job: string;
  seq: number;
  at_ms: number;
  bay: string;
  procedure: string;
  revision: number;
  actor: string;
  role: string;
}

/** `facts` and `decided` hold JSON by the schemas of lib/review/rows. */
export interface ReviewTables {
  /** One row: by which `reviewVersion` the tables below were made, and whether every job is in them. */
  review_state: { id: number; version: number; complete: number };
  /** The jobs that are in the tables below. */
  review_jobs: Common;
  review_readings: Common & {
    step: string;
    ask: string;
    fastener: string;
    value: number;
    lower: number | null;
    upper: number | null;
    target: number | null;
    verdict: string;
    tool: string | null;
  };
  review_steps: Common & { step: string; minutes: number };
  review_deviations: Common & {
    id: string;
    kind: string;
    step: string;
    fastener: string | null;
    ask: string | null;
    facts: string;
    decision: string | null;
    decided: string | null;
  };
  review_reworks: Common & {
    step: string;
    facts: string;
    spent_before_ms: number;
    followed: string;
    spent_after_ms: number | null;
  };
  review_holds: Common & { step: string; reason: string; facts: string; ended_ms: number | null };
  review_hearings: {
    half_hour_ms: number;
    bay: string;
    procedure: string;
    revision: number;
    role: string;
    phrase: string;
    heard: number;
    asked_back: number;
    declined: number;
    taken_back: number;
    said_again: number;
  };
  /** Decisions of a foreman that a sheet wants changing. */
  sheet_marks: {
    id: string;
    procedure: string;
    revision: number;
    step: string | null;
    note: string;
    seen_job: string | null;
    seen_seq: number | null;
    marked_by: string;
    marked_at: string;
    done_by: string | null;
    done_at: string | null;
  };
}

/** All that is made from events, and can be made from them anew. */
export const reviewTables = [
  'review_jobs',
  'review_readings',
  'review_steps',
  'review_deviations',
  'review_reworks',
  'review_holds',
  'review_hearings',
] as const satisfies readonly (keyof ReviewTables)[];
