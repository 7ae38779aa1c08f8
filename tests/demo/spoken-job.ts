import { frontCover } from '@/demo/procedures/front-cover';
import { happeningText, type ScriptLine } from '@/demo/script';
import { applyEvent, openJob, type Happening, type JobEvent } from '@/lib/job';
import { kioskTransition, openKiosk, voiceContext, type KioskState } from '@/lib/kiosk';
import { understand, type Heard, type VoiceContext } from '@/lib/voice';

const job = '00000000-0000-7000-8000-0000000000aa';
const now = '2026-03-02T09:00:00Z';

const heard = (say: string): Heard => ({
  text: say,
  words: say
    .split(' ')
    .map((text, index) => ({ text, confidence: 1, startS: index * 0.4, endS: index * 0.4 + 0.3 })),
});

/** A kiosk without sound: what is said reaches it as words, exactly as spoken. */
export class SpokenJob {
  state: KioskState;
  private count = 0;

  constructor() {
    const opened = openJob(
      frontCover,
      this.event(1, {
        type: 'jobOpened',
        procedure: frontCover.procedure,
        revision: 1,
        vehicle: { plate: 'F-014', description: 'Utility vehicle' },
        bay: 'bay-1',
      }),
    );
    if (!opened.ok) throw new Error(opened.error.message);
    this.state = openKiosk(opened.value);
  }

  get context(): VoiceContext {
    return voiceContext(this.state);
  }

  /** Takes one line; what it added to the record. */
  take(line: ScriptLine): readonly string[] {
    if (line.how === 'foreman') return this.foremanDecides();
    if (line.how === 'dictation')
      return this.input({ kind: 'reason', text: line.say, via: { by: 'touch' } });
    const { say } = line;
    const understood = understand(heard(say), this.context);
    if (understood.kind === 'nothing') return [`not understood: ${understood.why}`];
    const { intent, certainty, confidence } = understood;
    return this.input({
      kind: 'act',
      intent,
      via: { by: 'voice', said: say, confidence, certainty },
    });
  }

  private input(input: Parameters<typeof kioskTransition>[1]): readonly string[] {
    const { state, effects } = kioskTransition(this.state, input, {
      now,
      newId: () => this.newId(),
      actor: 'tom-ashby',
      role: 'mechanic',
      device: 'kiosk-1',
    });
    this.state = state;
    return effects.flatMap((effect) =>
      effect.kind === 'store' ? [happeningText(effect.event.happening)] : [],
    );
  }

  /** The first deviation that waits for a word is accepted. */
  private foremanDecides(): readonly string[] {
    const open = this.state.job.deviations.find(({ decision }) => decision === undefined);
    if (open === undefined) return ['nothing to decide'];
    const happening: Happening = {
      type: 'deviationDecided',
      deviation: open.id,
      decision: 'accepted',
      reason: { text: 'seen and accepted' },
    };
    const applied = applyEvent(this.state.job, {
      ...this.event(this.state.job.seq + 1, happening),
      actor: 'mara-quill',
      role: 'foreman',
    });
    if (!applied.ok) return [applied.error.message];
    this.state = { ...this.state, job: applied.value };
    return [happeningText(happening)];
  }

  private event(seq: number, happening: Happening): JobEvent {
    return {
      format: 1,
      id: this.newId(),
      job,
      seq,
      at: now,
      actor: 'tom-ashby',
      role: 'mechanic',
      device: 'kiosk-1',
      input: { by: 'touch' },
      happening,
    };
  }

  private newId(): string {
    this.count += 1;
    return `00000000-0000-7000-8000-${String(this.count).padStart(12, '0')}`;
  }
}
