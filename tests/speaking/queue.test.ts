import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import {
  silent,
  speakNext,
  staleAfterMs,
  toolRuns,
  type Speaking,
  type SpeakingEffect,
  type SpeakingInput,
} from '@/lib/speaking';

const run = (...inputs: readonly SpeakingInput[]) =>
  inputs.reduce<{ state: Speaking; effects: readonly SpeakingEffect[] }>(
    ({ state, effects }, input) => {
      const step = speakNext(state, input);
      return { state: step.state, effects: [...effects, ...step.effects] };
    },
    { state: silent, effects: [] },
  );

const say = (text: string, nowMs = 0): SpeakingInput => ({ kind: 'say', text, nowMs });
const tool = (runs: boolean, nowMs = 0): SpeakingInput => ({ kind: 'tool', runs, nowMs });
const ended: SpeakingInput = { kind: 'ended' };
const hush: SpeakingInput = { kind: 'hush' };
const speak = (text: string): SpeakingEffect => ({ kind: 'speak', text });
const stop: SpeakingEffect = { kind: 'stop' };

describe('the kiosk speaks', () => {
  it('at once when nothing is in the way', () => {
    expect(run(say('Step 4')).effects).toEqual([speak('Step 4')]);
  });

  it('one thing at a time: the newest cuts off what was being said', () => {
    expect(run(say('Step 4'), say('Still wanted: torque')).effects).toEqual([
      speak('Step 4'),
      stop,
      speak('Still wanted: torque'),
    ]);
    expect(run(say('Step 4'), ended, say('Step 5')).effects).toEqual([
      speak('Step 4'),
      speak('Step 5'),
    ]);
  });

  it('no more when somebody acts or speaks, nor later what was to come', () => {
    expect(run(say('Step 4'), hush).effects).toEqual([speak('Step 4'), stop]);
    expect(run(hush).effects).toEqual([]);
    expect(run(tool(true), say('Step 4'), hush, tool(false, 100)).effects).toEqual([]);
  });
});

describe('while a tool runs', () => {
  it('it waits, and speaks when the tool rests', () => {
    expect(run(tool(true), say('Step 4', 1000)).effects).toEqual([]);
    expect(run(tool(true), say('Step 4', 1000), tool(false, 3000)).effects).toEqual([
      speak('Step 4'),
    ]);
  });

  it('it stops, and says it again when the tool rests soon', () => {
    expect(run(say('Step 4'), tool(true, 500), tool(false, 2000)).effects).toEqual([
      speak('Step 4'),
      stop,
      speak('Step 4'),
    ]);
  });

  it('only the newest waits', () => {
    expect(run(tool(true), say('Step 4'), say('Step 5'), tool(false, 100)).effects).toEqual([
      speak('Step 5'),
    ]);
  });

  it('what has waited too long is dropped', () => {
    expect(run(tool(true), say('Step 4', 0), tool(false, staleAfterMs)).effects).toEqual([
      speak('Step 4'),
    ]);
    expect(run(tool(true), say('Step 4', 0), tool(false, staleAfterMs + 1)).effects).toEqual([]);
  });
});

test('whatever happens, it never begins while a tool runs, and every begin but the last is ended or stopped', () => {
  const input = fc.oneof(
    fc.record({ kind: fc.constant('say' as const), text: fc.string(), nowMs: fc.nat(20_000) }),
    fc.record({ kind: fc.constant('tool' as const), runs: fc.boolean(), nowMs: fc.nat(20_000) }),
    fc.constant(ended),
    fc.constant(hush),
  );
  let spoken = 0;
  fc.assert(
    fc.property(fc.array(input, { maxLength: 30 }), (inputs) => {
      let state = silent;
      let speaking = false;
      for (const one of inputs) {
        if (one.kind === 'ended') speaking = false;
        const step = speakNext(state, one);
        state = step.state;
        for (const effect of step.effects) {
          if (effect.kind === 'stop') expect(speaking).toBe(true);
          else {
            expect(state.tool).toBe(false);
            expect(speaking).toBe(false);
            spoken += 1;
          }
          speaking = effect.kind === 'speak';
        }
        expect(state.saying !== undefined).toBe(speaking);
        if (state.tool) expect(speaking).toBe(false);
      }
    }),
    { numRuns: 300 },
  );
  expect(spoken).toBeGreaterThan(100);
});

test('a tool runs when it is one and not far away; an engine is spoken against', () => {
  expect(toolRuns({ kind: 'impactTool', level: 'loud' })).toBe(true);
  expect(toolRuns({ kind: 'grinderOrSaw', level: 'raised' })).toBe(true);
  expect(toolRuns({ kind: 'impactTool', level: 'low' })).toBe(false);
  expect(toolRuns({ kind: 'engineOrCompressor', level: 'loud' })).toBe(false);
});
