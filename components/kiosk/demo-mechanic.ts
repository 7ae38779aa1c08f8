import type { KioskState } from '@/lib/kiosk';

/** A recording of the demo: said at which step of which procedure, as a phrase or into a dictation. */
export interface DemoLine {
  readonly url: string;
  readonly say: string;
  readonly step?: string;
  readonly how: 'phrase' | 'dictation' | 'foreman';
}

/** The recordings of one demo mechanic's whole job. */
export interface DemoVoices {
  readonly procedure: string;
  readonly lines: readonly DemoLine[];
}

/** What the demo mechanic says at this step. */
export const linesOf = (
  { procedure, lines }: DemoVoices,
  { job }: KioskState,
): readonly DemoLine[] =>
  job.revision.procedure === procedure && job.phase !== 'closed'
    ? lines.filter(({ step }) => step === job.currentStep)
    : [];
