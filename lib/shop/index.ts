import { z } from 'zod';
import { personSchema } from '../people';
import { driveSchema } from '../procedure/drive';
import { idSchema } from '../procedure/id';
import { torqueUnits } from '../quantity';
import { callWords } from '../voice/call-word';

export const baySchema = z.object({
  id: idSchema,
  name: z.string().min(1).max(40),
  /** The word that a spoken phrase must begin with at this bay's kiosk; absent: none. */
  callWord: z.enum(callWords).optional(),
});
export type Bay = z.infer<typeof baySchema>;

/** The vehicle on the bay, as the work order names it. */
export const vehicleSchema = z.object({
  plate: z.string().min(1).max(20),
  description: z.string().min(1).max(120),
  serial: z.string().max(40).optional(),
  /** The serial was read twice: it has seventeen characters, and no check digit in the ninth place. */
  serialAsRead: z.literal(true).optional(),
  odometerKm: z.number().nonnegative().optional(),
});
export type Vehicle = z.infer<typeof vehicleSchema>;

/** A hand torque tool and its last calibration (ISO 6789-1/-2:2017). */
export const torqueToolSchema = z.object({
  id: idSchema,
  name: z.string().min(1),
  kind: z.enum(['click', 'dial', 'electronic', 'angle']),
  driveIn: driveSchema,
  /** Centre of its square to the hand mark on its grip; needed for adapters. */
  effectiveLengthMm: z.number().positive().optional(),
  lowerNm: z.number().nonnegative(),
  upperNm: z.number().positive(),
  resolutionNm: z.number().positive(),
  /** How far its angle may be off, ° (k = 2), by its certificate; absent: it proves no angle. */
  expandedAngleDeg: z.number().positive().optional(),
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

/** A crowfoot or extension that goes on the square of a torque wrench and moves the fastener off its axis. */
export const shopAdapterSchema = z.object({
  id: idSchema,
  name: z.string().min(1).max(40),
  /** Centre of its square to the centre of the fastener. */
  lengthMm: z.number().positive(),
  /** How well its length and the place of the hand are known, ± mm (k = 2). */
  lengthsWithinMm: z.number().nonnegative(),
  /** The wrench's square that it takes. */
  driveIn: driveSchema,
});
export type ShopAdapter = z.infer<typeof shopAdapterSchema>;

/** A time of day in the shop's zone, on the half hour: "06:00". */
const clockTime = z
  .string()
  .regex(/^([01]\d|2[0-3]):[03]0$/, { message: 'write a time like 06:00 or 13:30' });

/** One that ends at or before its beginning ends on the next day. */
export const shiftSchema = z.object({
  id: idSchema,
  name: z.string().min(1).max(40),
  from: clockTime,
  to: clockTime,
});
export type Shift = z.infer<typeof shiftSchema>;

const isTimeZone = (name: string): boolean => {
  try {
    return new Intl.DateTimeFormat('en', { timeZone: name }).resolvedOptions().timeZone !== '';
  } catch {
    return false;
  }
};

/** Where the shop says nothing (assumption: common in two-shift shops). */
export const usualShifts: readonly Shift[] = [
  { id: 'early', name: 'Early', from: '06:00', to: '14:00' },
  { id: 'late', name: 'Late', from: '14:00', to: '22:00' },
  { id: 'night', name: 'Night', from: '22:00', to: '06:00' },
];

/** How a shop wants things done; what it does not say is off. */
export const shopSettingsSchema = z.object({
  /** IANA name of the zone in which its days and shifts are meant; absent: the server's own. */
  timeZone: z.string().max(60).refine(isTimeZone, { message: 'no such time zone' }).optional(),
  /** Absent: `usualShifts`. */
  shifts: z.array(shiftSchema).max(8).optional(),
  /** Fasteners without a figure are shown a general one, marked as no maker's value. Never safety-critical ones. */
  showGeneralFigures: z.boolean().optional(),
  /** Only tools marked in the unit of the sheet may be taken; else any, since the screen shows both units. */
  toolsMarkedInSheetUnit: z.boolean().optional(),
  /** So many days the sound of a spoken note is kept; 0: it is not. Absent: `usualNoteSoundDays`. */
  noteSoundDays: z.number().int().min(0).max(366).optional(),
});
export type ShopSettings = z.infer<typeof shopSettingsSchema>;

/** Long enough for a foreman's review (assumption: shops look back a month); voices are not kept for ever. */
export const usualNoteSoundDays = 30;

/** How long the sound of a spoken note is kept, days. */
export const noteSoundDays = ({ noteSoundDays: days }: ShopSettings): number =>
  days ?? usualNoteSoundDays;

export const shopSchema = z.object({
  name: z.string().min(1),
  bays: z.array(baySchema).min(1),
  people: z.array(personSchema).min(1),
  torqueTools: z.array(torqueToolSchema),
  adapters: z.array(shopAdapterSchema).optional(),
  settings: shopSettingsSchema.optional(),
});
export type Shop = z.infer<typeof shopSchema>;
