import type { FromWorker, ToWorker } from '@/components/microphone/protocol';

/** Stands in for the recogniser's worker; the test says what it answers. */
export class FakeWorker {
  static made: FakeWorker[] = [];
  readonly received: ToWorker[] = [];
  terminated = false;
  onmessage: ((event: { data: FromWorker }) => void) | null = null;
  onerror: ((event: { message: string }) => void) | null = null;

  constructor(readonly url: string) {
    FakeWorker.made.push(this);
  }

  postMessage(message: ToWorker): void {
    this.received.push(message);
    if (message.kind === 'recording') this.say({ kind: 'fed', samples: message.samples.length });
    if (message.kind === 'flush') this.say({ kind: 'flushed', id: message.id, atS: 99 });
  }

  terminate(): void {
    this.terminated = true;
  }

  /** Sends to the page, as the worker does. */
  say(message: FromWorker): void {
    queueMicrotask(() => this.onmessage?.({ data: message }));
  }

  kinds(): string[] {
    return this.received.map(({ kind }) => kind).filter((kind) => kind !== 'ping');
  }
}
