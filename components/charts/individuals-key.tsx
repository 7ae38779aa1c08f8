import { zoneRules, type IndividualsLimits } from '@/lib/statistics';
import { isWild, markOf, type IndividualPoint } from './individual-point';
import { LimitLine, type LimitKind } from './limit-line';
import { markWords, PointMark, type Mark } from './point-mark';
import { ruleFigure, ruleWords } from './rule-words';

function Sample({ mark, line }: { readonly mark?: Mark; readonly line?: LimitKind }) {
  return (
    <svg viewBox="-16 -9 32 18" aria-hidden="true" className="h-[1.2em] shrink-0">
      {line === undefined ? null : (
        <LimitLine
          kind={line}
          {...(line === 'spec' && { out: 'above' })}
          from={-16}
          to={16}
          y={2}
        />
      )}
      {mark === undefined ? null : <PointMark mark={mark} />}
    </svg>
  );
}

/** What shapes and lines mean; only of those that are there. */
export function IndividualsKey({
  points,
  limits,
  hasSpec,
}: {
  readonly points: readonly IndividualPoint[];
  readonly limits: IndividualsLimits | undefined;
  readonly hasSpec: boolean;
}) {
  const seen = new Set(points.map(markOf));
  const both = seen.has('outOfSpecAndRule');
  const marks = (['plain', 'rule', 'notProvable', 'outOfSpec'] as const).filter(
    (mark) => seen.has(mark) || (both && mark !== 'plain' && mark !== 'notProvable'),
  );
  const rules = zoneRules.filter((rule) => points.some((point) => point.rules.includes(rule)));
  return (
    <ul className="flex flex-wrap gap-x-6 gap-y-1 text-note text-quiet [&>li]:flex [&>li]:items-center [&>li]:gap-2">
      {marks.map((mark) => (
        <li key={mark}>
          <Sample mark={mark} />
          {markWords[mark]}
        </li>
      ))}
      {rules.map((rule) => (
        <li key={rule}>
          <b>{ruleFigure(rule)}</b> {ruleWords[rule]}
        </li>
      ))}
      {points.some((point) => point.rules.length > 1) ? (
        <li>
          <b>+</b> and further rules, in the table
        </li>
      ) : null}
      {points.some((point) => isWild(point, limits)) ? (
        <li>
          <b>R</b> moving range beyond its limit
        </li>
      ) : null}
      {hasSpec ? (
        <li>
          <Sample line="spec" />
          specification
        </li>
      ) : null}
      {limits === undefined ? null : (
        <>
          <li>
            <Sample line="control" />
            limits of the process
          </li>
          <li>
            <Sample line="centre" />
            mean
          </li>
        </>
      )}
    </ul>
  );
}
