/** A card to be put on a page, standing as it is or turned by a quarter. */
export interface Card {
  readonly id: string;
  /** Sizes one way round, and the other; the content decides what is best where both fit equally well. */
  readonly sizes: readonly CardSize[];
}

export interface CardSize {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly turnDeg: number;
}

/** A card in its place; `x`, `y` is its top left corner, from that of the page's room. */
export interface PackedCard extends CardSize {
  readonly id: string;
  readonly page: number;
  readonly x: number;
  readonly y: number;
}

export interface CardPacking {
  readonly packed: readonly PackedCard[];
  readonly pages: number;
  /** Cards that fit on no page, in the order given. */
  readonly tooLarge: readonly Card[];
}

interface Room {
  readonly x: number;
  readonly y: number;
  readonly widthMm: number;
  readonly heightMm: number;
}

/**
 * Puts cards on as few equal pages as it can, each where the least is left over along its shorter side (maximal
 * rectangles, best short side fit: J. Jylänki, A thousand ways to pack the bin, 2010). Several orders of the cards, turned
 * freely or not, are tried, and the first that takes the fewest pages is taken.
 */
export function packCards(
  cards: readonly Card[],
  room: { readonly widthMm: number; readonly heightMm: number },
  gapMm: number,
): CardPacking {
  const whole = { x: 0, y: 0, widthMm: room.widthMm + gapMm, heightMm: room.heightMm + gapMm };
  const grown = cards.map((card) => ({ ...card, sizes: card.sizes.map((size) => grow(size, gapMm)) }));
  const fits = ({ sizes }: Card): boolean => sizes.some((size) => fitsIn(size, whole));
  const fitting = grown.filter(fits);
  const tries = TURNS.flatMap((turn) => {
    const turned = fitting.map((card) => turn(card, whole));
    return ORDERS.map((order) =>
      packInOrder(
        [...turned].sort((a, b) => order(b) - order(a)),
        whole,
      ),
    );
  });
  const best = tries.reduce((a, b) => (b.pages < a.pages ? b : a));
  return {
    pages: best.pages,
    packed: best.packed.map((place) => grow(place, -gapMm)),
    tooLarge: cards.filter((_, i) => !fits(grown[i]!)),
  };
}

/** Every way round that a card has, or only the first or the last one that fits at all. */
const TURNS: readonly ((card: Card, room: Room) => Card)[] = [
  (card) => card,
  (card, room) => ({ ...card, sizes: card.sizes.filter((size) => fitsIn(size, room)).slice(0, 1) }),
  (card, room) => ({ ...card, sizes: card.sizes.filter((size) => fitsIn(size, room)).slice(-1) }),
];

/** Largest first, by: longer side, area, shorter side, length all round. */
const ORDERS: readonly ((card: Card) => number)[] = [
  (card) => most(card, (size) => Math.max(size.widthMm, size.heightMm)),
  (card) => most(card, (size) => size.widthMm * size.heightMm),
  (card) => most(card, (size) => Math.min(size.widthMm, size.heightMm)),
  (card) => most(card, (size) => size.widthMm + size.heightMm),
];

function most({ sizes }: Card, of: (size: CardSize) => number): number {
  return Math.max(...sizes.map(of));
}

function packInOrder(cards: readonly Card[], whole: Room): Pick<CardPacking, 'packed' | 'pages'> {
  const pages: Room[][] = [];
  const packed = cards.map((card): PackedCard => {
    let place = bestPlace(card, pages);
    if (place === undefined) {
      pages.push([whole]);
      place = bestPlace(card, pages)!;
    }
    pages[place.page] = leftOver(pages[place.page]!, place);
    return { ...place, id: card.id };
  });
  return { packed, pages: pages.length };
}

function grow<Size extends CardSize>(size: Size, by: number): Size {
  return { ...size, widthMm: size.widthMm + by, heightMm: size.heightMm + by };
}

function fitsIn(size: CardSize, room: Room): boolean {
  return size.widthMm <= room.widthMm + 1e-9 && size.heightMm <= room.heightMm + 1e-9;
}

interface CardPlace extends CardSize {
  readonly page: number;
  readonly x: number;
  readonly y: number;
}

/** The first page with room, and there the place with the least left over. */
function bestPlace(card: Card, pages: readonly (readonly Room[])[]): CardPlace | undefined {
  for (let page = 0; page < pages.length; page++) {
    let best: CardPlace | undefined;
    let least = Infinity;
    for (const room of pages[page]!) {
      for (const size of card.sizes) {
        if (!fitsIn(size, room)) continue;
        const left = Math.min(room.widthMm - size.widthMm, room.heightMm - size.heightMm);
        if (left >= least) continue;
        least = left;
        best = { ...size, page, x: room.x, y: room.y };
      }
    }
    if (best !== undefined) return best;
  }
  return undefined;
}

/** The largest empty rectangles that are left when a card is put down. */
function leftOver(rooms: readonly Room[], card: CardPlace): Room[] {
  const left = rooms.flatMap((room) => (overlaps(room, card) ? cutAround(room, card) : [room]));
  return left.filter((room, i) => !left.some((other, k) => k !== i && holds(other, room, k < i)));
}

function overlaps(room: Room, card: CardPlace): boolean {
  return (
    card.x < room.x + room.widthMm &&
    card.x + card.widthMm > room.x &&
    card.y < room.y + room.heightMm &&
    card.y + card.heightMm > room.y
  );
}

function cutAround(room: Room, card: CardPlace): Room[] {
  const right = room.x + room.widthMm;
  const bottom = room.y + room.heightMm;
  const parts = [
    { ...room, widthMm: card.x - room.x },
    { ...room, x: card.x + card.widthMm, widthMm: right - card.x - card.widthMm },
    { ...room, heightMm: card.y - room.y },
    { ...room, y: card.y + card.heightMm, heightMm: bottom - card.y - card.heightMm },
  ];
  return parts.filter((part) => part.widthMm > 0 && part.heightMm > 0);
}

/** Of two equal rooms the earlier one counts as holding the other. */
function holds(outer: Room, inner: Room, isEarlier: boolean): boolean {
  const isIn =
    inner.x >= outer.x &&
    inner.y >= outer.y &&
    inner.x + inner.widthMm <= outer.x + outer.widthMm &&
    inner.y + inner.heightMm <= outer.y + outer.heightMm;
  const isEqual = isIn && inner.widthMm === outer.widthMm && inner.heightMm === outer.heightMm;
  return isIn && (!isEqual || isEarlier);
}
