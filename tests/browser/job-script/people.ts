import { demoPins } from '@/demo';
import type { Hands } from './hands';

const pinOf = (person: string): string => {
  const pin = demoPins[person];
  if (pin === undefined) throw new Error(`nobody is called ${person}`);
  return pin;
};

/** The demo's mechanic gives name and PIN. */
export const sayWho = async (hands: Hands): Promise<void> => {
  await hands.press(/^Tom Ashby/);
  await hands.pin(pinOf('tom-ashby'));
  await hands.press('Sign on');
};

/** The demo's mechanic signs on; then the step is on the screen. */
export const signOn = async (hands: Hands): Promise<void> => {
  await sayWho(hands);
  await hands.page.getByRole('region', { name: 'Last heard' }).waitFor();
};

/** The foreman accepts so many deviations, says why and gives the PIN. */
export const foremanAccepts = async (count: number, hands: Hands): Promise<void> => {
  await hands.ledger();
  await hands.press('Foreman decides');
  await hands.press(/^Mara Quill/);
  for (let at = 0; at < count; at += 1) await hands.press('Accept', at);
  await hands.write('Why it is right so', 'seen and in order');
  await hands.pin(pinOf('mara-quill'));
  await hands.press(`Sign ${count}`);
  // The record may have it before the kiosk knows: until then its keys are not the job's.
  await hands.page.getByRole('button', { name: `Sign ${count}` }).waitFor({ state: 'detached' });
};

/** Without a microphone the kiosk says so when the ears are ready, and that line moves what lies under a finger. */
export const earsGivenUp = async (hands: Hands): Promise<void> => {
  await hands.page.getByText('Cannot hear', { exact: true }).waitFor({ timeout: 60_000 });
};
