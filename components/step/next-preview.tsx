/** The step after this one, small: so that tools can be laid out in time. */
export function NextPreview({ next }: { next: { number: number; title: string } | undefined }) {
  return (
    <p className="min-w-0 truncate text-body text-quiet">
      <span className="font-bold">After this: </span>
      {next === undefined ? 'the job can be closed' : `${next.number}. ${next.title}`}
    </p>
  );
}
