import { Glyph } from '../design/glyph';

/** Something that a step asks besides its values, and what was answered. */
export interface AskedThing {
  readonly id: string;
  readonly label: string;
  /** What counts as passed; what the count should be is never told. */
  readonly hint?: string;
  readonly answer?: { readonly text: string; readonly good: boolean };
}

/** Checks, counts and choices of the step: open ring while open, tick or cross with the answer once given. */
export function StepAsks({ asked }: { readonly asked: readonly AskedThing[] }) {
  if (asked.length === 0) return null;
  return (
    <ul aria-label="To be answered" className="flex flex-col gap-1">
      {asked.map(({ id, label, hint, answer }) => (
        <li key={id} className="flex items-start gap-3 text-glance">
          <Glyph
            name={answer === undefined ? 'open' : answer.good ? 'tick' : 'cross'}
            className={`mt-[0.05em] ${answer === undefined ? 'text-act' : answer.good ? 'text-good' : 'text-bad'}`}
          />
          <span>
            <span className="font-bold">{label}</span>
            {answer === undefined ? null : <span className="font-bold">: {answer.text}</span>}
            {hint === undefined || answer !== undefined ? null : `: ${hint}`}
          </span>
        </li>
      ))}
    </ul>
  );
}
