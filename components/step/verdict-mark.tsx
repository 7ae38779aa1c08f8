import { verdictWords, type Verdict } from '@/lib/metrology';

/** Each verdict has its own shape, word and colour: none of them is needed to read the other two. */
const looks: Readonly<Record<Verdict, { tint: string; shape: string; mark: string }>> = {
  inSpec: {
    tint: 'text-good',
    shape: 'M24 3a21 21 0 1 0 0 42 21 21 0 0 0 0-42Z',
    mark: 'M14 25l7 7 13-15',
  },
  notProvable: {
    tint: 'text-unsure',
    shape: 'M24 2 46 24 24 46 2 24Z',
    mark: 'M24 13v13M24 33v.5',
  },
  outOfSpec: {
    tint: 'text-bad',
    shape: 'M4 4h40v40H4Z',
    mark: 'M15 15l18 18M33 15 15 33',
  },
  noFigure: {
    tint: 'text-ink',
    shape: 'M4 12h40v24H4Z',
    mark: 'M14 24h20',
  },
};

export const verdictTint = (verdict: Verdict): string => looks[verdict].tint;

/** The shape alone; the word must stand beside it. */
export function VerdictShape({
  verdict,
  className = 'size-[1em]',
}: {
  verdict: Verdict;
  className?: string;
}) {
  const { shape, mark, tint } = looks[verdict];
  return (
    <svg viewBox="0 0 48 48" aria-hidden="true" className={`shrink-0 ${tint} ${className}`}>
      <path d={shape} fill="currentColor" />
      <path
        d={mark}
        className="stroke-surface"
        fill="none"
        strokeWidth="5.5"
        strokeLinecap="round"
        strokeLinejoin="round"
      />
    </svg>
  );
}

export function VerdictMark({ verdict, className = '' }: { verdict: Verdict; className?: string }) {
  return (
    <span
      className={`inline-flex items-baseline gap-[0.35em] font-bold ${verdictTint(verdict)} ${className}`}
    >
      <VerdictShape verdict={verdict} className="size-[1em] self-center" />
      {verdictWords[verdict]}
    </span>
  );
}
