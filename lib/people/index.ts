import { z } from 'zod';
import { idSchema } from '../procedure/id';

export const roleSchema = z.enum(['mechanic', 'foreman', 'writer', 'admin']);
export type Role = z.infer<typeof roleSchema>;

/** A person as the shop floor sees them. PINs live with the access adapter, never here. */
export const personSchema = z.object({
  id: idSchema,
  name: z.string().min(1).max(60),
  role: roleSchema,
});
export type Person = z.infer<typeof personSchema>;
