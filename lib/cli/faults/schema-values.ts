import { z } from 'zod';
import type { Chance } from '../../../demo/month/chance';

/** The part of JSON Schema that zod writes for what the interface takes. */
interface Shape {
  readonly type?: string | undefined;
  readonly properties?: Readonly<Record<string, Shape>> | undefined;
  readonly required?: readonly string[] | undefined;
  readonly items?: Shape | undefined;
  readonly enum?: readonly unknown[] | undefined;
  readonly const?: unknown;
  readonly anyOf?: readonly Shape[] | undefined;
  readonly oneOf?: readonly Shape[] | undefined;
  readonly allOf?: readonly Shape[] | undefined;
  readonly format?: string | undefined;
  readonly pattern?: string | undefined;
  readonly minimum?: number | undefined;
  readonly maximum?: number | undefined;
  readonly minLength?: number | undefined;
  readonly maxLength?: number | undefined;
  readonly minItems?: number | undefined;
  readonly maxItems?: number | undefined;
}

const shapeSchema: z.ZodType<Shape> = z.lazy(() =>
  z.object({
    type: z.string().optional(),
    properties: z.record(z.string(), shapeSchema).optional(),
    required: z.array(z.string()).optional(),
    items: shapeSchema.optional(),
    enum: z.array(z.unknown()).optional(),
    const: z.unknown().optional(),
    anyOf: z.array(shapeSchema).optional(),
    oneOf: z.array(shapeSchema).optional(),
    allOf: z.array(shapeSchema).optional(),
    format: z.string().optional(),
    pattern: z.string().optional(),
    minimum: z.number().optional(),
    maximum: z.number().optional(),
    minLength: z.number().optional(),
    maxLength: z.number().optional(),
    minItems: z.number().optional(),
    maxItems: z.number().optional(),
  }),
);

export const shapeOf = (schema: z.ZodType): Shape =>
  shapeSchema.parse(z.toJSONSchema(schema, { io: 'input', unrepresentable: 'any' }));

/** By the name of a member: values that mean something in the shop that is asked. */
export type Hints = Readonly<Record<string, readonly [unknown, ...unknown[]]>>;

const words = [
  'a',
  'parts',
  'Waiting for parts',
  'ü 😀 ﷽',
  "' or 1=1 --",
  '<b>x</b>',
  '=1+1',
] as const;

const textOf = (
  { format, pattern, minLength = 0, maxLength = 200 }: Shape,
  random: Chance,
): string => {
  if (format === 'uuid') return random.uuid();
  // The patterns of the interface are those of ids.
  if (pattern !== undefined && format === undefined && random.is(0.9)) return 'some-id';
  if (format === 'date-time') return new Date(random.between(1e12, 2e12)).toISOString();
  const edge = random.weighted([
    ['word', 6],
    ['shortest', 2],
    ['longest', 1],
  ]);
  if (edge === 'shortest') return 'x'.repeat(minLength);
  return edge === 'longest' ? 'x'.repeat(Math.min(maxLength, 5000)) : random.pick(words);
};

const numberOf = ({ type, minimum = -1000, maximum = 1000 }: Shape, random: Chance): number => {
  const low = Math.max(minimum, -1e6);
  const high = Math.min(maximum, 1e6);
  const value = random.weighted([
    [low, 1],
    [high, 1],
    [random.between(low, high), 4],
  ]);
  return type === 'integer' ? Math.round(value) : value;
};

const first = <T>(all: readonly T[]): readonly [T, ...T[]] | undefined => {
  const [one, ...more] = all;
  return one === undefined ? undefined : [one, ...more];
};

/** A value of a shape; of members that have a hint, mostly one of its values. */
export const valueOf = (shape: Shape, random: Chance, hints: Hints, name = ''): unknown => {
  const hint = hints[name];
  if (hint !== undefined && random.is(0.85)) return random.pick(hint);
  const choice = first([...(shape.anyOf ?? []), ...(shape.oneOf ?? [])]);
  if (choice !== undefined) return valueOf(random.pick(choice), random, hints, name);
  if (shape.const !== undefined) return shape.const;
  const named = first(shape.enum ?? []);
  if (named !== undefined) return random.pick(named);
  switch (shape.type) {
    case 'object':
      return Object.fromEntries(
        Object.entries(shape.properties ?? {})
          .filter(([member]) => shape.required?.includes(member) === true || random.is(0.4))
          .map(([member, part]) => [member, valueOf(part, random, hints, member)]),
      );
    case 'array': {
      const { minItems = 0, maxItems = 3, items = {} } = shape;
      const length = minItems + Math.floor(random.next() * Math.min(3, maxItems - minItems + 1));
      return Array.from({ length }, () => valueOf(items, random, hints, name));
    }
    case 'string':
      return textOf(shape, random);
    case 'integer':
    case 'number':
      return numberOf(shape, random);
    case 'boolean':
      return random.is(0.5);
    default:
      return null;
  }
};
