import { z } from 'zod';
import { specificationSchema } from '../fastening/specification';
import { idSchema } from './id';

export { idSchema };

/** Signal words of ANSI Z535.6: hazard, consequence, avoidance. */
export const cautionSchema = z.object({
  signal: z.enum(['DANGER', 'WARNING', 'CAUTION', 'NOTICE']),
  hazard: z.string().min(1),
  consequence: z.string().min(1),
  avoidance: z.string().min(1),
});
export type Caution = z.infer<typeof cautionSchema>;

/** What a step does to the vehicle once it is done. Groups stand for all their fasteners. */
export const effectSchema = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('drains'), fluid: idSchema }),
  /** `strength`: of coolant, the volume fraction of concentrate wanted, 0–1. */
  z.object({
    kind: z.literal('fills'),
    fluid: idSchema,
    strength: z.number().gt(0).lte(1).optional(),
  }),
  /** `tray`: where what comes off is laid; each fastener in the tray place named like its hole. */
  z.object({
    kind: z.literal('takesOff'),
    parts: z.array(idSchema),
    groups: z.array(idSchema),
    tray: z.string().min(1).optional(),
  }),
  /**
   * `as`: new from the kit, the same one again, or as the step's choice for that part says.
   * `uses` are the kit items that a new one consumes.
   */
  z.object({
    kind: z.literal('fits'),
    part: idSchema,
    as: z.enum(['new', 'reused', 'asChosen']),
    uses: z.array(z.object({ kitItem: idSchema, quantity: z.number().int().positive() })),
  }),
  z.object({ kind: z.literal('loosens'), groups: z.array(idSchema).min(1) }),
  z.object({
    kind: z.literal('runsIn'),
    groups: z.array(idSchema).min(1),
    fasteners: z.enum(['same', 'new']),
    uses: z.array(z.object({ kitItem: idSchema, quantity: z.number().int().positive() })),
  }),
  z.object({ kind: z.literal('tightens'), group: idSchema, pass: idSchema }),
  z.object({
    kind: z.literal('applies'),
    consumable: idSchema,
    groups: z.array(idSchema),
    parts: z.array(idSchema),
  }),
]);
export type Effect = z.infer<typeof effectSchema>;

/** What a step wants to know before it is done. A step that asks nothing is acknowledged. */
export const askSchema = z.discriminatedUnion('kind', [
  /** One measured value, or with `each` one for every fastener of the pass. */
  z.object({
    kind: z.literal('value'),
    id: idSchema,
    label: z.string().min(1),
    of: z.discriminatedUnion('kind', [
      /**
       * The torque or angle of a tightening pass, or what its self-locking nut takes to turn before it seats; the
       * specification is the pass's own.
       */
      z.object({
        kind: z.literal('pass'),
        group: idSchema,
        pass: idSchema,
        measure: z.enum(['torque', 'angle', 'prevailing']),
        each: z.boolean(),
      }),
      z.object({
        kind: z.literal('fluid'),
        fluid: idSchema,
        /** `spilled` as estimated; `returned` of the drained; `filled` is all that went in but what was returned. */
        use: z.enum(['drained', 'spilled', 'returned', 'filled']),
        spec: specificationSchema,
      }),
      z.object({ kind: z.literal('other'), spec: specificationSchema }),
    ]),
  }),
  z.object({
    kind: z.literal('count'),
    id: idSchema,
    label: z.string().min(1),
    expected: z.number().int().nonnegative(),
  }),
  /** Reused or replaced? `reused` against a sheet that wants new ones is a deviation. */
  z.object({ kind: z.literal('choice'), id: idSchema, label: z.string().min(1), part: idSchema }),
  /** A function check: passes or fails. */
  z.object({
    kind: z.literal('check'),
    id: idSchema,
    label: z.string().min(1),
    passesWhen: z.string().min(1),
  }),
]);
export type Ask = z.infer<typeof askSchema>;
export type ValueAsk = Extract<Ask, { kind: 'value' }>;

export const stepSchema = z.object({
  id: idSchema,
  title: z.string().min(1),
  instruction: z.string().min(1),
  cautions: z.array(cautionSchema),
  /** Which way round it goes. */
  orientation: z.string().optional(),
  drawing: idSchema.optional(),
  /** Groups marked on the drawing while the step is shown. */
  shows: z.array(idSchema),
  /** Cannot be undone: asks for a spoken "ready" before, and for its checks after. */
  oneShot: z.boolean(),
  handStart: z.boolean(),
  powerTool: z.enum(['allowed', 'notAllowed', 'notUsed']),
  /** Steps that must be done before this one. Where none forbids it, the order is free. */
  after: z.array(idSchema),
  bookMinutes: z.number().positive(),
  effects: z.array(effectSchema),
  asks: z.array(askSchema),
});
export type Step = z.infer<typeof stepSchema>;
