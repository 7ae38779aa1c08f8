import { collectDefaultMetrics, Counter, Gauge, Histogram, Registry } from 'prom-client';

export interface Measured {
  readonly method: string;
  /** The pattern of the address; see lib/server/route-name. */
  readonly route: string;
  readonly status: number;
  readonly seconds: number;
}

/** What one process counts of its own work, in the text form of Prometheus (version 0.0.4). No personal data. */
export class Metrics {
  readonly #registry = new Registry();
  readonly #requests: Histogram<'method' | 'route' | 'status'>;
  readonly #events: Counter;
  readonly #refusals: Counter<'code'>;

  /** `listeners`: how many walls and phones look on now. */
  constructor(listeners: () => number) {
    const registers = [this.#registry];
    this.#requests = new Histogram({
      name: 'baycall_request_seconds',
      help: 'Time from a request to the head of its answer.',
      labelNames: ['method', 'route', 'status'],
      buckets: [0.002, 0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 10],
      registers,
    });
    this.#events = new Counter({
      name: 'baycall_events_stored_total',
      help: 'Events that were acknowledged, those that were sent again too.',
      registers,
    });
    this.#refusals = new Counter({
      name: 'baycall_appends_refused_total',
      help: 'Batches of events that were not stored, by reason.',
      labelNames: ['code'],
      registers,
    });
    new Gauge({
      name: 'baycall_wall_listeners',
      help: 'Walls and phones that look on.',
      registers,
      collect() {
        this.set(listeners());
      },
    });
  }

  /** Adds memory, processor time and the delay of the event loop, which are the same for all of one process. */
  withProcess(): this {
    collectDefaultMetrics({ register: this.#registry });
    return this;
  }

  request({ method, route, status, seconds }: Measured): void {
    this.#requests.observe({ method, route, status: String(status) }, seconds);
  }

  stored(events: number): void {
    this.#events.inc(events);
  }

  refused(code: string): void {
    this.#refusals.inc({ code });
  }

  text(): Promise<string> {
    return this.#registry.metrics();
  }

  get contentType(): string {
    return this.#registry.contentType;
  }
}
