import { z } from 'zod';
import { roleSchema } from '../people';
import { idSchema } from '../procedure/id';

/**
 * What a review looks at. Days are the shop's own, both inclusive. What is absent is not narrowed. `revision` and `step`
 * are of `procedure`, `ask` and `fastener` too. Hearings know no step: for them `step`, `ask` and `fastener` say nothing.
 */
export const reviewFilterSchema = z
  .object({
    from: z.iso.date(),
    to: z.iso.date(),
    shift: idSchema.optional(),
    bay: idSchema.optional(),
    procedure: idSchema.optional(),
    revision: z.coerce.number().int().positive().optional(),
    step: idSchema.optional(),
    /** What is measured: a joint is an ask, and one of its fasteners where it wants one value each. */
    ask: idSchema.optional(),
    fastener: idSchema.optional(),
    /** Of whoever did it. */
    role: roleSchema.optional(),
  })
  .refine(({ from, to }) => from <= to, { message: 'the first day is not after the last' })
  .refine(
    ({ procedure, revision, step, ask, fastener }) =>
      procedure !== undefined || [revision, step, ask, fastener].every((one) => one === undefined),
    { message: 'a revision, a step and a joint are of a procedure' },
  );
export type ReviewFilter = z.infer<typeof reviewFilterSchema>;

/** The names that a filter has in an address, in the order in which a page shows them. */
export const filterNames = [
  'from',
  'to',
  'shift',
  'bay',
  'procedure',
  'revision',
  'step',
  'ask',
  'fastener',
  'role',
] as const satisfies readonly (keyof ReviewFilter)[];
