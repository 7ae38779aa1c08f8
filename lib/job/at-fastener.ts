import { judgeAtFastener, type Adapter } from '../fastening/adapter';
import type { OutOfDomain } from '../fastening/domain';
import { fromCanonical, toCanonical, type Measured } from '../quantity';
import { ok, type Result } from '../result';

/** A value as it was read, with what was between the wrench and the fastener. */
export interface ReadValue extends Measured {
  readonly adapter?: Adapter | undefined;
}

export interface AtFastener {
  readonly canonical: number;
  /** The same in the unit of the reading. */
  readonly measured: Measured;
  /** k = 2, canonical unit, where it is known. */
  readonly expandedUncertainty?: number;
}

/**
 * What the fastener got: the reading itself, or with an adapter the torque that it means there. `expandedUncertainty`
 * is the tool's (k = 2, canonical unit). Errors: an adapter that is no lever to measure with.
 */
export const atFastener = (
  { value, unit, adapter }: ReadValue,
  expandedUncertainty?: number,
): Result<AtFastener, OutOfDomain> => {
  const read = toCanonical(value, unit);
  if (adapter === undefined)
    return ok({
      canonical: read,
      measured: { value, unit },
      ...(expandedUncertainty === undefined ? {} : { expandedUncertainty }),
    });
  const there = judgeAtFastener(read, adapter, undefined, expandedUncertainty, 'simple');
  if (!there.ok) return there;
  const { torqueNm, expandedUncertaintyNm } = there.value;
  return ok({
    canonical: torqueNm,
    measured: { value: fromCanonical(torqueNm, unit), unit },
    ...(expandedUncertaintyNm === undefined ? {} : { expandedUncertainty: expandedUncertaintyNm }),
  });
};
