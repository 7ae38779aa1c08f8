import { describe, expect, test } from 'vitest';
import type { JobEvent } from '@/lib/job';
import {
  mostAtOnce,
  openOutbox,
  outboxTransition,
  type Outbox,
  type OutboxEffect,
  type OutboxInput,
} from '@/lib/outbox';
import { event } from '../job/driver';

const call = (seq: number): JobEvent => event(seq, { type: 'foremanCalled' });
const calls = (from: number, count: number): readonly JobEvent[] =>
  Array.from({ length: count }, (_, at) => call(from + at));

/** The queue after the inputs, and what the last of them brought about. */
const after = (
  ...inputs: readonly OutboxInput[]
): { readonly outbox: Outbox; readonly effects: readonly OutboxEffect[] } => {
  let step: ReturnType<typeof outboxTransition> = { outbox: openOutbox(), effects: [] };
  for (const input of inputs) step = outboxTransition(step.outbox, input);
  return step;
};

const add = (...events: readonly JobEvent[]): OutboxInput => ({ kind: 'add', events });
const answer = (
  delivery: Extract<OutboxInput, { kind: 'answer' }>['delivery'],
  attempt = 1,
): OutboxInput => ({ kind: 'answer', attempt, delivery });

describe('what is done', () => {
  test('is written to the kiosk’s disk first, and then sent', () => {
    expect(after(add(call(2))).effects).toEqual([
      { kind: 'keep', events: [call(2)] },
      { kind: 'send', attempt: 1, events: [call(2)] },
    ]);
  });

  test('while a batch is under way waits for its answer, and then goes out together', () => {
    const done = after(add(call(2)), add(call(3)), add(call(4)));
    expect(done.effects).toEqual([{ kind: 'keep', events: [call(4)] }]);
    const next = outboxTransition(done.outbox, answer({ kind: 'stored' }));
    expect(next.effects).toEqual([
      { kind: 'stored', events: [call(2)] },
      { kind: 'send', attempt: 2, events: [call(3), call(4)] },
    ]);
  });

  test('goes out in batches that the store takes', () => {
    const [, send] = after(add(...calls(2, mostAtOnce + 1))).effects;
    expect(send).toEqual({ kind: 'send', attempt: 1, events: calls(2, mostAtOnce) });
  });
});

describe('where nobody is reached', () => {
  const cut = answer({ kind: 'unreachable' });

  test('the same is sent again after half a second, then ever more slowly, at least every 15 s', () => {
    let step = after(add(call(2)));
    const pauses: number[] = [];
    for (let attempt = 1; attempt <= 8; attempt += 1) {
      step = outboxTransition(step.outbox, answer({ kind: 'unreachable' }, attempt));
      const [wait] = step.effects;
      if (wait?.kind === 'wait') pauses.push(wait.ms);
      step = outboxTransition(step.outbox, { kind: 'again' });
      expect(step.effects).toEqual([{ kind: 'send', attempt: attempt + 1, events: [call(2)] }]);
    }
    expect(pauses).toEqual([500, 1000, 2000, 4000, 8000, 15000, 15000, 15000]);
  });

  test('what is done meanwhile is kept and joins what waits', () => {
    const step = after(add(call(2)), cut, add(call(3)));
    expect(step.effects).toEqual([{ kind: 'keep', events: [call(3)] }]);
    expect(step.outbox.waiting).toEqual([call(2), call(3)]);
  });

  test('an answer to a try that was given up counts for nothing', () => {
    const step = after(add(call(2)), add(call(3)), cut, { kind: 'again' });
    const late = outboxTransition(step.outbox, answer({ kind: 'stored' }, 1));
    expect(late).toEqual({ outbox: step.outbox, effects: [] });
  });
});

test('what the server says of its own trouble is known until something is stored', () => {
  const full = answer({ kind: 'unreachable', message: 'The disk is full.' });
  const step = after(add(call(2)), full);
  expect(step.outbox.trouble).toBe('The disk is full.');
  const stored = outboxTransition(
    outboxTransition(step.outbox, { kind: 'again' }).outbox,
    answer({ kind: 'stored' }, 2),
  );
  expect(stored.outbox.trouble).toBeUndefined();
});

describe('when nobody is signed on any more', () => {
  const ended = [add(call(2)), answer({ kind: 'signOn' })];

  test('somebody is asked to, and nothing goes out until then', () => {
    expect(after(...ended).effects).toEqual([{ kind: 'askSignOn' }]);
    expect(after(...ended, add(call(3))).effects).toEqual([{ kind: 'keep', events: [call(3)] }]);
  });

  test('all of it goes out once somebody has', () => {
    expect(after(...ended, add(call(3)), { kind: 'again' }).effects).toEqual([
      { kind: 'send', attempt: 2, events: [call(2), call(3)] },
    ]);
  });
});

describe('when somebody else wrote to the job first', () => {
  const overtaken = [add(call(2), call(3)), answer({ kind: 'overtaken', index: 1 })];

  test('what stood before is stored, and the job is looked at', () => {
    const { outbox, effects } = after(...overtaken);
    expect(effects).toEqual([{ kind: 'stored', events: [call(2)] }, { kind: 'look' }]);
    expect(outbox.waiting).toEqual([call(3)]);
  });

  test('what goes on top is kept with its new number before it is sent', () => {
    const onTop = { ...call(3), seq: 7 };
    expect(after(...overtaken, { kind: 'settle', waiting: [onTop] }).effects).toEqual([
      { kind: 'keepInstead', of: [call(3)], events: [onTop] },
      { kind: 'send', attempt: 2, events: [onTop] },
    ]);
  });

  test('left to a person, it stays, and nothing of it goes out', () => {
    const left = after(...overtaken, { kind: 'leaveToPerson' }, add(call(4)), { kind: 'again' });
    expect(left.effects).toEqual([]);
    expect(left.outbox.waiting).toEqual([call(3), call(4)]);
  });

  test('a job that cannot be read is looked at again later', () => {
    const failed = after(...overtaken, { kind: 'lookFailed' });
    expect(failed.effects).toEqual([{ kind: 'wait', ms: 500 }]);
    expect(outboxTransition(failed.outbox, { kind: 'again' }).effects).toEqual([{ kind: 'look' }]);
  });
});

test('what the store refuses for itself is looked at too, and stays', () => {
  const step = after(add(call(2)), answer({ kind: 'refused', index: 0, message: 'No.' }));
  expect(step.effects).toEqual([{ kind: 'look', message: 'No.' }]);
  expect(step.outbox.waiting).toEqual([call(2)]);
});
