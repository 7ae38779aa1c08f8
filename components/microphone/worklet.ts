import { frameSamples } from './sound';

// The worklet's own globals; the DOM library does not declare them.
declare abstract class AudioWorkletProcessor {
  readonly port: MessagePort;
  abstract process(inputs: readonly (readonly Float32Array[])[]): boolean;
}
declare function registerProcessor(name: string, processor: new () => AudioWorkletProcessor): void;

/** Cuts the sound into frames and sends them to whoever holds the other end of the port it is given. */
class FrameSender extends AudioWorkletProcessor {
  #frame = new Float32Array(frameSamples);
  #filled = 0;
  #to: MessagePort | undefined;

  constructor() {
    super();
    this.port.onmessage = (event: MessageEvent<unknown>) => {
      if (event.data instanceof MessagePort) this.#to = event.data;
    };
  }

  process([channels]: readonly (readonly Float32Array[])[]): boolean {
    const length = channels?.[0]?.length ?? 0;
    for (let i = 0; i < length; i += 1) {
      let sum = 0;
      for (const channel of channels ?? []) sum += channel[i] ?? 0;
      this.#frame[this.#filled] = sum / (channels?.length ?? 1);
      this.#filled += 1;
      if (this.#filled === frameSamples) this.#send();
    }
    return true;
  }

  #send(): void {
    this.#to?.postMessage(this.#frame, [this.#frame.buffer]);
    this.#frame = new Float32Array(frameSamples);
    this.#filled = 0;
  }
}

registerProcessor('frame-sender', FrameSender);
