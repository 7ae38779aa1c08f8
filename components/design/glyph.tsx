/** Our own line symbols on a 24 × 24 field. Always beside a word, so never read out. */
const paths = {
  open: 'M12 4.5a7.5 7.5 0 1 0 0 15 7.5 7.5 0 0 0 0-15Z',
  alert: 'M12 3.5a8.5 8.5 0 1 0 0 17 8.5 8.5 0 0 0 0-17ZM12 8v5M12 16.3v.2',
  tick: 'M4 12.5 9.5 18 20 6.5',
  cross: 'M5.5 5.5 18.5 18.5M18.5 5.5 5.5 18.5',
  query: 'M7.5 8.5a4.5 4.5 0 1 1 6.8 3.9c-1.5.9-2.3 1.6-2.3 3.1M12 19.6v.2',
  forward: 'M4 12h15M13 5.5 19.5 12 13 18.5',
  back: 'M20 12H5M11 5.5 4.5 12 11 18.5',
  undo: 'M4 9h10.5a5 5 0 0 1 0 10H8M8.5 4.5 4 9l4.5 4.5',
  pause: 'M8.5 5v14M15.5 5v14',
  play: 'M7.5 4.5 19 12 7.5 19.5Z',
  ear: 'M7 9.5a5 5 0 0 1 10 0c0 3.5-3.2 4.2-3.8 7-.4 2-1.5 3.2-3.2 3.2A3 3 0 0 1 7 17M10 9.7a2 2 0 0 1 4 0c0 1.5-1.2 1.8-1.9 3',
  earOff:
    'M7 9.5a5 5 0 0 1 10 0c0 3.5-3.2 4.2-3.8 7-.4 2-1.5 3.2-3.2 3.2A3 3 0 0 1 7 17M3.5 3.5l17 17',
  list: 'M4 6h.1M8.5 6H20M4 12h.1M8.5 12H20M4 18h.1M8.5 18H20',
  person: 'M12 11.5a4 4 0 1 0 0-8 4 4 0 0 0 0 8ZM4.5 20.5c.6-4 3.4-6 7.5-6s6.9 2 7.5 6',
  call: 'M5 20.5V3.5M5 4.5h13l-3.5 4.5 3.5 4.5H5',
  note: 'M5 3.5h10l4 4v13H5ZM8.5 11h7M8.5 15h7',
  hand: 'M7 12V6.5a1.5 1.5 0 0 1 3 0V11m0-6.5a1.5 1.5 0 0 1 3 0V11m0-5.5a1.5 1.5 0 0 1 3 0V12m0-3.5a1.5 1.5 0 0 1 3 0V15c0 3.5-2.5 6-6 6s-5-1.7-6.5-4.5L4.5 13a1.5 1.5 0 0 1 2.5-1.5',
  once: 'M12 3.5a8.5 8.5 0 1 0 0 17 8.5 8.5 0 0 0 0-17ZM10 9l2.5-1.5V17',
  turn: 'M19.5 12a7.5 7.5 0 1 1-2.2-5.3L20 9.4M20 4.5v4.9h-4.9',
  noPower: 'M12 3.5a8.5 8.5 0 1 0 0 17 8.5 8.5 0 0 0 0-17ZM6 6l12 12M13 7l-3 5h4l-3 5',
  power: 'M13.5 3 6.5 13.5h5L10.5 21l7-10.5h-5Z',
  drop: 'M12 3.5c3.5 4.5 5.5 7.3 5.5 10.5a5.5 5.5 0 0 1-11 0C6.5 10.8 8.5 8 12 3.5Z',
  speak: 'M4 9.5v5h3.5L12 18.5v-13L7.5 9.5ZM15.5 9a4.5 4.5 0 0 1 0 6M18 6.5a8 8 0 0 1 0 11',
  silent: 'M4 9.5v5h3.5L12 18.5v-13L7.5 9.5ZM15.5 9.5l5 5M20.5 9.5l-5 5',
  hammer: 'M5 8.5V5h9l3 3.5ZM9.5 8.5 9 20h3.5L12 8.5M19.5 12.5l1.5-1M19.5 15.5h2',
  blade:
    'M12 5.5a6.5 6.5 0 1 0 0 13 6.5 6.5 0 0 0 0-13ZM12 11.9v.2M12 5.5 14.5 3M18.5 12l2.5 2.5M12 18.5 9.5 21M5.5 12 3 9.5',
  engine: 'M4 10v6M4 13h3M7 9h4l1.5-2H16v3h3v7h-3l-2 2H9l-2-2ZM12 7V4.5M9.5 4.5H15',
  music:
    'M9 17.5V5.5l10-2v12M9 17.5a2.5 2.5 0 1 1-5 0 2.5 2.5 0 0 1 5 0ZM19 15.5a2.5 2.5 0 1 1-5 0 2.5 2.5 0 0 1 5 0Z',
  /** A line that is broken. */
  cut: 'M3 12h5.5M15.5 12H21M10.5 8.5v7M13.5 8.5v7',
  close: 'M5 12.5 10 17.5M20 6.5 12 15M4 4.5h16v15H4Z',
} as const;

export type GlyphName = keyof typeof paths;

export function Glyph({ name, className = '' }: { name: GlyphName; className?: string }) {
  return (
    <svg
      viewBox="0 0 24 24"
      aria-hidden="true"
      focusable="false"
      className={`inline-block size-[1.15em] shrink-0 ${className}`}
      fill="none"
      stroke="currentColor"
      strokeWidth="2.2"
      strokeLinecap="round"
      strokeLinejoin="round"
    >
      <path d={paths[name]} />
    </svg>
  );
}
