import type { ToolChoice } from '@/lib/metrology';
import { formatDifference, formatQuantity } from '@/lib/quantity';
import type { TorqueTool } from '@/lib/shop';
import { Glyph } from '../design/glyph';

/** The screen shows N·m and lbf·ft; a tool marked in neither is told its own figure. */
const ownUnit = ({ scale }: TorqueTool, setNm: number | undefined): string => {
  const [unit] = scale ?? [];
  return unit === undefined ||
    setNm === undefined ||
    scale?.some((one) => one === 'N.m' || one === '[lbf_av].[ft_i]') === true
    ? ''
    : `, set ${formatQuantity(setNm, unit)}`;
};

/** Which torque tool to take; nothing where none may be used. */
export function ToolLine({
  choice,
  setNm,
  drive = true,
}: {
  readonly choice: ToolChoice | undefined;
  /** Whether its square is told: with an adapter on it that is settled. */
  readonly drive?: boolean;
  /** What is set on it. */
  readonly setNm?: number | undefined;
}) {
  const best = choice?.usable[0];
  return best === undefined ? null : (
    <p className="text-body text-quiet">
      Take <span className="font-bold text-ink">{best.tool.name}</span>
      {drive ? `, ${best.tool.driveIn} in drive` : ''}, ±
      {formatDifference(best.uncertainty.expandedNm, 'N.m', 1)}
      {ownUnit(best.tool, setNm)}
    </p>
  );
}

/** None of the shop's torque tools may be used for this: why not each, and what to do. */
export function NoTool({
  choice,
  adapter,
}: {
  readonly choice: ToolChoice | undefined;
  /** An adapter is on the wrench. */
  readonly adapter: boolean;
}) {
  if (choice === undefined || choice.usable.length > 0) return null;
  return (
    <section
      aria-label="No torque tool"
      className="flex flex-col gap-1 rounded-block border-2 border-unsure px-5 py-3"
    >
      <p className="flex items-center gap-3 text-body font-bold">
        <Glyph name="alert" className="text-unsure" />
        {adapter
          ? 'Not with this wrench and adapter'
          : 'No torque tool of the shop may be used here'}
      </p>
      <ul className="text-note">
        {choice.refused.length === 0 ? (
          <li>The shop has no torque tool that measures this.</li>
        ) : (
          choice.refused.map(({ tool, why }) => <li key={tool.id}>{why.message}</li>)
        )}
      </ul>
      <p className="text-note font-bold">
        {adapter ? 'Take another wrench or adapter, or ' : ''}
        {adapter ? 'say' : 'Say'} “waiting for a tool” to hold the job, or “call the foreman”.
      </p>
    </section>
  );
}
