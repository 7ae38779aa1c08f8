import type { z } from 'zod';
import { roleSchema, type Role } from '../../people';
import { stepNumber, stepOf } from '../../procedure';
import type { Place, StepName, Who } from '../../review';
import type { Shop } from '../../shop';
import type { Reader } from '../reader';
import { newestSheet, sheetOf } from './sheets';

const roleWords: Readonly<Record<Role, string>> = {
  mechanic: 'Mechanic',
  foreman: 'Foreman',
  writer: 'Writer',
  admin: 'Administrator',
};

/** Puts words to what rows name by id. */
export interface Names {
  /** The name only where names are shown; else the role and a number that stays the same. */
  who(person: string, role: string): Who;
  tool(id: string): string;
  place(row: PlaceRow): Promise<Place>;
  step(procedure: string, step: string): Promise<StepName>;
}

export interface PlaceRow {
  readonly job: string;
  readonly seq: number;
  readonly at_ms: number;
  readonly bay: string;
  readonly procedure: string;
  readonly revision: number;
  readonly step: string;
}

export const namesOf = (db: Reader, shop: Shop, shown: boolean): Names => {
  const numbers = new Map<string, { readonly name: string; readonly number: number }>();
  for (const role of roleSchema.options)
    for (const [at, { id, name }] of shop.people.filter((one) => one.role === role).entries())
      numbers.set(`${role} ${id}`, { name, number: at + 1 });
  const bays = new Map(shop.bays.map((bay) => [bay.id, bay]));
  const tools = new Map(shop.torqueTools.map(({ id, name }) => [id, name]));
  return {
    who(person, roleText) {
      const role = roleSchema.parse(roleText);
      const found = numbers.get(`${role} ${person}`);
      if (found === undefined) return { label: `Former ${roleWords[role].toLowerCase()}`, role };
      return { label: shown ? found.name : `${roleWords[role]} ${found.number}`, role };
    },
    tool: (id) => tools.get(id) ?? id,
    async place({ job, seq, at_ms, bay, procedure, revision, step }) {
      const sheet = await sheetOf(db, procedure, revision);
      return {
        job,
        seq,
        at: new Date(at_ms).toISOString(),
        bay: bays.get(bay) ?? { id: bay, name: bay },
        procedure,
        revision,
        title: sheet?.title ?? procedure,
        step,
        stepNumber: sheet === undefined ? 0 : stepNumber(sheet, step),
        stepTitle: (sheet && stepOf(sheet, step)?.title) ?? step,
      };
    },
    async step(procedure, step) {
      const sheet = await newestSheet(db, procedure);
      return {
        procedure,
        title: sheet?.title ?? procedure,
        step,
        stepTitle: (sheet && stepOf(sheet, step)?.title) ?? step,
      };
    },
  };
};

/** JSON of a column, by its schema. */
export const parsed = <T>(schema: z.ZodType<T>, text: string): T => schema.parse(JSON.parse(text));
