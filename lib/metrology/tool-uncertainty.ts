import { formatQuantity } from '../quantity';
import { err, ok, type Result } from '../result';
import type { TorqueTool } from '../shop';
import { usableRange } from './tool-range';

export interface UncertaintyPart {
  readonly of: 'calibration' | 'setting' | 'reading';
  /** Standard uncertainty, N·m. */
  readonly standardNm: number;
  /** How the part is taken to be spread (JCGM 100 §4.3). */
  readonly spread: 'normal' | 'rectangular';
}

export interface ToolUncertainty {
  /** U with k = 2, N·m: about 95 % for a normal spread. */
  readonly expandedNm: number;
  readonly parts: readonly UncertaintyPart[];
  readonly from: 'certificate' | 'classLimit';
}

export interface ToolUncertaintyError {
  readonly kind:
    'notATorque' | 'outOfRange' | 'measuresNoTorque' | 'missingCertificate' | 'badToolData';
  readonly message: string;
}

const COVERAGE = 2;

/**
 * Permissible deviation by ISO 6789-1:2017, percent of the value: 4 %, and 6 % for tools up to 10 N·m
 * (and for torque screwdrivers, which are among these); the second figure from memory.
 */
export const classLimitPercent = (tool: TorqueTool): number => (tool.upperNm <= 10 ? 6 : 4);

/** ±half spread evenly has this standard uncertainty (JCGM 100 §4.3.7). */
const rectangular = (half: number): number => half / Math.sqrt(3);

const calibrationPart = (tool: TorqueTool, torqueNm: number): UncertaintyPart => {
  const { expandedPercent } = tool.calibration;
  return expandedPercent === undefined
    ? {
        of: 'calibration',
        standardNm: rectangular((torqueNm * classLimitPercent(tool)) / 100),
        spread: 'rectangular',
      }
    : {
        of: 'calibration',
        standardNm: (torqueNm * expandedPercent) / 100 / COVERAGE,
        spread: 'normal',
      };
};

/**
 * How far a hand torque tool may be off at a torque: its certificate, or its class limit where none is given, and
 * half a step of its scale: of the value set on a click wrench, of the value read off a dial or display.
 * Combined as roots of squares, k = 2 (JCGM 100 §5.1.2, ISO 6789-2). Not included: how it is pulled.
 * Errors: no torque, outside the usable range, a tool that measures no torque, a certificate asked for and missing.
 */
export const toolUncertainty = (
  tool: TorqueTool,
  torqueNm: number,
  options: { readonly certificateNeeded?: boolean } = {},
): Result<ToolUncertainty, ToolUncertaintyError> => {
  const refuse = (kind: ToolUncertaintyError['kind'], message: string) => err({ kind, message });
  if (!Number.isFinite(torqueNm) || torqueNm <= 0) {
    return refuse('notATorque', 'A torque is a number above zero.');
  }
  if (tool.kind === 'angle')
    return refuse('measuresNoTorque', `${tool.name} measures angles only.`);
  const { lowerNm, upperNm } = usableRange(tool);
  const slack = torqueNm * 1e-9;
  if (!(torqueNm >= lowerNm - slack && torqueNm <= upperNm + slack)) {
    const torque = formatQuantity(torqueNm, 'N.m');
    const range = `${formatQuantity(lowerNm, 'N.m')} to ${formatQuantity(upperNm, 'N.m')}`;
    return refuse('outOfRange', `${torque} is outside what ${tool.name} is good for: ${range}.`);
  }
  const certified = tool.calibration.expandedPercent !== undefined;
  if (options.certificateNeeded === true && !certified) {
    return refuse('missingCertificate', `${tool.name} has no certificate with an uncertainty.`);
  }
  const parts: readonly UncertaintyPart[] = [
    calibrationPart(tool, torqueNm),
    {
      of: tool.kind === 'click' ? 'setting' : 'reading',
      standardNm: rectangular(tool.resolutionNm / 2),
      spread: 'rectangular',
    },
  ];
  const expandedNm = COVERAGE * Math.hypot(...parts.map((part) => part.standardNm));
  return Number.isFinite(expandedNm)
    ? ok({ expandedNm, parts, from: certified ? 'certificate' : 'classLimit' })
    : refuse('badToolData', `The data of ${tool.name} give no uncertainty.`);
};
