import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { z } from 'zod';
import type { DemoLine, DemoVoices } from '@/components/kiosk/demo-mechanic';
import { demoPins, demoShop } from '@/demo';
import type { Person } from '@/lib/people';

interface ShopFacts {
  readonly shop: string;
  readonly people: readonly Person[];
}

/** Whether this is the demo shop as it was seeded: its PINs are printed for everybody to read. */
export const isDemo = ({ shop, people }: ShopFacts): boolean =>
  shop === demoShop('2026-01-01').name && people.every(({ id }) => demoPins[id] !== undefined);

/** The demo people's PINs, for the sign-on screen of the demo and of no other shop. */
export const demoPinHint = (facts: ShopFacts): string | undefined =>
  isDemo(facts)
    ? `Demo PINs: ${facts.people.map(({ id, name }) => `${name} ${demoPins[id] ?? ''}`).join(' · ')}`
    : undefined;

export const voicesFolder = (): string => join(process.cwd(), 'demo', 'voices');

const howSchema = z.enum(['phrase', 'dictation', 'foreman']);

const lineOf = (row: string): DemoLine[] => {
  const [file = '', how, step = '', say = ''] = row.split('\t');
  const kind = howSchema.safeParse(how);
  if (!kind.success) return [];
  return [{ url: file === '' ? '' : `/demo/voices/${file}`, how: kind.data, step, say }];
};

/** The recordings of a whole job on the front cover, where the demo has them. */
export const demoVoices = async (facts: ShopFacts): Promise<DemoVoices | undefined> => {
  if (!isDemo(facts)) return undefined;
  try {
    const table = await readFile(join(voicesFolder(), 'whole-job.tsv'), 'utf8');
    const lines = table.split('\n').slice(1).flatMap(lineOf);
    return { procedure: 'front-cover-reseal', lines };
  } catch {
    return undefined; // no recordings with this copy: the button for them stays away
  }
};
