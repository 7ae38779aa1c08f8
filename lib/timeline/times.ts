/** How the times of a record are written, in the zone of the shop. */
export interface Times {
  /** "10:42:07" */
  readonly clock: (at: string) => string;
  /** "Monday 2 March 2026" */
  readonly day: (at: string) => string;
}

/** `timeZone` by its IANA name; absent: that of this machine. */
export const timesIn = (timeZone: string | undefined): Times => {
  const zone = timeZone === undefined ? {} : { timeZone };
  const clock = new Intl.DateTimeFormat('en-GB', {
    ...zone,
    hour: '2-digit',
    minute: '2-digit',
    second: '2-digit',
  });
  const day = new Intl.DateTimeFormat('en-GB', {
    ...zone,
    weekday: 'long',
    day: 'numeric',
    month: 'long',
    year: 'numeric',
  });
  return {
    clock: (at) => clock.format(new Date(at)),
    day: (at) => day.format(new Date(at)).replace(',', ''),
  };
};
