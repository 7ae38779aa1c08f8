/** What can say a text aloud; tells once when it is over, also when it could not. */
export interface VoicePort {
  speak(text: string, onOver: () => void): void;
  stop(): void;
}

/** An English voice that lives on this machine; a voice of somebody's service would take the words away. */
const localVoice = (synthesis: SpeechSynthesis): SpeechSynthesisVoice | undefined =>
  synthesis.getVoices().find(({ localService, lang }) => localService && lang.startsWith('en'));

/** Browsers may hold speech back without a word: then it counts as over. */
const startsWithinMs = 2_000;
const longestMs = (text: string): number => 4_000 + text.length * 120;

/** The machine's own voice, where it has one. */
export class LocalVoice implements VoicePort {
  #over: (() => void) | undefined;
  #watch: ReturnType<typeof setTimeout> | undefined;

  static available(): boolean {
    return 'speechSynthesis' in globalThis && localVoice(speechSynthesis) !== undefined;
  }

  speak(text: string, onOver: () => void): void {
    this.stop();
    const voice = 'speechSynthesis' in globalThis ? localVoice(speechSynthesis) : undefined;
    if (voice === undefined) {
      onOver();
      return;
    }
    const words = new SpeechSynthesisUtterance(text);
    words.voice = voice;
    words.lang = voice.lang;
    words.rate = 1.1;
    this.#over = onOver;
    const over = (): void => {
      if (this.#over === onOver) this.#end();
    };
    words.onstart = () => {
      if (this.#over === onOver) this.#watchFor(longestMs(text));
    };
    words.onend = words.onerror = over;
    this.#watchFor(startsWithinMs);
    speechSynthesis.speak(words);
  }

  /** Whoever stops it is told no more. */
  stop(): void {
    if (this.#over === undefined) return;
    this.#over = undefined;
    clearTimeout(this.#watch);
    speechSynthesis.cancel();
  }

  #watchFor(ms: number): void {
    clearTimeout(this.#watch);
    this.#watch = setTimeout(() => {
      speechSynthesis.cancel();
      this.#end();
    }, ms);
  }

  #end(): void {
    const over = this.#over;
    this.#over = undefined;
    clearTimeout(this.#watch);
    over?.();
  }
}
