import { expect, it } from 'vitest';
import { everyPhrase, overOwnVoice, understand } from '@/lib/voice';

const outcome = (say: string, ownText: string, confidence = 1): string => {
  const words = say
    .split(' ')
    .map((text, i) => ({ text, confidence, startS: i * 0.4, endS: i * 0.4 + 0.3 }));
  const understood = overOwnVoice(understand({ words, text: say }, everyPhrase), ownText);
  return understood.kind === 'nothing' ? understood.why : understood.certainty;
};

it.each([
  ['next', 'Drain the coolant', 'sure'],
  ['[unk] next', 'Drain the coolant', 'sure'],
  ['next', 'Say next when it is done.', 'the kiosk was speaking; say it again'],
  ['go to step four', 'Step for the cover', 'the kiosk was speaking; say it again'],
  ['yes', 'Close the job?', 'the kiosk was speaking; say it again'],
  ['check okay', 'Turn the hub', 'the kiosk was speaking; say it again'],
  ['torqued one twenty', 'Drain the coolant', 'unsure'],
  ['no', 'Close the job?', 'sure'],
])('“%s” into “%s”: %s', (say, ownText, what) => {
  expect(outcome(say, ownText)).toBe(what);
});

it('acts only when it is clear', () => {
  expect(outcome('next', 'Drain the coolant', 0.3)).toBe('the kiosk was speaking; say it again');
});
