import Link from 'next/link';
import type { ReactNode } from 'react';
import type { ReviewChoices } from '@/lib/review';
import type { FilterAsked } from './address';
import { FilterForm } from './filter-form';

const parts = [
  ['deviations', 'Deviations'],
  ['rework', 'Rework'],
  ['readings', 'Readings'],
  ['step-times', 'Step times'],
  ['hearing', 'Hearing'],
  ['holds', 'Holds'],
  ['sheets', 'Sheets to change'],
] as const;

/** The frame of the review: what it looks at, for whom, and its parts. */
export function ReviewPage({
  asked,
  choices,
  foreman,
  children,
}: {
  readonly asked: FilterAsked;
  readonly choices: ReviewChoices;
  /** Who is signed on and sees names. */
  readonly foreman: string | undefined;
  readonly children: ReactNode;
}) {
  return (
    <main className="mx-auto flex max-w-[120rem] flex-col gap-6 p-4 wide:px-8 wide:py-6">
      <header className="flex flex-col gap-4">
        <div className="flex flex-wrap items-baseline justify-between gap-x-8 gap-y-2">
          <h1 className="text-read font-bold">Review</h1>
          <p className="text-note">
            {foreman === undefined ? (
              <>
                Nobody is named. A foreman who signs on sees names, plays notes and marks sheets:{' '}
                <Link href="/foreman" className="underline">
                  sign on
                </Link>
              </>
            ) : (
              <>
                {foreman} is signed on and sees names.{' '}
                <Link href="/foreman" className="underline">
                  The foreman’s screen
                </Link>
              </>
            )}
          </p>
          <nav aria-label="Other screens" className="flex gap-5 text-note">
            <Link href="/" className="underline">
              Bays
            </Link>
            <Link href="/wall" className="underline">
              The wall
            </Link>
          </nav>
        </div>
        <FilterForm filter={asked.filter} choices={choices} />
        {asked.problem === undefined ? null : (
          <p role="alert" className="text-note font-bold text-bad">
            {asked.problem}
          </p>
        )}
        <nav aria-label="On this page" className="flex flex-wrap gap-x-6 gap-y-1 text-note">
          {parts.map(([id, name]) => (
            <a key={id} href={`#${id}`} className="inline-flex min-h-[2rem] items-center underline">
              {name}
            </a>
          ))}
        </nav>
      </header>
      {children}
    </main>
  );
}
