import { describe, expect, it } from 'vitest';
import {
  beginOwnSpeech,
  hearOwnVoice,
  unknownOwnVoice,
  usualBargeInRules,
  type OwnVoice,
} from '@/lib/speaking';

/** So many ms of a level that sways by 3 dB, as speech does; after how many ms somebody was found, if ever. */
const hear = (own: OwnVoice, ms: number, levelDb: number): { own: OwnVoice; foundMs?: number } => {
  let now = own;
  for (let frame = 0; frame < ms / 20; frame += 1) {
    now = hearOwnVoice(now, levelDb + 3 * Math.sin(frame / 2));
    if (now.onset) return { own: now, foundMs: (frame + 1) * 20 };
  }
  return { own: now };
};

describe('somebody who speaks while the kiosk does', () => {
  it('is found within a third of a second when louder than its voice', () => {
    const spoken = hear(unknownOwnVoice, 2000, -40).own;
    const { foundMs } = hear(spoken, 1000, -25);
    expect(foundMs).toBeGreaterThanOrEqual(160);
    expect(foundMs).toBeLessThanOrEqual(320);
  });

  it('is not found in the kiosk’s own voice, though it speaks for a minute, in many speeches', () => {
    let own = unknownOwnVoice;
    for (let speech = 0; speech < 20; speech += 1) {
      own = hear(beginOwnSpeech(own), 400, -100).own;
      const { own: after, foundMs } = hear(own, 3000, -40);
      expect(foundMs).toBeUndefined();
      own = after;
    }
  });

  it('is not found while the own voice is not known yet', () => {
    const { foundMs } = hear(unknownOwnVoice, usualBargeInRules.learnFrames * 20, -20);
    expect(foundMs).toBeUndefined();
  });

  it('is not found in a knock', () => {
    const spoken = hear(unknownOwnVoice, 2000, -40).own;
    const knocked = hear(spoken, 100, -10);
    expect(knocked.foundMs).toBeUndefined();
    expect(hear(knocked.own, 500, -40).foundMs).toBeUndefined();
  });

  it('is known from the speech before', () => {
    const spoken = hear(unknownOwnVoice, 2000, -40).own;
    const again = hear(beginOwnSpeech(spoken), 200, -40).own;
    expect(hear(again, 1000, -25).foundMs).toBeLessThanOrEqual(320);
  });
});
