import { err, ok, type Result } from '../result';
import type { Thread } from './thread';

/** What the steel of a bolt stands, MPa. */
export interface Strength {
  readonly class: string;
  readonly proofMpa: number;
  /** Yield, or 0.2 % proof stress. */
  readonly yieldMpa: number;
  readonly tensileMpa: number;
  readonly source: string;
}

export interface StrengthProblem {
  readonly code: 'unknownStrength' | 'tooLargeForClass';
  readonly message: string;
}

/** Values hold up to and including this diameter, mm; the next row from there on. */
interface Row {
  readonly upToMm: number;
  readonly proof: number;
  readonly yield: number;
  readonly tensile: number;
}

const any = Number.POSITIVE_INFINITY;
const row = (upToMm: number, proof: number, yields: number, tensile: number): Row => ({
  upToMm,
  proof,
  yield: yields,
  tensile,
});

const ISO_898 = 'ISO 898-1:2013';
const MEMORY = 'ISO 898-1, from memory';
const SAE = 'SAE J429, from memory';
const KSI = 6.894757293168361; // MPa, exact lbf and inch
const ksi = (upToIn: number, proof: number, yields: number, tensile: number): Row =>
  row(upToIn * 25.4, proof * KSI, yields * KSI, tensile * KSI);

const classes: Readonly<
  Record<string, { readonly source: string; readonly rows: readonly Row[] }>
> = {
  '4.6': { source: MEMORY, rows: [row(any, 225, 240, 400)] },
  '4.8': { source: MEMORY, rows: [row(any, 310, 340, 420)] },
  '5.6': { source: MEMORY, rows: [row(any, 280, 300, 500)] },
  '5.8': { source: MEMORY, rows: [row(any, 380, 420, 520)] },
  '6.8': { source: MEMORY, rows: [row(any, 440, 480, 600)] },
  '8.8': { source: ISO_898, rows: [row(16, 580, 640, 800), row(any, 600, 660, 830)] },
  '9.8': { source: MEMORY, rows: [row(any, 650, 720, 900)] },
  '10.9': { source: ISO_898, rows: [row(any, 830, 940, 1040)] },
  '12.9': { source: ISO_898, rows: [row(any, 970, 1100, 1220)] },
  'grade 2': { source: SAE, rows: [ksi(0.75, 55, 57, 74), ksi(1.5, 33, 36, 60)] },
  'grade 5': { source: SAE, rows: [ksi(1, 85, 92, 120), ksi(1.5, 74, 81, 105)] },
  'grade 8': { source: SAE, rows: [ksi(1.5, 120, 130, 150)] },
};

/** A nut's class is that of the strongest bolt it goes with. */
const boltOfNut: Readonly<Record<string, string>> = {
  '5': '5.8',
  '6': '6.8',
  '8': '8.8',
  '9': '9.8',
  '10': '10.9',
  '12': '12.9',
};

/** "10.9" and "class 10.9", "grade 5", "Gr.5" and "SAE 5"; a lone whole number is a nut on metric, a grade on unified. */
const nameOf = (written: string, thread: Thread): string => {
  const text = written.trim().toLowerCase();
  const graded = /^(?:sae\s*)?(?:grade|gr\.?|sae)\s*(\d+)$/.exec(text)?.[1];
  if (graded !== undefined) return `grade ${graded}`;
  const number = text.replace(/^(?:property\s+)?class\s*/, '').replace(',', '.');
  if (!/^\d+$/.test(number)) return number;
  return thread.system === 'unified' ? `grade ${number}` : (boltOfNut[number] ?? number);
};

/** The strength of a bolt by its class (ISO 898-1) or grade (SAE J429) and size. */
export const strengthOf = (written: string, thread: Thread): Result<Strength, StrengthProblem> => {
  const name = nameOf(written, thread);
  const known = Object.hasOwn(classes, name) ? classes[name] : undefined;
  if (known === undefined) {
    return err({
      code: 'unknownStrength',
      message: `${written} is no strength class or grade known here.`,
    });
  }
  const fits = known.rows.find(({ upToMm }) => thread.diameterMm <= upToMm + 1e-6);
  if (fits === undefined) {
    return err({
      code: 'tooLargeForClass',
      message: `${name} is not defined for ${thread.designation}.`,
    });
  }
  return ok({
    class: name,
    proofMpa: fits.proof,
    yieldMpa: fits.yield,
    tensileMpa: fits.tensile,
    source: known.source,
  });
};

/** Sp · As: what the bolt stands without a lasting stretch, N. */
export const proofLoadN = (thread: Thread, strength: Strength): number =>
  strength.proofMpa * thread.stressAreaMm2;
