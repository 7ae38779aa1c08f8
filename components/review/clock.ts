/** How days and times are written in the shop's own zone. */
export interface Clock {
  /** "12 Nov" */
  readonly day: (instant: string) => string;
  /** "12 Nov, 10:40" */
  readonly when: (instant: string) => string;
}

export const clockIn = (timeZone: string): Clock => {
  const day = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short', timeZone });
  const time = new Intl.DateTimeFormat('en-GB', { hour: '2-digit', minute: '2-digit', timeZone });
  const dayOf = (instant: string): string => day.format(new Date(instant));
  return {
    day: dayOf,
    when: (instant) => `${dayOf(instant)}, ${time.format(new Date(instant))}`,
  };
};
