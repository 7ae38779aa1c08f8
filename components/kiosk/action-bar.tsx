'use client';
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

/** Always there, in this order, where they apply; answers to the step stand beside “Next”. */
const standing = ['back', 'takeBack', 'deviation', 'hold', 'foreman', 'reopen'];
const answers = ['failed', 'passed', 'reused', 'replaced', 'ready'];

/** What a finger can do now. The same acts as keys and phrases. */
export function ActionBar({
  state,
  wantsValue,
  onAct,
  onValue,
}: {
  readonly state: KioskState;
  /** What the value pad would be for. */
  readonly wantsValue: boolean;
  readonly onAct: (act: Act) => void;
  readonly onValue: () => void;
}) {
  const now = availableActs(state);
  const find = (name: string): Act | undefined => now.find((act) => act.name === name);
  const button = (name: string, main = false) => {
    const act = find(name);
    const glyph = glyphs[name];
    return act === undefined ? null : (
      <Button
        key={name}
        kind={main ? 'main' : 'plain'}
        keys={act.keys.slice(0, 1).map(keyText).join('')}
        {...(glyph === undefined ? {} : { glyph })}
        className={main ? 'min-w-[14rem] text-read' : ''}
        onPress={() => {
          onAct(act);
        }}
      >
        {act.label}
      </Button>
    );
  };
  const waitsForReady = find('ready') !== undefined;
  return (
    <nav aria-label="What to do" className="flex flex-wrap items-stretch justify-between gap-3">
      <div className="flex flex-wrap gap-3">{standing.map((name) => button(name))}</div>
      <div className="flex flex-wrap gap-3">
        {answers.map((name) => button(name, name === 'ready'))}
        {wantsValue ? (
          <Button glyph="list" onPress={onValue}>
            Type a value
          </Button>
        ) : null}
        {button('next', !waitsForReady)}
      </div>
    </nav>
  );
}
