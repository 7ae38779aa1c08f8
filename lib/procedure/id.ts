import { z } from 'zod';

/** Ids of things in a procedure or a shop: short, lower case, stable across revisions. */
export const idSchema = z
  .string()
  .regex(/^[a-z0-9]+(-[a-z0-9]+)*$/)
  .max(64);
