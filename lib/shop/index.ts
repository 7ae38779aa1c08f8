import { z } from 'zod';
import { personSchema } from '../people';
import { idSchema } from '../procedure/id';
import { torqueUnits } from '../quantity';

export const baySchema = z.object({ id: idSchema, name: z.string().min(1).max(40) });
export type Bay = z.infer<typeof baySchema>;

/** The vehicle on the bay, as the work order names it. */
export const vehicleSchema = z.object({
  plate: z.string().min(1).max(20),
  description: z.string().min(1).max(120),
  serial: z.string().max(40).optional(),
  odometerKm: z.number().nonnegative().optional(),
});
export type Vehicle = z.infer<typeof vehicleSchema>;

/** A hand torque tool and its last calibration (ISO 6789-1/-2:2017). */
export const torqueToolSchema = z.object({
  id: idSchema,
  name: z.string().min(1),
  kind: z.enum(['click', 'dial', 'electronic', 'angle']),
  /** Square drive, as the trade names it. */
  driveIn: z.enum(['1/4', '3/8', '1/2', '3/4']),
  lowerNm: z.number().nonnegative(),
  upperNm: z.number().positive(),
  resolutionNm: z.number().positive(),
  /** Units that its scale or display is marked in; absent: N·m. */
  scale: z.array(z.enum(torqueUnits)).min(1).optional(),
  calibration: z.object({
    on: z.iso.date(),
    certificate: z.string().min(1).optional(),
    /** Expanded uncertainty from the certificate, k = 2, percent of reading; absent: the ISO 6789-1 class limit. */
    expandedPercent: z.number().positive().optional(),
    intervalMonths: z.number().int().positive(),
    intervalCycles: z.number().int().positive(),
  }),
});
export type TorqueTool = z.infer<typeof torqueToolSchema>;

export const shopSchema = z.object({
  name: z.string().min(1),
  bays: z.array(baySchema).min(1),
  people: z.array(personSchema).min(1),
  torqueTools: z.array(torqueToolSchema),
});
export type Shop = z.infer<typeof shopSchema>;
