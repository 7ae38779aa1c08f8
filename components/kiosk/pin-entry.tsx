'use client';
import { useState } from 'react';
import { Button } from '../design/button';
import { NumberPad } from '../design/number-pad';

/** A person's PIN. It is sent once and kept nowhere; a wrong one says so and starts again. */
export function PinEntry({
  name,
  problem,
  busy,
  onPin,
  onCancel,
  act = 'Sign on',
}: {
  readonly name: string;
  readonly problem: string | undefined;
  readonly busy: boolean;
  readonly onPin: (pin: string) => void;
  readonly onCancel: () => void;
  readonly act?: string;
}) {
  const [pin, setPin] = useState('');
  const give = (): void => {
    if (pin === '' || busy) return;
    onPin(pin);
    setPin('');
  };
  return (
    <div className="flex flex-wrap items-start gap-10">
      <NumberPad
        label={`PIN of ${name}`}
        value={pin}
        onChange={setPin}
        onEnter={give}
        decimals={false}
        hidden
      />
      <div className="flex min-w-[20rem] flex-col gap-4">
        <p className="text-read font-bold">{name}</p>
        <p role="alert" className="min-h-[2.6em] max-w-[30rem] text-body font-bold text-bad">
          {problem}
        </p>
        <Button kind="main" glyph="tick" onPress={give} disabled={busy || pin === ''}>
          {act}
        </Button>
        <Button glyph="back" onPress={onCancel}>
          Somebody else
        </Button>
      </div>
    </div>
  );
}
