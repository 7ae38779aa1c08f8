'use client';
import type { ReactNode } from 'react';
import { availableActs, type Act, type KioskState } from '@/lib/kiosk';
import { Button } from '../design/button';
import type { GlyphName } from '../design/glyph';
import { keyText } from './key-of';

const glyphs: Readonly<Record<string, GlyphName>> = {
  next: 'forward',
  back: 'back',
  ready: 'once',
  passed: 'tick',
  failed: 'cross',
  replaced: 'tick',
  reused: 'turn',
  takeBack: 'undo',
  deviation: 'note',
  hold: 'pause',
  foreman: 'call',
  reopen: 'undo',
};

/** The acts of these names that make sense now, as buttons. */
export function ActButtons({
  state,
  names,
  onAct,
  main,
  keys = true,
}: {
  readonly state: KioskState;
  readonly names: readonly string[];
  readonly onAct: (act: Act) => void;
  /** The one that most likely comes next. */
  readonly main?: string;
  readonly keys?: boolean;
}) {
  const now = availableActs(state);
  return names.map((name) => {
    const act = now.find((one) => one.name === name);
    const glyph = glyphs[name];
    return act === undefined ? null : (
      <Button
        key={name}
        kind={name === main ? 'main' : 'plain'}
        keys={keys ? act.keys.slice(0, 1).map(keyText).join('') : undefined}
        {...(glyph === undefined ? {} : { glyph })}
        className={name === main ? 'min-w-[14rem]' : ''}
        onPress={() => {
          onAct(act);
        }}
      >
        {act.label}
      </Button>
    );
  });
}

/** What a finger can do about this step. The same acts as keys and phrases. */
export function ActionBar({
  state,
  wantsValue,
  demo,
  onAct,
  onValue,
}: {
  readonly state: KioskState;
  /** What the value pad would be for. */
  readonly wantsValue: boolean;
  /** The way in for visitors without a microphone. */
  readonly demo: ReactNode;
  readonly onAct: (act: Act) => void;
  readonly onValue: () => void;
}) {
  const waitsForReady = availableActs(state).some(({ name }) => name === 'ready');
  return (
    <nav aria-label="This step" className="flex flex-wrap items-stretch justify-between gap-3">
      <div className="flex flex-wrap gap-3">
        <ActButtons state={state} names={['back', 'takeBack', 'reopen']} onAct={onAct} />
        {demo}
      </div>
      <div className="flex flex-wrap gap-3">
        <ActButtons
          state={state}
          names={['failed', 'passed', 'reused', 'replaced']}
          keys={false}
          onAct={onAct}
        />
        <ActButtons state={state} names={['showAdapter']} onAct={onAct} />
        {wantsValue ? (
          <Button glyph="list" onPress={onValue}>
            Type a value
          </Button>
        ) : null}
        <ActButtons
          state={state}
          names={['ready', 'next']}
          main={waitsForReady ? 'ready' : 'next'}
          onAct={onAct}
        />
      </div>
    </nav>
  );
}
