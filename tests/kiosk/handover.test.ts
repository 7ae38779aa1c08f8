import { expect, test } from 'vitest';
import { kioskTransition, openKiosk, type KioskInput, type KioskState } from '@/lib/kiosk';
import { Bay } from '../job/driver';
import { doSteps } from '../job/hands';
import { lidJob } from '../job/lid-procedure';

/** On hold by Mia, with the lid off. */
const held = (): KioskState => {
  const bay = new Bay(lidJob);
  doSteps(bay, 'drain', 'open-lid');
  bay.does({ type: 'jobHeld', reason: { text: 'Break' } });
  return openKiosk(bay.state);
};

let ids = 0;
const act = (kind: 'resume' | 'next' | 'repeat' | 'ready'): KioskInput => ({
  kind: 'act',
  intent: { kind },
  via: { by: 'touch' },
});
const send = (state: KioskState, input: KioskInput, actor: string) =>
  kioskTransition(state, input, {
    now: '2026-03-02T12:00:00Z',
    newId: () => `00000000-0000-4000-8000-${String((ids += 1)).padStart(12, '0')}`,
    actor,
    role: 'mechanic',
    device: 'kiosk-1',
  });

test('who takes a held job over from somebody else sees first where it stands', () => {
  const { state, effects } = send(held(), act('resume'), 'max');
  expect(state).toMatchObject({ view: 'handover', job: { phase: 'running' } });
  expect(effects.filter(({ kind }) => kind === 'say')).toEqual([]);
});

test('who goes on with their own job sees the step at once', () => {
  expect(send(held(), act('resume'), 'mia').state.view).toBe('step');
});

test('next closes the summary, and does no step', () => {
  const { state } = send(held(), act('resume'), 'max');
  const after = send(state, act('next'), 'max');
  expect(after.state.view).toBe('step');
  expect(after.state.job).toBe(state.job);
  expect(after.effects).toEqual([]);
});

test('a value or a ready said over the summary is not written down', () => {
  const { state } = send(held(), act('resume'), 'max');
  const value: KioskInput = {
    kind: 'act',
    intent: { kind: 'value', value: 12 },
    via: { by: 'voice', said: 'twelve', confidence: 1, certainty: 'sure' },
  };
  for (const input of [value, act('ready')]) {
    const after = send(state, input, 'max');
    expect(after.state.job).toBe(state.job);
    expect(after.state.view).toBe('handover');
    expect(after.state.outcome?.text).toContain('say "next"');
  }
});

test('the summary is said when it is asked for', () => {
  const { state } = send(held(), act('resume'), 'max');
  const { effects } = send(state, act('repeat'), 'max');
  expect(effects).toMatchObject([{ kind: 'say' }]);
  expect(JSON.stringify(effects)).toContain('Before it is started or moved');
});
