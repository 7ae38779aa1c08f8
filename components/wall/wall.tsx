'use client';
import { cardsInOrder, freshness, gridFor, shortBayNames, type Grid } from '@/lib/wall';
import { BayTile } from './bay-tile';
import { useClock, useWall } from './use-wall';
import { useWantSound } from './use-want-sound';
import { WallFoot } from './wall-foot';
import { WantStrip } from './want-strip';

const columns: Readonly<Record<number, string>> = {
  1: 'grid-cols-1',
  2: 'grid-cols-2',
  3: 'grid-cols-3',
  4: 'grid-cols-4',
  5: 'grid-cols-5',
  6: 'grid-cols-6',
  7: 'grid-cols-7',
  8: 'grid-cols-8',
  9: 'grid-cols-9',
  10: 'grid-cols-10',
  12: 'grid-cols-12',
};

const rows: Readonly<Record<number, string>> = {
  1: 'grid-rows-1',
  2: 'grid-rows-2',
  3: 'grid-rows-3',
  4: 'grid-rows-4',
  5: 'grid-rows-5',
  6: 'grid-rows-6',
};

const gridClasses = (grid: Grid): string =>
  `${columns[grid.columns] ?? 'grid-cols-12'} ${rows[grid.rows] ?? 'auto-rows-fr'}`;

/** Said by the tile itself only every so often: minutes are shown, and sixty tiles need not be drawn each second. */
const tileEveryMs = 10_000;

/** Every bay at once, as it stands now, without a reload for as long as the screen is on. */
export function Wall() {
  const state = useWall();
  const nowMs = useClock(1_000);
  const cards = cardsInOrder(state);
  const sound = useWantSound(cards);
  const names = shortBayNames(cards);
  const grid = gridFor(cards.length);
  const fresh = nowMs === undefined ? undefined : freshness(state.heardAtMs, nowMs);
  const shopMs = (nowMs ?? 0) + state.aheadMs;
  const tileMs = Math.floor(shopMs / tileEveryMs) * tileEveryMs;
  const longNames = grid.detail === 'all';
  return (
    <div className="flex h-dvh flex-col gap-2 overflow-hidden px-3 pt-2 pb-1">
      <h1 className="sr-only">{state.shop === '' ? 'Wall' : `${state.shop}: all bays`}</h1>
      {fresh?.stale === true ? (
        <p data-far role="alert" className="border-b-8 border-bad text-far font-bold text-bad">
          No news: this is how it was
        </p>
      ) : null}
      <WantStrip cards={cards} names={names} nowMs={shopMs} />
      <main
        className={`grid min-h-0 grow gap-2 ${gridClasses(grid)} ${fresh?.stale === true ? 'opacity-60' : ''}`}
      >
        {cards.map((card) => (
          <BayTile
            key={card.bay.id}
            card={card}
            name={longNames ? card.bay.name : (names[card.bay.id] ?? card.bay.name)}
            detail={grid.detail}
            nowMs={tileMs}
          />
        ))}
      </main>
      <WallFoot shop={state.shop} fresh={fresh} shopMs={shopMs} sound={sound} />
    </div>
  );
}
