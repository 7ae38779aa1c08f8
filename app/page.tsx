import Link from 'next/link';
import { getShopServer } from '@/lib/server/shop-server';
import { shopView, type ShopView } from '@/lib/store';
import { demoPinHint } from './demo-shop';

export const dynamic = 'force-dynamic';

const phaseWords = { running: 'at work', held: 'on hold', closed: 'closed' } as const;

function Bay({ view, id, name }: { view: ShopView; id: string; name: string }) {
  const job = view.jobs.find(({ bay }) => bay === id);
  return (
    <li>
      <Link
        href={`/bay/${id}`}
        className="flex h-full min-h-[16rem] flex-col justify-between gap-4 rounded-block border-2 border-edge bg-surface p-6"
      >
        <span className="text-[4rem] leading-none font-bold">{name}</span>
        {job === undefined ? (
          <span className="text-glance text-quiet">No job open</span>
        ) : (
          <span className="text-glance">
            <span className="font-bold">{job.vehicle.plate}</span> {phaseWords[job.phase]}
            <span className="block text-body text-quiet">{job.title}</span>
          </span>
        )}
      </Link>
    </li>
  );
}

const otherScreen =
  'flex min-h-glove items-center rounded-block border-2 border-edge bg-surface px-5';

/** Which bay this screen stands in. */
export default async function Home() {
  const server = await getShopServer();
  if (!server.ok) throw new Error(server.error);
  const view = await shopView(server.value.store);
  if (view === undefined)
    return (
      <main className="p-10">
        <h1 className="text-read font-bold">This shop has not been set up yet</h1>
        <p className="mt-4 text-glance">
          Stop the server and start it with npm start: it sets the shop up.
        </p>
      </main>
    );
  const { shop } = view;
  const hint = demoPinHint({ shop: shop.name, people: shop.people });
  return (
    <main className="flex min-h-dvh flex-col gap-8 p-10">
      <header>
        <p className="text-glance text-act">Baycall</p>
        <h1 className="text-read font-bold">{shop.name}: which bay is this screen in?</h1>
        <nav aria-label="Other screens" className="mt-3 flex flex-wrap gap-4 text-glance">
          <Link href="/wall" className={otherScreen}>
            The wall
          </Link>
          <Link href="/foreman" className={otherScreen}>
            The foreman’s
          </Link>
          <Link href="/review" className={otherScreen}>
            The review
          </Link>
        </nav>
      </header>
      <ul className="grid gap-6 wide:grid-cols-3">
        {shop.bays.map(({ id, name }) => (
          <Bay key={id} view={view} id={id} name={name} />
        ))}
      </ul>
      {hint === undefined ? null : (
        <section aria-labelledby="demo" className="max-w-[70rem] border-l-8 border-line pl-5">
          <h2 id="demo" className="text-body font-bold">
            This is a demo: shop, people, vehicles and procedures are invented
          </h2>
          <p className="text-body">{hint}</p>
        </section>
      )}
      <p className="mt-auto max-w-[70rem] text-body text-quiet">
        Baycall helps to follow a maker’s sheet and keeps a record. The maker’s manual, local rules
        and trained judgement come before it.
      </p>
    </main>
  );
}
