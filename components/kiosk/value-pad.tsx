'use client';
import { useState } from 'react';
import { unitFacts, type Unit } from '@/lib/quantity';
import { Button } from '../design/button';
import { NumberPad } from '../design/number-pad';
import { Panel } from '../design/panel';
import type { WantedNumber } from './wanted-number';

/** A number by touch or keys: judged exactly like a spoken one. */
export function ValuePad({
  wanted,
  first,
  onValue,
  onClose,
}: {
  readonly wanted: WantedNumber;
  /** The digit whose key opened the pad. */
  readonly first: string;
  readonly onValue: (value: number, unit: Unit | undefined, by: 'touch' | 'key') => void;
  readonly onClose: () => void;
}) {
  const [text, setText] = useState(first);
  const [unit, setUnit] = useState<Unit | undefined>(wanted.units[0]);
  const value = Number(text);
  const whole = text !== '' && text !== '.' && Number.isFinite(value);
  const give = (by: 'touch' | 'key') => (): void => {
    if (whole) onValue(value, unit, by);
  };
  return (
    <Panel title={wanted.label} onClose={onClose}>
      <div className="flex flex-wrap items-start gap-10">
        <NumberPad
          label={wanted.label}
          value={text}
          onChange={setText}
          onEnter={give('key')}
          decimals={wanted.want.ask.kind === 'value'}
        />
        <div className="flex flex-col gap-4">
          {wanted.units.length < 2 ? null : (
            <div role="group" aria-label="Unit" className="flex gap-3">
              {wanted.units.map((one) => (
                <Button
                  key={one}
                  kind={one === unit ? 'chosen' : 'plain'}
                  pressed={one === unit}
                  onPress={() => {
                    setUnit(one);
                  }}
                >
                  {unitFacts[one].symbol}
                </Button>
              ))}
            </div>
          )}
          <p className="text-figure font-bold">
            {text === '' ? '…' : text} {unit === undefined ? '' : unitFacts[unit].symbol}
          </p>
          <Button kind="main" glyph="tick" keys="Enter" onPress={give('touch')} disabled={!whole}>
            Take this value
          </Button>
        </div>
      </div>
    </Panel>
  );
}
