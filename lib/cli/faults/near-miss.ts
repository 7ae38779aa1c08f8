import type { Chance } from '../../../demo/month/chance';

const deep = (levels: number): unknown => {
  let value: unknown = 1;
  for (let level = 0; level < levels; level += 1) value = [value];
  return value;
};

/** What no member should be, or only just. */
const oddities = (random: Chance): unknown =>
  random.pick<unknown>([
    null,
    ...[true, -1, 0, 1, 1.5, 1e308, -1e308, 5e-324, 2 ** 53, 2 ** 31],
    ...['', ' ', '0', '\u0000', '\ud800', '\u202e', 'constructor', '__proto__', '../../etc/passwd'],
    ...[
      '2025-13-45T99:00:00Z',
      '2025-02-29T00:00:00+25:00',
      '00000000-0000-0000-0000-000000000000',
    ],
    ...['x'.repeat(2001), 'x'.repeat(70_000), [], {}, [[]], [null], deep(200)],
    { type: 'jobOpened' },
    { toString: 1, valueOf: 2 },
  ]);

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** The value with one place in it made wrong: a member odd, missing or too many, a list too long, a part moved. */
export const nearMiss = (value: unknown, random: Chance): unknown => {
  if (Array.isArray(value) && value.length > 0 && random.is(0.9)) {
    if (random.is(0.03)) return Array.from({ length: 201 }, () => value[0] as unknown);
    const at = Math.floor(random.next() * value.length);
    return value.map((one: unknown, place) => (place === at ? nearMiss(one, random) : one));
  }
  if (isRecord(value) && random.is(0.9)) {
    const names = Object.keys(value);
    const name = names[Math.floor(random.next() * names.length)];
    if (name === undefined || random.is(0.08)) return { ...value, more: oddities(random) };
    const { [name]: old, ...rest } = value;
    if (random.is(0.12)) return rest;
    return { ...value, [name]: random.is(0.6) ? nearMiss(old, random) : oddities(random) };
  }
  if (typeof value === 'number' && random.is(0.5)) return value + random.pick([-1, 1, 0.5, 1e-9]);
  if (typeof value === 'string' && random.is(0.5))
    return random.pick([`${value}x`, value.slice(1), value.toUpperCase(), ` ${value}`]);
  return oddities(random);
};

/** A JSON text that is not quite one, or not as it is announced. */
export const tornText = (text: string, random: Chance): string => {
  const at = Math.floor(random.next() * text.length);
  return random.pick([
    text.slice(0, at),
    `${text.slice(0, at)}\u0000${text.slice(at)}`,
    `${text}${text}`,
    text.replaceAll('"', "'"),
    `\ufeff${text}`,
    '',
    'null',
    'NaN',
    '['.repeat(3000),
  ]);
};
