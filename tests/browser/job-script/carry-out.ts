import type { ScriptLine } from '@/demo/script';
import { acts, type Act } from '@/lib/kiosk';
import { everyPhrase, understand, type Intent } from '@/lib/voice';
import type { Hands } from './hands';

/** What spoken words mean. Throws where they mean nothing. */
export const intentOf = (say: string): Intent => {
  const words = say
    .split(' ')
    .map((text, i) => ({ text, confidence: 1, startS: i, endS: i + 0.9 }));
  const understood = understand({ text: say, words }, everyPhrase);
  if (understood.kind === 'nothing') throw new Error(`"${say}": ${understood.why}`);
  return understood.intent;
};

const actOf = (intent: Intent): Act => {
  const act = acts.find((one) => JSON.stringify(one.intent) === JSON.stringify(intent));
  if (act === undefined) throw new Error(`no act does ${JSON.stringify(intent)}`);
  return act;
};

/** Does by hand what a line of the script says. */
export const carryOut = async (line: ScriptLine, hands: Hands): Promise<void> => {
  if (line.how === 'dictation') {
    await hands.write('In your own words', line.say);
    return hands.press('Keep this reason');
  }
  const intent = intentOf(line.say);
  switch (intent.kind) {
    case 'value':
      if (intent.label !== undefined) await hands.press(new RegExp(`^bolt ${intent.label} `, 'i'));
      return hands.number(String(intent.value));
    case 'noteDeviation':
      return hands.deviation();
    case 'reopen':
      // A hand reopens the step that it looks at.
      await hands.act(actOf({ kind: 'back' }));
      return hands.act(actOf({ kind: 'reopen' }));
    default:
      return hands.act(actOf(intent));
  }
};

/** The steps that a hand looks at on its way, which a voice names from afar: stored before what the line stores. */
export const lookedAt = ({ say }: ScriptLine): readonly string[] =>
  say === 'reopen step twenty' ? ['stepBegun pump-tight'] : [];
