import { z } from 'zod';
import { idSchema } from './id';

/** A line drawing in millimetres of the real thing; y grows downwards, as in SVG. */
export const drawingSchema = z.object({
  id: idSchema,
  title: z.string().min(1),
  /** What a person who cannot see it needs to know. */
  description: z.string().min(1),
  widthMm: z.number().positive(),
  heightMm: z.number().positive(),
  shapes: z.array(
    z.object({
      /** SVG path data, mm. */
      path: z.string().regex(/^[MmLlHhVvCcSsQqTtAaZz0-9eE ,.+-]+$/),
      weight: z.enum(['outline', 'detail', 'hidden']),
    }),
  ),
  marks: z.array(z.object({ text: z.string().min(1), xMm: z.number(), yMm: z.number() })),
  holes: z.array(
    z.object({
      id: idSchema,
      xMm: z.number(),
      yMm: z.number(),
      diameterMm: z.number().positive(),
    }),
  ),
});
export type Drawing = z.infer<typeof drawingSchema>;
export type Hole = Drawing['holes'][number];
