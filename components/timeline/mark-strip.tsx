import type { Mark } from '@/lib/timeline';

/** Each kind has its own shape, ±6 around its place, and its own row. */
const shapes: Readonly<Record<Mark['kind'], { name: string; path: string; row: string }>> = {
  deviations: { name: 'deviation', path: 'M0-6 6 5H-6Z', row: '0.1em' },
  holds: { name: 'hold or call', path: 'M-5-5H-1.5V5H-5ZM1.5-5H5V5H1.5Z', row: '0.85em' },
  signatures: { name: 'signature', path: 'M0-6 6 0 0 6-6 0Z', row: '1.6em' },
};

const percent = (seq: number, of: number): string =>
  `${of === 1 ? 100 : ((seq - 1) / (of - 1)) * 100}%`;

/** Where along the job deviations, holds and signatures lie. The list says the same in words. */
export function MarkStrip({ marks, of }: { readonly marks: readonly Mark[]; readonly of: number }) {
  const there = Object.entries(shapes).filter(([kind]) => marks.some((mark) => mark.kind === kind));
  if (there.length === 0) return null;
  return (
    <div aria-hidden="true">
      <svg className="marks" width="100%" height="2.4em">
        {marks.map(({ seq, kind }) => (
          <svg
            key={seq}
            x={percent(seq, of)}
            y={shapes[kind].row}
            width="0.7em"
            height="0.7em"
            viewBox="0 -7 14 14"
            overflow="visible"
          >
            <path d={shapes[kind].path} fill="currentColor" />
          </svg>
        ))}
      </svg>
      <p className="flex flex-wrap gap-x-6 text-quiet">
        {there.map(([kind, { name, path }]) => (
          <span key={kind} className="inline-flex items-center gap-2">
            <svg viewBox="-7 -7 14 14" className="size-[0.8em]">
              <path d={path} fill="currentColor" />
            </svg>
            {name}
          </span>
        ))}
      </p>
    </div>
  );
}
