import type { NoiseLevel, SoundKind } from '../sound';

const tools: ReadonlySet<SoundKind> = new Set<SoundKind>(['impactTool', 'grinderOrSaw', 'alarm']);

/** Whether nobody would hear the kiosk now. An engine runs for hours: it is spoken against. */
export const toolRuns = ({
  kind,
  level,
}: {
  readonly kind: SoundKind;
  readonly level: NoiseLevel;
}) => tools.has(kind) && level !== 'low';
