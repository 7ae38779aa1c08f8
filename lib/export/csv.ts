/** A cell: text, a number, or nothing. */
export type Cell = string | number | undefined;

/**
 * What a spreadsheet would take for a formula: these first characters, as the OWASP page on CSV injection lists them
 * (from memory), their full-width forms, and our own guard, so that what was guarded can always be told.
 */
const formulaStart = /^[=+\-@\t\r\n＝＋－＠']/u;

/** Text that a spreadsheet shows as it is: an apostrophe goes before what could be a formula. */
export const guarded = (text: string): string => (formulaStart.test(text) ? `'${text}` : text);

/** The text as it was before `guarded`. */
export const unguarded = (text: string): string =>
  text.startsWith("'") && formulaStart.test(text.slice(1)) ? text.slice(1) : text;

const quoted = (text: string): string =>
  /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;

/** Numbers with a point, never guarded: a minus before a number is no formula. What is no finite number stays empty. */
const cellText = (cell: Cell): string => {
  if (cell === undefined) return '';
  if (typeof cell === 'string') return quoted(guarded(cell));
  return Number.isFinite(cell) ? String(cell) : '';
};

/** One record by RFC 4180: commas, quotes doubled, ended by CR LF. */
export const csvRecord = (cells: readonly Cell[]): string => `${cells.map(cellText).join(',')}\r\n`;
