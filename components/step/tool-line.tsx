import type { ToolChoice } from '@/lib/metrology';
import { formatDifference } from '@/lib/quantity';

/** Which torque tool to take, or that none of the shop's will do, and why. */
export function ToolLine({ choice }: { readonly choice: ToolChoice | undefined }) {
  if (choice === undefined) return null;
  const [best] = choice.usable;
  if (best === undefined)
    return (
      <p className="text-body">
        No torque tool of the shop fits. {choice.refused.map(({ why }) => why.message).join(' ')}
      </p>
    );
  return (
    <p className="text-body text-quiet">
      Take <span className="font-bold text-ink">{best.tool.name}</span>, {best.tool.driveIn} in
      drive, ±{formatDifference(best.uncertainty.expandedNm, 'N.m', 1)}
    </p>
  );
}
