import type { DeafnessReason } from './failure';
import { openMicrophone, type SoundSource } from './sound-source';

export interface MicrophoneEvents {
  readonly opened: () => void;
  readonly failed: (reason: DeafnessReason) => void;
}

/** One microphone that is open or not, and is opened again when one is plugged in. */
export class Microphone {
  readonly #workletUrl: string;
  readonly #events: MicrophoneEvents;
  #source: SoundSource | undefined;
  /** Counts openings, so that one that has been overtaken closes what it opened. */
  #opening = 0;
  #send: ((port: MessagePort) => void) | undefined;
  #trouble: DeafnessReason | undefined;

  constructor(workletUrl: string, events: MicrophoneEvents) {
    this.#workletUrl = workletUrl;
    this.#events = events;
  }

  /** Why it is not open although it was to be. */
  get trouble(): DeafnessReason | undefined {
    return this.#trouble;
  }

  /** Opens it and hands the port at which its frames arrive to `send`. */
  async open(send: (port: MessagePort) => void): Promise<void> {
    this.close();
    this.#send = send;
    const mine = (this.#opening += 1);
    const { port1, port2 } = new MessageChannel();
    const opened = await openMicrophone(this.#workletUrl, port1, () => {
      this.#fail('noMicrophone');
    });
    if (mine !== this.#opening) {
      if (opened.ok) opened.value.stop();
      return;
    }
    if (!opened.ok) {
      this.#fail(opened.error);
      return;
    }
    this.#source = opened.value;
    send(port2);
    this.#events.opened();
  }

  close(): void {
    this.#opening += 1;
    this.#trouble = undefined;
    this.#source?.stop();
    this.#source = undefined;
    this.#devices()?.removeEventListener('devicechange', this.#tryAgain);
  }

  readonly #tryAgain = (): void => {
    if (this.#send !== undefined) void this.open(this.#send);
  };

  #fail(reason: DeafnessReason): void {
    this.close();
    this.#trouble = reason;
    if (reason === 'noMicrophone')
      this.#devices()?.addEventListener('devicechange', this.#tryAgain);
    this.#events.failed(reason);
  }

  /** Pages that are not secure have none. */
  #devices(): MediaDevices | undefined {
    return globalThis.isSecureContext ? navigator.mediaDevices : undefined;
  }
}
