/** A time span as people say it: "0 min", "48 min", "2 h 05". Whole minutes, rounded down. */
export const durationText = (ms: number): string => {
  const minutes = Math.max(0, Math.floor(ms / 60_000));
  const hours = Math.floor(minutes / 60);
  return hours === 0 ? `${minutes} min` : `${hours} h ${String(minutes % 60).padStart(2, '0')}`;
};

/** The time of day of an RFC 3339 instant, in the kiosk's own zone: "14:05". */
export const clockText = (instant: string): string =>
  new Date(instant).toLocaleTimeString('en-GB', { hour: '2-digit', minute: '2-digit' });

/** Measured minutes, rounded: "40 min", "3 h 20"; a dash where there is nothing to tell. */
export const minutesText = (minutes: number | undefined): string =>
  minutes === undefined ? '–' : durationText(Math.round(minutes) * 60_000);
