import type { Step } from '@/lib/procedure';
import { Glyph, type GlyphName } from '../design/glyph';

export interface Flag {
  readonly glyph: GlyphName;
  readonly text: string;
}

/** What must be known before a hand moves, beside the instruction. */
export const stepFlags = (
  step: Pick<Step, 'oneShot' | 'handStart' | 'powerTool'>,
  applies: readonly string[] = [],
): readonly Flag[] => [
  ...(step.oneShot ? [{ glyph: 'once' as const, text: 'One try. Say “ready” first' }] : []),
  ...(step.handStart ? [{ glyph: 'hand' as const, text: 'Start every thread by hand' }] : []),
  ...(step.powerTool === 'notAllowed'
    ? [{ glyph: 'noPower' as const, text: 'No power tool' }]
    : step.powerTool === 'allowed'
      ? [{ glyph: 'power' as const, text: 'Power tool allowed' }]
      : []),
  ...applies.map((text) => ({ glyph: 'drop' as const, text })),
];

export function StepFlags({ flags }: { flags: readonly Flag[] }) {
  if (flags.length === 0) return null;
  return (
    <ul className="flex flex-wrap gap-x-8 gap-y-1">
      {flags.map(({ glyph, text }) => (
        <li key={text} className="flex items-center gap-3 text-glance">
          <Glyph name={glyph} className="text-act" />
          {text}
        </li>
      ))}
    </ul>
  );
}
