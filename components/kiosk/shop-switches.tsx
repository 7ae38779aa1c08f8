'use client';
import { useState } from 'react';
import { noteSoundDays, type ShopSettings } from '@/lib/shop';
import { Button } from '../design/button';
import type { KioskLink } from './link';

const switches = [
  {
    name: 'showGeneralFigures',
    label: 'Show general figures',
    says: 'For fasteners without a figure, marked as general guidance. Never for safety-critical ones.',
  },
  {
    name: 'toolsMarkedInSheetUnit',
    label: 'Only tools marked in the sheet’s unit',
    says: 'Off, any torque tool may be taken: the screen shows N·m and lbf·ft.',
  },
] as const;

const soundDays = [0, 7, 30, 90] as const;

const daysWords = (days: number): string => (days === 0 ? 'Not kept' : `${days} days`);

/** How the whole shop works, for its foreman. Kept at once; what the server refuses stays as it was. */
export function ShopSwitches({
  settings,
  link,
  onKept,
}: {
  readonly settings: ShopSettings;
  readonly link: Pick<KioskLink, 'keepShopSettings'>;
  /** The server has it. */
  readonly onKept: () => void;
}) {
  const [now, setNow] = useState(settings);
  const [problem, setProblem] = useState<string>();
  const change = async (changed: ShopSettings): Promise<void> => {
    const kept = await link.keepShopSettings(changed);
    setProblem(kept.ok ? undefined : kept.error);
    if (!kept.ok) return;
    setNow({ ...now, ...changed });
    onKept();
  };
  return (
    <div className="flex flex-col gap-3">
      {switches.map(({ name, label, says }) => (
        <div key={name} className="flex flex-wrap items-center gap-4">
          <Button
            kind={now[name] === true ? 'chosen' : 'plain'}
            pressed={now[name] === true}
            glyph={now[name] === true ? 'tick' : 'cross'}
            onPress={() => {
              void change({ [name]: now[name] !== true });
            }}
          >
            {label}
          </Button>
          <p className="text-body text-quiet">{says}</p>
        </div>
      ))}
      <div
        role="group"
        aria-label="Sound of spoken notes"
        className="flex flex-wrap items-center gap-4"
      >
        {[...new Set([...soundDays, noteSoundDays(now)])]
          .sort((a, b) => a - b)
          .map((days) => (
            <Button
              key={days}
              kind={days === noteSoundDays(now) ? 'chosen' : 'plain'}
              pressed={days === noteSoundDays(now)}
              onPress={() => {
                void change({ noteSoundDays: days });
              }}
            >
              {daysWords(days)}
            </Button>
          ))}
        <p className="text-body text-quiet">
          How long the sound of spoken notes is kept. Then it is deleted; the words stay.
        </p>
      </div>
      <p role="alert" className="text-body font-bold text-bad">
        {problem}
      </p>
    </div>
  );
}
