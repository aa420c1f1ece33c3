import type { NEXT_EN } from '../en/next.js';
import type { Translated } from '../translated.js';

/** Was als Nächstes kommt, und der Weg dorthin. */
export const NEXT_DE: Translated<typeof NEXT_EN> = {
  'next.hide': 'Als Nächstes: die Haut, aus der geschnitten wird.',
  'next.go.hide': 'Zur Haut',
  'next.pieces': 'Als Nächstes: was daraus gemacht wird.',
  'next.go.pieces': 'Zu den Teilen',
  'next.lay': 'Als Nächstes: die Teile auf der Haut auslegen.',
  'next.go.lay': 'Zum Auslegen',
  'next.make': 'Als Nächstes: drucken, was du brauchst, dann schneiden.',
  'next.go.make': 'Zu den Vorlagen',
  'next.bench': 'Als Nächstes: schneiden, Teil für Teil.',
  'next.go.bench': 'An den Tisch',
};
