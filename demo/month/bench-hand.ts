import {
  applyEvent,
  askedValue,
  openJob,
  writeEvent,
  type Happening,
  type JobEvent,
} from '@/lib/job';
import type { JobState } from '@/lib/job';
import {
  currentStep,
  kioskTransition,
  openKiosk,
  openWants,
  toolsForStep,
  type KioskInput,
  type KioskState,
  type ToolCabinet,
  type Want,
} from '@/lib/kiosk';
import type { Person } from '@/lib/people';
import { groupOf, type Revision } from '@/lib/procedure';
import type { Vehicle } from '@/lib/shop';
import type { Intent } from '@/lib/voice';
import type { Chance } from './chance';
import { strayFigure, trueFigure } from './figures';
import { viaFor, wordsFor } from './voice';
import * as words from './words';

export interface Order {
  readonly revision: Revision;
  readonly vehicle: Vehicle;
  readonly bay: string;
}

export interface Bench {
  readonly dice: Chance;
  readonly cabinet: ToolCabinet;
  /** How far the month has gone at a moment, 0–1. */
  readonly month: (atMs: number) => number;
}

const MINUTE_MS = 60_000;

/** One job with the hands, the voice and the clock of whoever works on it; everything it does goes through the kiosk. */
export class BenchHand {
  readonly events: JobEvent[] = [];
  nowMs: number;
  private person: Person;
  private kiosk: KioskState;
  private readonly bench: Bench;
  private readonly device: string;
  private readonly drained = new Map<string, number>();

  constructor(order: Order, person: Person, nowMs: number, bench: Bench) {
    this.person = person;
    this.nowMs = nowMs;
    this.bench = bench;
    this.device = `demo-month-${order.bay}`;
    const { procedure, revision } = order.revision;
    const { vehicle, bay } = order;
    const job = bench.dice.uuid();
    const opening = this.eventOf(
      job,
      1,
      { type: 'jobOpened', procedure, revision, vehicle, bay },
      person,
    );
    const opened = openJob(order.revision, opening);
    if (!opened.ok) throw new Error(opened.error.message);
    this.events.push(opening);
    this.kiosk = openKiosk(opened.value);
  }

  get job(): JobState {
    return this.kiosk.job;
  }

  takeOver(person: Person, nowMs: number): void {
    this.person = person;
    this.pass(Math.max(0, nowMs - this.nowMs) / MINUTE_MS);
  }

  pass(minutes: number): void {
    this.nowMs += Math.round(minutes * 60) * 1000;
  }

  /** Says or presses it; said again where it was not heard well. Asked back, it stays open for `settle`. */
  act(intent: Intent): void {
    const { dice } = this.bench;
    const noun = this.noun();
    // To say or press something takes a moment.
    this.nowMs += 1000;
    for (let tries = 0; tries < 6; tries += 1) {
      const seq = this.job.seq;
      const before = this.kiosk;
      this.input({ kind: 'act', intent, via: viaFor(wordsFor(intent, dice, noun), dice) });
      const heard = !(this.kiosk.outcome?.text.startsWith('Not sure') ?? false);
      if (heard || this.job.seq !== seq || before.question !== this.kiosk.question) return;
      this.nowMs += 2000;
    }
  }

  /** Answers what the kiosk asks back, as long as it asks yes or no. */
  settle(answer: 'yes' | 'no'): void {
    for (let tries = 0; tries < 6; tries += 1) {
      const kind = this.kiosk.question?.kind;
      if (kind !== 'value' && kind !== 'confirm') return;
      this.nowMs += 2000;
      this.act({ kind: answer });
    }
  }

  /** The words that the kiosk waits for, dictated. */
  reason(text: string): void {
    if (this.kiosk.question?.kind !== 'reason') return;
    this.nowMs += 6000;
    const { dice } = this.bench;
    const sureness = text.split(' ').map(() => Math.min(1, Math.abs(dice.normal(0.93, 0.13))));
    const confidence = Number(Math.min(...sureness).toFixed(3));
    const unsure = sureness.flatMap((one, at) => (one < 0.7 ? [at] : []));
    const via = dice.is(0.7)
      ? ({ by: 'voice', said: text, confidence, certainty: 'sure', unsure } as const)
      : ({ by: 'touch' } as const);
    this.input({ kind: 'reason', text, via });
  }

  deviation(deviation: 'anotherWay' | 'missingOrDamaged', text: string): void {
    this.input({ kind: 'deviation', deviation });
    this.reason(text);
  }

  leaveOut(text: string): void {
    this.act({ kind: 'leaveOut' });
    this.settle('yes');
    this.reason(text);
  }

  /** Everything that the step on the screen still wants. */
  answerAll(minutesEach: number): void {
    for (let tries = 0; tries < 80; tries += 1) {
      const wants = openWants(this.job, currentStep(this.job));
      const [first, second] = wants;
      if (first === undefined) return;
      this.pass(minutesEach * this.bench.dice.between(0.7, 1.3));
      const swapped = second?.fastener !== undefined && this.bench.dice.is(0.004);
      this.answer(swapped ? second : first);
    }
    throw new Error(`${currentStep(this.job).id} never ends: ${this.kiosk.outcome?.text ?? ''}`);
  }

  /** What a foreman does here with a PIN of their own; false where the job's rules refuse it. */
  foreman(person: Person, happening: Happening): boolean {
    const event = this.eventOf(this.job.job, this.job.seq + 1, happening, person);
    const applied = applyEvent(this.job, event);
    if (!applied.ok) return false;
    this.events.push(event);
    this.input({ kind: 'job', job: applied.value });
    return true;
  }

  private answer(want: Want): void {
    switch (want.ask.kind) {
      case 'value':
        this.value(want);
        return;
      case 'count':
        this.act({ kind: 'value', value: want.ask.expected });
        this.settle('yes');
        return;
      case 'choice':
        if (this.bench.dice.is(0.6)) {
          this.act({ kind: 'choice', option: 'replaced' });
          this.settle('yes');
        } else {
          this.act({ kind: 'choice', option: 'reused' });
          this.reason(this.bench.dice.pick(words.reused));
        }
        return;
      case 'check':
        this.check();
    }
  }

  private check(): void {
    if (this.bench.dice.is(0.02)) {
      this.act({ kind: 'check', passed: false });
      this.settle('yes');
      this.pass(this.bench.dice.between(4, 15));
    }
    this.act({ kind: 'check', passed: true });
    this.settle('yes');
  }

  private value(want: Want): void {
    const { ask, fastener } = want;
    if (ask.kind !== 'value') return;
    const { dice } = this.bench;
    const specification = askedValue(this.job, ask, fastener).specification;
    const stray = strayFigure(specification, dice);
    const tool = toolsForStep(
      this.job,
      currentStep(this.job),
      this.bench.cabinet,
      new Date(this.nowMs).toISOString(),
    )?.usable[0]?.tool.id;
    const figure = trueFigure(
      {
        procedure: this.job.revision.procedure,
        ask,
        specification,
        fastener,
        tool,
        month: this.bench.month(this.nowMs),
        drained: this.drained,
      },
      dice,
    );
    const slip = dice.next();
    if (stray !== undefined && slip < 0.006) {
      // Tightened wrongly, and left so: a foreman will have to say what becomes of it.
      this.say(want, stray, 'yes');
      return;
    }
    if (stray !== undefined && slip < 0.014) this.say(want, stray, 'no');
    else if (stray !== undefined && slip < 0.024) {
      this.say(want, stray, 'yes');
      this.act({ kind: 'takeBack' });
      this.settle('yes');
    }
    if (ask.of.kind === 'fluid' && ask.of.use === 'drained') this.drained.set(ask.of.fluid, figure);
    this.say(want, figure, 'yes');
  }

  private say(want: Want, value: number, answer: 'yes' | 'no'): void {
    const group =
      want.ask.kind === 'value' && want.ask.of.kind === 'pass'
        ? groupOf(this.job.revision, want.ask.of.group)
        : undefined;
    const label = group?.fasteners.find(({ id }) => id === want.fastener)?.label;
    const [first] = openWants(this.job, currentStep(this.job));
    const named =
      label !== undefined && (first?.fastener !== want.fastener || this.bench.dice.is(0.2));
    this.act({ kind: 'value', value, ...(named ? { label } : {}) });
    this.settle(answer);
  }

  private noun(): string {
    for (const ask of currentStep(this.job).asks)
      if (ask.kind === 'value' && ask.of.kind === 'pass')
        return groupOf(this.job.revision, ask.of.group)?.noun ?? 'bolt';
    return 'bolt';
  }

  private input(input: KioskInput): void {
    const { state, effects } = kioskTransition(this.kiosk, input, {
      now: new Date(this.nowMs).toISOString(),
      newId: () => this.bench.dice.uuid(),
      actor: this.person.id,
      role: this.person.role,
      device: this.device,
      cabinet: this.bench.cabinet,
    });
    this.kiosk = state;
    for (const effect of effects) if (effect.kind === 'store') this.events.push(effect.event);
  }

  private eventOf(job: string, seq: number, happening: Happening, by: Person): JobEvent {
    return writeEvent({ job, seq: seq - 1 }, happening, {
      now: new Date(this.nowMs).toISOString(),
      newId: () => this.bench.dice.uuid(),
      actor: by.id,
      role: by.role,
      device: this.device,
      input: happening.type === 'jobOpened' ? { by: 'shop' } : { by: 'touch' },
    });
  }
}
