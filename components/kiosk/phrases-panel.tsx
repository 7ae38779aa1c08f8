'use client';
import { acts, availableActs, type Act, type KioskState } from '@/lib/kiosk';
import { Button } from '../design/button';
import { Panel } from '../design/panel';
import { keyText } from './key-of';
import { useKioskVoice } from './kiosk-voice';
import { ownWordsFor } from './own-words';
import { phraseFor } from './phrases-now';

/** Every act with its word, phrase and key, each also a touch target: one list for all ways in. */
export function PhrasesPanel({
  state,
  onAct,
  onClose,
}: {
  readonly state: KioskState;
  readonly onAct: (act: Act) => void;
  readonly onClose: () => void;
}) {
  const { voice } = useKioskVoice();
  const sayFor = ({ intent }: Act): string | undefined =>
    ownWordsFor(intent, voice) ?? phraseFor(intent);
  const now = new Set(availableActs(state).map(({ name }) => name));
  return (
    <Panel
      title="Say it, press it or type it"
      onClose={onClose}
      lead="Foot switch: a short press goes on or says yes, a long press goes back or says no. Digits type a value. Values: “torqued one twenty”, “eighty eight foot pounds”, “bolt three torqued ten”, “twelve and a half”."
    >
      <ul className="grid gap-3 wide:grid-cols-3">
        {acts
          .filter(({ name }) => name !== 'yes' && name !== 'no' && name !== 'showPhrases')
          .map((act) => (
            <li key={act.name}>
              <Button
                wide
                disabled={!now.has(act.name)}
                keys={act.keys.slice(0, 1).map(keyText).join(' ')}
                onPress={() => {
                  onAct(act);
                }}
              >
                <span className="block font-bold">{act.label}</span>
                <span className="text-note text-quiet">
                  {sayFor(act) === undefined ? 'by hand' : `“${sayFor(act)}”`}
                </span>
              </Button>
            </li>
          ))}
      </ul>
    </Panel>
  );
}
