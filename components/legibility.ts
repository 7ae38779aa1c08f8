/**
 * How large letters must be to be read from a distance. Capital height, not font size, is what counts:
 * FAA human factors design standard and NUREG-0700 ask for at least 16 minutes of arc, better 20 to 22.
 */

const arcMinutesPerRadian = (180 * 60) / Math.PI;

/** The capital height that spans `arcMinutes` at `distanceMm`, in mm: 2·D·tan(angle / 2) (exact form of 6.283·D·MA/21600). */
export const capitalHeightMm = (arcMinutes: number, distanceMm: number): number =>
  2 * distanceMm * Math.tan(arcMinutes / arcMinutesPerRadian / 2);

/** How many minutes of arc a capital of `heightMm` spans at `distanceMm`. */
export const arcMinutesOf = (heightMm: number, distanceMm: number): number =>
  2 * Math.atan(heightMm / (2 * distanceMm)) * arcMinutesPerRadian;

/** A screen as it is bought: diagonal, and the CSS pixels the page sees. */
export interface Screen {
  readonly diagonalIn: number;
  readonly widthPx: number;
  readonly heightPx: number;
}

/** The screen that the kiosk is drawn for. */
export const bayScreen: Screen = { diagonalIn: 24, widthPx: 1920, heightPx: 1080 };

/** From where the kiosk is read, and how large its instruction and values are at least. */
export const bayDistanceMm = 1500;
export const bayArcMinutes = 20;

/** The screen on the wall, from where it is read, and how large what matters is there at least. */
export const wallScreen: Screen = { diagonalIn: 55, widthPx: 1920, heightPx: 1080 };
export const wallDistanceMm = 6000;
export const wallArcMinutes = 20;

/** The pitch of one CSS pixel, mm: 0.2768 on a 24-inch screen of 1920 × 1080. */
export const pixelPitchMm = ({ diagonalIn, widthPx, heightPx }: Screen): number =>
  (diagonalIn * 25.4) / Math.hypot(widthPx, heightPx);

/**
 * Capital height ÷ font size of Atkinson Hyperlegible, regular and bold: sCapHeight 668 of 1000 units per em in
 * the OS/2 table of the served files (and the outline of the letter H reaches 668).
 */
export const capitalRatio = 0.668;

/** The smallest font size, CSS px, whose capitals span `arcMinutes` at `distanceMm` on that screen. */
export const fontSizePx = (arcMinutes: number, distanceMm: number, screen: Screen): number =>
  capitalHeightMm(arcMinutes, distanceMm) / pixelPitchMm(screen) / capitalRatio;

/** What a gloved finger needs, mm, and the same in CSS px of that screen. */
export const gloveTargetMm = 20;
export const gloveTargetPx = (screen: Screen): number => gloveTargetMm / pixelPitchMm(screen);
