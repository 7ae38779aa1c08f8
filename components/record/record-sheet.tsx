import type { ReactNode } from 'react';
import type { HandOverRecord, MeasuredRow } from '@/lib/record';

const day = (instant: string): string =>
  new Date(instant).toLocaleString('en-GB', {
    day: 'numeric',
    month: 'long',
    year: 'numeric',
    hour: '2-digit',
    minute: '2-digit',
    timeZoneName: 'short',
  });

function Part({ title, children }: { readonly title: string; readonly children: ReactNode }) {
  return (
    <section>
      <h2>{title}</h2>
      {children}
    </section>
  );
}

function Facts({
  facts,
}: {
  readonly facts: readonly { readonly name: string; readonly value: string }[];
}) {
  return (
    <dl className="record-facts">
      {facts.map(({ name, value }) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
  );
}

/** Rows of cells under names; nothing where there are none. */
function Rows({
  title,
  names,
  rows,
}: {
  readonly title: string;
  readonly names: readonly string[];
  readonly rows: readonly (readonly ReactNode[])[];
}) {
  if (rows.length === 0) return null;
  return (
    <Part title={title}>
      <table>
        <thead>
          <tr>
            {names.map((name) => (
              <th key={name} scope="col">
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((cells, at) => (
            <tr key={at}>
              {cells.map((cell, column) => (
                <td key={names[column]}>{cell}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </Part>
  );
}

function Lines({ title, lines }: { readonly title: string; readonly lines: readonly string[] }) {
  if (lines.length === 0) return null;
  return (
    <Part title={title}>
      <ul>
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </Part>
  );
}

const measuredCells = (row: MeasuredRow): readonly ReactNode[] => [
  row.what,
  row.asked,
  row.read,
  <span key="verdict" className={row.verdict === 'inSpec' ? undefined : 'record-bad'}>
    {row.verdictWords}
  </span>,
  row.tool,
];

const measuredNames = ['What', 'Asked', 'Read', 'Verdict', 'Tool'];

const partFacts = ({ parts: { fitted, replaced, reused }, kit, applied }: HandOverRecord) => [
  ...[
    { name: 'Fitted', of: fitted },
    { name: 'Replaced by new', of: replaced },
    { name: 'Used again', of: reused },
  ].map(({ name, of }) => ({ name, value: of.length === 0 ? 'None' : of.join(', ') })),
  ...[
    { name: 'Taken from the kit', value: kit.used.join(', ') },
    { name: 'Left over of the kit', value: kit.leftOver.join(', ') },
    { name: 'Further pieces, not of the kit', value: kit.further.join(', ') },
    { name: 'Put on', value: applied.join('; ') },
  ].filter(({ value }) => value !== ''),
];

/** The hand-over record as a sheet of paper. */
export function RecordSheet({
  shop,
  job,
  bay,
  record,
}: {
  readonly shop: string;
  readonly job: string;
  readonly bay: string;
  readonly record: HandOverRecord;
}) {
  const { closed } = record;
  return (
    <main className="record">
      <nav aria-label="This record" className="record-screen mb-6 flex flex-wrap gap-6 text-body">
        {[
          { to: `/bay/${bay}`, name: 'Back to the bay' },
          { to: `/jobs/${job}`, name: 'Everything that happened' },
          { to: `/api/jobs/${job}/record.pdf`, name: 'PDF, A4' },
          { to: `/api/jobs/${job}/record.pdf?paper=letter`, name: 'PDF, Letter' },
        ].map(({ to, name }) => (
          <a key={to} href={to} className="flex min-h-glove items-center underline">
            {name}
          </a>
        ))}
      </nav>
      <p>{shop} · Hand-over record</p>
      <h1>{record.title}</h1>
      <p>
        {closed === undefined
          ? 'The job is not closed: this is how it stands, and no final record.'
          : `Closed ${day(closed.at)} by ${closed.by}.`}{' '}
        Begun {day(record.openedAt)}. Worked by {record.workers.join(', ') || 'nobody yet'}. Maker’s
        sheet: {record.sheet}.
      </p>
      <Part title="Vehicle">
        <Facts facts={record.vehicle} />
      </Part>
      <Lines title="Due" lines={record.due} />
      <Lines title="Still open" lines={record.open} />
      <Rows
        title="Left open and signed for"
        names={['What', 'Why', 'Signed by']}
        rows={record.signed.map(({ what, why, by }) => [what, why, by])}
      />
      <Rows
        title="Other than the maker’s sheet"
        names={['What', 'Why', 'Decided']}
        rows={record.deviations.map(({ what, why, decision }) => [what, why, decision])}
      />
      <Part title="Parts">
        <Facts facts={partFacts(record)} />
      </Part>
      <Rows
        title="Fluids"
        names={['Fluid', 'Drained', 'Spilled', 'Poured back', 'Filled']}
        rows={record.fluids.map(({ name, drained, spilled, returned, filled }) => [
          name,
          ...[drained, spilled, returned, filled].map((volume) => volume ?? '–'),
        ])}
      />
      <Rows title="Tightened" names={measuredNames} rows={record.tightened.map(measuredCells)} />
      <Rows
        title="Tightened without a reading"
        names={['What', 'How']}
        rows={record.unread.map(({ what, how }) => [what, how])}
      />
      <Rows title="Measured" names={measuredNames} rows={record.measured.map(measuredCells)} />
      <Rows
        title="Checked"
        names={['Check', 'Outcome']}
        rows={record.checks.map(({ what, outcome, good }) => [
          what,
          <span key="outcome" className={good ? undefined : 'record-bad'}>
            {outcome}
          </span>,
        ])}
      />
      <section className="record-notice record-keep">
        <h3>Before you use the vehicle</h3>
        {record.cautions.map(({ signal, hazard, consequence, avoidance }) => (
          <p key={`${hazard}${avoidance}`}>
            <strong>{signal}</strong> {hazard} {consequence} {avoidance}
          </p>
        ))}
        <p>
          Follow the maker’s manual and the local rules. They count where this record says something
          else. Have work on the vehicle done by people who are licensed for it.
        </p>
      </section>
    </main>
  );
}
