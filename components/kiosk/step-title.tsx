import type { StepState } from '@/lib/job';
import { Glyph } from '../design/glyph';

export interface StepTitleProps {
  readonly number: number;
  readonly title: string;
  readonly status: StepState['status'];
  /** The step that comes up once this one is done: so that tools can be laid out in time. */
  readonly next: { readonly number: number; readonly title: string } | undefined;
}

/** The step on the screen by its name, and the one after it. */
export function StepTitle({ number, title, status, next }: StepTitleProps) {
  return (
    <div className="min-w-0 grow basis-[30rem]">
      <h1 className="truncate text-glance font-bold text-act">
        <span className="sr-only">Step </span>
        {number}. {title}
        {status === 'open' ? null : (
          <span className={status === 'done' ? 'text-good' : 'text-unsure'}>
            {' '}
            <Glyph name={status === 'done' ? 'tick' : 'forward'} />
            {status === 'done' ? ' done' : ' left out'}
          </span>
        )}
      </h1>
      <p className="truncate text-body text-quiet">
        <span className="font-bold">After this: </span>
        {next === undefined ? 'the job can be closed' : `${next.number}. ${next.title}`}
      </p>
    </div>
  );
}
