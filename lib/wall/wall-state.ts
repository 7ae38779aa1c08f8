import type { BayCard } from './card';
import type { WallMessage } from './message';

/** All that a wall keeps: one card a bay, whatever it has seen. */
export interface WallState {
  readonly shop: string;
  readonly order: readonly string[];
  readonly cards: Readonly<Record<string, BayCard>>;
  /** Of the last message, on this screen's clock, ms. Absent: none yet. */
  readonly heardAtMs?: number;
  /** Where the stream stood then, to go on from. */
  readonly position?: string;
  /** How far the server's clock is ahead of this screen's, ms. */
  readonly aheadMs: number;
}

export const emptyWall: WallState = { shop: '', order: [], cards: {}, aheadMs: 0 };

const byBay = (cards: readonly BayCard[]): Record<string, BayCard> =>
  Object.fromEntries(cards.map((card) => [card.bay.id, card]));

/** Cards of bays that the shop has; any other is dropped, so that nothing grows. */
const known = (order: readonly string[], cards: readonly BayCard[]): readonly BayCard[] =>
  cards.filter(({ bay }) => order.includes(bay.id));

/** The wall after one more message. `heardAtMs`: when it came, on this screen's clock. */
export const hearMessage = (
  state: WallState,
  message: WallMessage,
  position: string | undefined,
  heardAtMs: number,
): WallState => {
  const heard = {
    heardAtMs,
    aheadMs: Date.parse(message.now) - heardAtMs,
    ...(position === undefined ? {} : { position }),
  };
  switch (message.kind) {
    case 'beat':
      return { ...state, ...heard };
    case 'some': {
      const cards = { ...state.cards, ...byBay(known(state.order, message.bays)) };
      return { ...state, ...heard, cards };
    }
    case 'whole': {
      const { shop, order } = message;
      return { ...heard, shop, order, cards: byBay(known(order, message.bays)) };
    }
  }
};

/** The cards in the shop's order. */
export const cardsInOrder = ({ order, cards }: WallState): readonly BayCard[] =>
  order.flatMap((id) => (Object.hasOwn(cards, id) ? (cards[id] ?? []) : []));
