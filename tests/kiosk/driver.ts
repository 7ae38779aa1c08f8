import {
  kioskTransition,
  type KioskEffect,
  type KioskInput,
  type KioskState,
  type Via,
} from '@/lib/kiosk';
import type { Intent } from '@/lib/voice';
import { env, freshKiosk } from './tiny-cover';

/** Drives the kiosk like a script: what is said, shown and stored. */
export class Driver {
  state: KioskState = freshKiosk();
  effects: readonly KioskEffect[] = [];
  readonly stored: string[] = [];

  input(input: KioskInput): this {
    const { state, effects } = kioskTransition(this.state, input, env);
    this.state = state;
    this.effects = effects;
    for (const effect of effects)
      if (effect.kind === 'store') this.stored.push(effect.event.happening.type);
    return this;
  }

  say(intent: Intent, certainty: 'sure' | 'unsure' = 'sure'): this {
    const via: Via = { by: 'voice', said: intent.kind, confidence: 0.9, certainty };
    return this.input({ kind: 'act', intent, via });
  }

  value(value: number, more: Partial<Extract<Intent, { kind: 'value' }>> = {}): this {
    return this.say({ kind: 'value', value, ...more });
  }

  reason(text: string): this {
    return this.input({ kind: 'reason', text, via: { by: 'touch' } });
  }

  next = (): this => this.say({ kind: 'next' });
  yes = (): this => this.say({ kind: 'yes' });
  no = (): this => this.say({ kind: 'no' });
  ready = (): this => this.say({ kind: 'ready' });

  get text(): string {
    return this.state.outcome?.text ?? '';
  }
  get step(): string {
    return this.state.job.currentStep;
  }

  toTighten(): this {
    return this.value(3.9)
      .next()
      .value(2)
      .next()
      .ready()
      .say({ kind: 'choice', option: 'replaced' })
      .say({ kind: 'check', passed: true })
      .next();
  }
}
