import { silent, speakNext, type Speaking, type SpeakingInput } from '@/lib/speaking';
import type { VoicePort } from './local-voice';

/** Carries the queue of what is said out by a voice. `onSpeaking` gets the text when it begins, and nothing at its end. */
export class Speaker {
  readonly #voice: VoicePort;
  readonly #onSpeaking: (text: string | undefined) => void;
  readonly #nowMs: () => number;
  #state: Speaking = silent;
  #whenQuiet: (() => void)[] = [];

  constructor(
    voice: VoicePort,
    onSpeaking: (text: string | undefined) => void,
    nowMs: () => number,
  ) {
    this.#voice = voice;
    this.#onSpeaking = onSpeaking;
    this.#nowMs = nowMs;
  }

  say(text: string): void {
    this.#take({ kind: 'say', text, nowMs: this.#nowMs() });
  }

  tool(runs: boolean): void {
    this.#take({ kind: 'tool', runs, nowMs: this.#nowMs() });
  }

  hush(): void {
    this.#take({ kind: 'hush' });
  }

  /** Settles when what is being said is over; what a tool holds back is dropped, so that it comes into nobody's answer. */
  whenQuiet(): Promise<void> {
    if (this.#state.saying === undefined) {
      this.#take({ kind: 'hush' });
      return Promise.resolve();
    }
    return new Promise((resolve) => {
      this.#whenQuiet.push(resolve);
    });
  }

  #take(input: SpeakingInput): void {
    const before = this.#state.saying;
    const { state, effects } = speakNext(this.#state, input);
    this.#state = state;
    for (const effect of effects) {
      if (effect.kind === 'stop') this.#voice.stop();
      else this.#speak(effect.text);
    }
    if (before !== undefined && this.#state.saying === undefined) this.#quiet();
  }

  #speak(text: string): void {
    this.#onSpeaking(text);
    const mine = this.#state.saying;
    this.#voice.speak(text, () => {
      if (this.#state.saying === mine) this.#take({ kind: 'ended' });
    });
  }

  #quiet(): void {
    this.#onSpeaking(undefined);
    const waiting = this.#whenQuiet;
    this.#whenQuiet = [];
    for (const resolve of waiting) resolve();
  }
}
