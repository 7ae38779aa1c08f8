import { z } from 'zod';
import { parseThread } from '../fastening/parse-thread';
import { specificationSchema } from '../fastening/specification';
import { drawingSchema } from './drawing';
import { driveSchema } from './drive';
import { stepSchema, idSchema } from './step';

/** One pass over a group: how far its fasteners are tightened, and to what. */
export const tighteningSchema = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('torque'), torque: specificationSchema }),
  z.object({
    kind: z.literal('torqueAngle'),
    snugTorque: specificationSchema,
    angle: specificationSchema,
  }),
  /** Tight by feel: the sheet gives no figure. */
  z.object({ kind: z.literal('byFeel') }),
]);
export type Tightening = z.infer<typeof tighteningSchema>;

export const passSchema = z.object({
  id: idSchema,
  stage: z.enum(['snug', 'intermediate', 'final']),
  tightening: tighteningSchema,
  /**
   * Self-locking: the torque is without what the nut takes to turn before it seats. That is measured, must be within
   * this, and comes on top.
   */
  prevailing: specificationSchema.optional(),
});
export type Pass = z.infer<typeof passSchema>;

export const fastenerSchema = z.object({
  id: idSchema,
  /** As spoken and painted on the drawing: "3". Unique in its group. */
  label: z.string().min(1).max(12),
  hole: idSchema,
  lengthMm: z.number().positive().optional(),
  singleUse: z.boolean(),
});
export type Fastener = z.infer<typeof fastenerSchema>;

/** Revisions are for ever: a size that no standard knows was written like this before, and is doubted, not refused. */
const writtenMetric = /^M\d+(\.\d+)?(x\d+(\.\d+)?)?$/;

/** As the sheet writes it: "M8", "M8x1", "3/8-16", "#10-24". */
export const threadSchema = z
  .string()
  .max(40)
  .refine((text) => writtenMetric.test(text) || parseThread(text).ok, {
    message: 'write a thread like M8, M8x1, 3/8-16 or #10-24',
  });

/** Fasteners tightened together; a lone bolt is a group of one. */
export const fastenerGroupSchema = z.object({
  id: idSchema,
  name: z.string().min(1),
  noun: z.enum(['bolt', 'nut', 'screw', 'stud', 'plug']),
  drawing: idSchema,
  thread: threadSchema,
  strengthClass: z.string().min(1),
  threadLocker: idSchema.optional(),
  /** Square that the sheet's socket takes; absent: any wrench that reaches the torque. */
  driveIn: driveSchema.optional(),
  /** Readings of a safety-critical group must be proven in spec (JCGM 106 guarded acceptance). */
  safetyCritical: z.boolean(),
  fasteners: z.array(fastenerSchema).min(1),
  passes: z.array(passSchema).min(1),
  /** Fastener ids in the order of the maker's sheet; absent: computed from the hole coordinates. */
  sheetOrder: z.array(idSchema).optional(),
});
export type FastenerGroup = z.infer<typeof fastenerGroupSchema>;

export const partSchema = z.object({
  id: idSchema,
  name: z.string().min(1),
  /** Where it is before the job: on the vehicle, or in the kit. */
  starts: z.enum(['on', 'off']),
  /** What the sheet says of using it again. `never`: a new one each time; `ask`: the mechanic says which and why. */
  reuse: z.enum(['always', 'ask', 'never']),
});
export type Part = z.infer<typeof partSchema>;

export const kitItemSchema = z.object({
  id: idSchema,
  name: z.string().min(1),
  quantity: z.number().int().positive(),
});
export type KitItem = z.infer<typeof kitItemSchema>;

export const consumableSchema = z.discriminatedUnion('kind', [
  z.object({
    id: idSchema,
    name: z.string().min(1),
    kind: z.literal('threadLocker'),
    strength: z.enum(['low', 'medium', 'high']),
  }),
  z.object({
    id: idSchema,
    name: z.string().min(1),
    kind: z.enum(['grease', 'sealant', 'oil', 'cleaner']),
  }),
]);
export type Consumable = z.infer<typeof consumableSchema>;

export const fluidSchema = z.object({
  id: idSchema,
  name: z.string().min(1),
  capacityL: z.number().positive(),
  /** How far what went in may differ from what came out, and from the capacity. */
  toleranceL: z.number().positive(),
  /** Whether what was drained may be poured back. */
  mayReturn: z.boolean(),
  /** Where it takes less while its filter stays: the part that is the filter, and what goes in without a new one. */
  filter: z.object({ part: idSchema, capacityWithoutL: z.number().positive() }).optional(),
});
export type Fluid = z.infer<typeof fluidSchema>;

export const toolSchema = z.object({
  id: idSchema,
  name: z.string().min(1),
  special: z.boolean(),
});

/** A published revision of a procedure. Never changed once published; a change is a new revision. */
export const revisionSchema = z.object({
  procedure: idSchema,
  revision: z.number().int().positive(),
  title: z.string().min(1),
  summary: z.string().min(1),
  publishedAt: z.iso.datetime({ offset: true }),
  appliesTo: z.string().min(1),
  source: z.object({ sheet: z.string().min(1), revision: z.string().min(1) }),
  kit: z.array(kitItemSchema),
  tools: z.array(toolSchema),
  consumables: z.array(consumableSchema),
  fluids: z.array(fluidSchema),
  parts: z.array(partSchema),
  groups: z.array(fastenerGroupSchema),
  drawings: z.array(drawingSchema),
  steps: z.array(stepSchema).min(1),
});
export type Revision = z.infer<typeof revisionSchema>;
