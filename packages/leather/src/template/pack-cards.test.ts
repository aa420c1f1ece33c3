import { createRandom } from '@hidebound/geometry';
import { expect, test } from 'vitest';
import { packCards } from './pack-cards.js';
import type { Card } from './pack-cards.js';

const ROOM = { widthMm: 190, heightMm: 240 };

function card(id: string, widthMm: number, heightMm: number): Card {
  return {
    id,
    sizes: [
      { widthMm, heightMm, turnDeg: 0 },
      { widthMm: heightMm, heightMm: widthMm, turnDeg: 90 },
    ],
  };
}

test('when cards of any size are packed, none leaves the room or comes nearer to another than the gap', () => {
  for (let seed = 1; seed <= 20; seed++) {
    const random = createRandom(seed);
    const cards = Array.from({ length: 25 }, (_, i) =>
      card(`card ${i}`, 10 + random.next() * 120, 10 + random.next() * 200),
    );
    const { packed, tooLarge } = packCards(cards, ROOM, 5);
    expect(packed.length + tooLarge.length).toBe(cards.length);
    for (const a of packed) {
      expect(a.x + a.widthMm).toBeLessThanOrEqual(ROOM.widthMm + 1e-6);
      expect(a.y + a.heightMm).toBeLessThanOrEqual(ROOM.heightMm + 1e-6);
      for (const b of packed) {
        if (a === b || a.page !== b.page) continue;
        const apartX = Math.max(b.x - a.x - a.widthMm, a.x - b.x - b.widthMm);
        const apartY = Math.max(b.y - a.y - a.heightMm, a.y - b.y - b.heightMm);
        expect(Math.max(apartX, apartY), `seed ${seed}`).toBeGreaterThanOrEqual(5 - 1e-6);
      }
    }
  }
});

test('when four cards just fit on a page, they share it', () => {
  const cards = ['a', 'b', 'c', 'd'].map((id) => card(id, 92, 117));
  expect(packCards(cards, ROOM, 5)).toMatchObject({ pages: 1, tooLarge: [] });
});

test('when a card fits only turned, it is turned; when it does not fit at all, it is given back', () => {
  const { packed, tooLarge } = packCards([card('wide', 230, 40), card('long', 400, 40)], ROOM, 5);
  expect(packed).toMatchObject([{ id: 'wide', turnDeg: 90 }]);
  expect(tooLarge.map(({ id }) => id)).toEqual(['long']);
});
