import type { ReactNode } from 'react';

/** A part of the review under its heading. `empty` stands there instead where there is nothing to show. */
export function Section({
  id,
  title,
  empty,
  children,
}: {
  readonly id: string;
  readonly title: string;
  readonly empty?: string | undefined;
  readonly children?: ReactNode;
}) {
  return (
    <section
      aria-labelledby={`${id}-title`}
      id={id}
      className="flex scroll-mt-4 flex-col gap-4 border-t-2 border-line pt-5"
    >
      <h2 id={`${id}-title`} className="text-glance font-bold">
        {title}
      </h2>
      {empty === undefined ? children : <p className="text-body">{empty}</p>}
    </section>
  );
}
