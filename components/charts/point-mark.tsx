import { symbol, symbolCircle, symbolDiamond, symbolTimes, symbolTriangle } from 'd3-shape';

/** What a point says: each has a shape of its own. */
export type Mark = 'plain' | 'rule' | 'notProvable' | 'outOfSpec' | 'outOfSpecAndRule';

const path = (kind: typeof symbolCircle, size: number): string => symbol(kind, size)() ?? '';

const dot = path(symbolCircle, 34);
const smallDot = path(symbolCircle, 12);
const diamond = path(symbolDiamond, 130);
const triangle = path(symbolTriangle, 60);
const cross = path(symbolTimes, 55);

const ringed = 'fill-surface stroke-ink';
const crossed = 'stroke-bad';

/** The shape of a mark, about its middle. */
export function PointMark({
  mark,
  small = false,
}: {
  readonly mark: Mark;
  /** Where there are many points: the dots are smaller, what stands out is not. */
  readonly small?: boolean;
}) {
  switch (mark) {
    case 'plain':
      return <path d={small ? smallDot : dot} className="fill-act" />;
    case 'notProvable':
      return <path d={triangle} strokeWidth={1.5} className="fill-surface stroke-unsure" />;
    case 'rule':
      return (
        <>
          <path d={diamond} strokeWidth={1.5} className={ringed} />
          <path d={dot} className="fill-act" />
        </>
      );
    case 'outOfSpec':
      return <path d={cross} strokeWidth={3} className={crossed} />;
    case 'outOfSpecAndRule':
      return (
        <>
          <path d={diamond} strokeWidth={1.5} className={ringed} />
          <path d={cross} strokeWidth={3} className={crossed} />
        </>
      );
  }
}

export const markWords: Readonly<Record<Exclude<Mark, 'outOfSpecAndRule'>, string>> = {
  plain: 'in spec',
  rule: 'breaks a rule, by its number',
  notProvable: 'not provable',
  outOfSpec: 'out of spec',
};
