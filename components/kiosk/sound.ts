/** Short tones that carry over a workshop (1–3 kHz). */
export type Tone = 'good' | 'bad' | 'ask' | 'done';

interface Note {
  readonly hz: number;
  readonly atS: number;
  readonly forS: number;
}

/** In spec rises, out of spec is low and double, a question is one, an end is a lower one. */
export const tunes: Readonly<Record<Tone, readonly Note[]>> = {
  good: [
    { hz: 1320, atS: 0, forS: 0.09 },
    { hz: 1980, atS: 0.11, forS: 0.12 },
  ],
  bad: [
    { hz: 1050, atS: 0, forS: 0.16 },
    { hz: 1050, atS: 0.24, forS: 0.22 },
  ],
  ask: [{ hz: 1760, atS: 0, forS: 0.22 }],
  done: [{ hz: 1320, atS: 0, forS: 0.14 }],
};

const peak = 0.22;
const edgeS = 0.012;

/** Plays tones; silent, not broken, where the browser has no sound or holds it back. */
export class Tones {
  #context: AudioContext | undefined;

  play(tone: Tone): void {
    if (typeof AudioContext === 'undefined') return;
    this.#context ??= new AudioContext();
    const context = this.#context;
    if (context.state === 'suspended') void context.resume();
    for (const { hz, atS, forS } of tunes[tone]) {
      const oscillator = new OscillatorNode(context, { type: 'triangle', frequency: hz });
      const gain = new GainNode(context, { gain: 0 });
      const start = context.currentTime + atS;
      gain.gain.setValueAtTime(0, start);
      gain.gain.linearRampToValueAtTime(peak, start + edgeS);
      gain.gain.setValueAtTime(peak, start + forS - edgeS);
      gain.gain.linearRampToValueAtTime(0, start + forS);
      oscillator.connect(gain).connect(context.destination);
      oscillator.start(start);
      oscillator.stop(start + forS);
    }
  }

  close(): void {
    void this.#context?.close();
    this.#context = undefined;
  }
}
