import type { Metadata } from 'next';
import { headers } from 'next/headers';
import { Foreman } from '@/components/foreman/foreman';
import { idSchema } from '@/lib/procedure';
import { getShopServer } from '@/lib/server/shop-server';
import { foremanIn } from '@/lib/server/signed-on';
import { readShop } from '@/lib/store';
import { demoPinHint } from '../demo-shop';

export const metadata: Metadata = { title: 'Foreman' };
export const dynamic = 'force-dynamic';

interface ForemanPageProps {
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>;
}

/** The foreman's own screen, on a phone or a tablet. */
export default async function ForemanPage({ searchParams }: ForemanPageProps) {
  const server = await getShopServer();
  if (!server.ok) throw new Error(server.error);
  const shop = await readShop(server.value.store);
  const session = await foremanIn(server.value, (await headers()).get('cookie'));
  const bay = idSchema.safeParse((await searchParams)['bay']);
  const people = shop?.people ?? [];
  return (
    <Foreman
      bays={shop?.bays ?? []}
      people={people}
      signedOn={
        session === undefined ? undefined : { person: session.person, device: session.device }
      }
      bay={bay.data}
      hint={demoPinHint({ shop: shop?.name ?? '', people })}
    />
  );
}
