import type { JobEvent } from '../job';
import { unreachable } from '../result';

/** What became of one batch sent to the store. */
export type Delivery =
  /** All of it is on the store's disk: now, or since an earlier try whose answer was lost. */
  | { readonly kind: 'stored' }
  /** Network or server trouble, and what the server says of it: the same batch is sent again later. */
  | { readonly kind: 'unreachable'; readonly message?: string }
  /** Nobody is signed on any more: sent again once somebody is. */
  | { readonly kind: 'signOn' }
  /** The place of event `index` is taken: somebody else wrote to the job before. Those before it are stored already. */
  | { readonly kind: 'overtaken'; readonly index: number }
  /** The store said no to event `index`, and stored nothing of the batch that it had not before. */
  | { readonly kind: 'refused'; readonly message: string; readonly index: number };

/** Why nothing goes out. `look`: the job must be read from the store first. */
export type Stop =
  | { readonly kind: 'signOn' }
  | { readonly kind: 'look'; readonly message?: string }
  /** Somebody must decide what becomes of what waits. */
  | { readonly kind: 'person' };

/** What one kiosk has done in one job and the store has not yet acknowledged. */
export interface Outbox {
  /** In order; each has the number after the one before. */
  readonly waiting: readonly JobEvent[];
  /** How many of the first are under way; 0: none. */
  readonly underWay: number;
  /** Counts tries, so that an answer to an earlier one is never taken for one to the last. */
  readonly attempt: number;
  /** Tries in a row that reached nobody. */
  readonly failures: number;
  /** What the server said of its own trouble at the last try. */
  readonly trouble?: string;
  readonly stop?: Stop;
}

export type OutboxInput =
  | { readonly kind: 'add'; readonly events: readonly JobEvent[] }
  | { readonly kind: 'answer'; readonly attempt: number; readonly delivery: Delivery }
  /** The job could not be read. */
  | { readonly kind: 'lookFailed' }
  /** The pause is over, the network is said to be back, or somebody signed on. */
  | { readonly kind: 'again' }
  /** What waits after the job was looked at: the same events with other numbers, fewer, or none. */
  | { readonly kind: 'settle'; readonly waiting: readonly JobEvent[] }
  /** The job was looked at, and nobody but a person can say what happens now. */
  | { readonly kind: 'leaveToPerson' };

/** Effects are data; the kiosk carries them out in order. */
export type OutboxEffect =
  /** On the kiosk's own disk, before anything that follows. */
  | { readonly kind: 'keep'; readonly events: readonly JobEvent[] }
  /** The store has these; they need not be sent again. */
  | { readonly kind: 'stored'; readonly events: readonly JobEvent[] }
  /** What is kept of the first becomes the second, in one go. */
  | {
      readonly kind: 'keepInstead';
      readonly of: readonly JobEvent[];
      readonly events: readonly JobEvent[];
    }
  | { readonly kind: 'send'; readonly attempt: number; readonly events: readonly JobEvent[] }
  /** Then the input `again`. */
  | { readonly kind: 'wait'; readonly ms: number }
  | { readonly kind: 'askSignOn' }
  /** Read the job and compare (`reconcile`), then `settle`, `leaveToPerson` or `lookFailed`. */
  | { readonly kind: 'look'; readonly message?: string };

export interface OutboxStep {
  readonly outbox: Outbox;
  readonly effects: readonly OutboxEffect[];
}

/** Longest batch that is sent at once; the store takes 200. */
export const mostAtOnce = 50;

/** Pauses between tries: short at first, since most cuts are, and never so long that a server that is back goes unseen. */
const pausesMs = [500, 1_000, 2_000, 4_000, 8_000, 15_000] as const;
const pauseMs = (failures: number): number =>
  pausesMs[Math.min(failures, pausesMs.length - 1)] ?? 15_000;

/** An outbox as the kiosk's disk had it; nothing is under way. */
export const openOutbox = (waiting: readonly JobEvent[] = []): Outbox => ({
  waiting,
  underWay: 0,
  attempt: 0,
  failures: 0,
});

/** Sends the next batch, unless one is under way, nothing waits, or something is in the way. */
const sendOn = (outbox: Outbox, before: readonly OutboxEffect[] = []): OutboxStep => {
  const { waiting, underWay, stop } = outbox;
  if (stop !== undefined || underWay > 0 || waiting.length === 0)
    return { outbox, effects: before };
  const events = waiting.slice(0, mostAtOnce);
  const attempt = outbox.attempt + 1;
  return {
    outbox: { ...outbox, underWay: events.length, attempt },
    effects: [...before, { kind: 'send', attempt, events }],
  };
};

const halted = (outbox: Outbox, stop: Stop, effects: readonly OutboxEffect[]): OutboxStep => ({
  outbox: { ...outbox, underWay: 0, stop },
  effects,
});

/** Takes the first `count` off: the store has them. */
const without = ({ trouble: _, ...outbox }: Outbox, count: number): OutboxStep => {
  const events = outbox.waiting.slice(0, count);
  return {
    outbox: { ...outbox, waiting: outbox.waiting.slice(count), underWay: 0, failures: 0 },
    effects: events.length === 0 ? [] : [{ kind: 'stored', events }],
  };
};

const paused = ({ trouble: _, ...outbox }: Outbox, message?: string): OutboxStep => ({
  outbox: {
    ...outbox,
    underWay: 0,
    failures: outbox.failures + 1,
    ...(message === undefined ? {} : { trouble: message }),
  },
  effects: [{ kind: 'wait', ms: pauseMs(outbox.failures) }],
});

const answered = (outbox: Outbox, delivery: Delivery): OutboxStep => {
  switch (delivery.kind) {
    case 'stored': {
      const { outbox: rest, effects } = without(outbox, outbox.underWay);
      return sendOn(rest, effects);
    }
    case 'unreachable':
      return paused(outbox, delivery.message);
    case 'signOn':
      return halted(outbox, { kind: 'signOn' }, [{ kind: 'askSignOn' }]);
    case 'overtaken': {
      const { outbox: rest, effects } = without(outbox, delivery.index);
      return halted(rest, { kind: 'look' }, [...effects, { kind: 'look' }]);
    }
    case 'refused': {
      const { message } = delivery;
      return halted(outbox, { kind: 'look', message }, [{ kind: 'look', message }]);
    }
    default:
      return unreachable(delivery);
  }
};

const again = (outbox: Outbox): OutboxStep => {
  const { stop, ...free } = outbox;
  switch (stop?.kind) {
    case undefined:
    case 'signOn':
      return sendOn(free);
    case 'look':
      return { outbox, effects: [stop] };
    case 'person':
      return { outbox, effects: [] };
  }
};

/**
 * The queue as a pure machine. Ids make a batch that was stored without our learning of it harmless to send again,
 * and each event holds its number in the job, so the store takes none twice and none out of its place.
 */
export const outboxTransition = (outbox: Outbox, input: OutboxInput): OutboxStep => {
  switch (input.kind) {
    case 'add': {
      if (input.events.length === 0) return { outbox, effects: [] };
      const more = { ...outbox, waiting: [...outbox.waiting, ...input.events] };
      const keep = { kind: 'keep', events: input.events } as const;
      // While it pauses, what is added goes out with the rest.
      return outbox.failures > 0 ? { outbox: more, effects: [keep] } : sendOn(more, [keep]);
    }
    case 'answer':
      return input.attempt === outbox.attempt && outbox.underWay > 0
        ? answered(outbox, input.delivery)
        : { outbox, effects: [] };
    case 'lookFailed':
      return paused(outbox);
    case 'again':
      return again(outbox);
    case 'settle': {
      const { stop: _stop, trouble: _trouble, ...free } = outbox;
      return sendOn({ ...free, waiting: input.waiting, underWay: 0, failures: 0 }, [
        { kind: 'keepInstead', of: outbox.waiting, events: input.waiting },
      ]);
    }
    case 'leaveToPerson':
      return halted(outbox, { kind: 'person' }, []);
    default:
      return unreachable(input);
  }
};
