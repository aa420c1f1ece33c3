import type { NearestParams } from '../nearest.js';
import type { ORDER_SENTENCES, OrderPieceParams } from '../order.js';
import type { German, Translation } from './say.js';
import { term } from './terms.js';

const MEASURES = {
  diameter: 'Durchmesser',
  width: 'Breite',
  length: 'Länge',
  'diameter of the holes': 'Durchmesser der Löcher',
  'width of the slot': 'Breite des Schlitzes',
};

/** Orders, pieces and layouts that contradict themselves, in German. */
export function orderGerman({ de }: German) {
  const who = (p: OrderPieceParams): string => `„${p.piece}“ des Artikels „${p.article}“`;
  /** Closes the sentence, as its English twin. */
  const hint = (p: NearestParams): string =>
    p.known === ''
      ? '; es gibt keines.'
      : de`${p.near === undefined ? '' : ` (gemeint war „${p.near}“?)`}; es gibt ${p.known}.`;

  return {
    'order-article-twice': (p) =>
      de`Im Auftrag heißen zwei Artikel „${p.name}“; jedem einen eigenen Namen geben.`,
    'order-leather-twice': (p) =>
      de`Im Auftrag heißen zwei Leder „${p.name}“; jedem einen eigenen Namen geben.`,
    'order-piece-twice': (p) =>
      de`Im Artikel „${p.article}“ heißen zwei Teile „${p.name}“; jedem einen eigenen Namen geben.`,
    'order-hide-id-twice': (p) =>
      de`Die Häute in „${p.first}“ und „${p.second}“ haben dieselbe Kennung „${p.hide}“; jeder eine eigene geben, damit eine Auslegung sie unterscheiden kann.`,
    'suit-hide-id-twice': (p) =>
      de`Die Häute in „${p.first}“ und „${p.second}“ haben dieselbe Kennung „${p.hide}“; jeder eine eigene geben, damit man sie unterscheiden kann.`,
    'hide-given-twice': (p) => de`Eine andere Haut mit der Kennung „${p.hide}“ ist schon da.`,
    'article-without-pieces': (p) => de`Der Artikel „${p.article}“ hat keine Teile.`,
    'piece-leather-unknown': (p) =>
      de`Das Teil ${who(p)} soll aus dem Leder „${p.leather}“ sein, das im Auftrag nicht steht${hint(p)}`,
    'leather-without-hides': (p) =>
      de`Das Leder „${p.leather}“ hat keine Häute, das Teil ${who(p)} soll aber daraus geschnitten werden; dort eine Hautdatei angeben.`,
    'leather-hide-not-given': (p) =>
      de`Das Leder „${p.leather}“ soll aus „${p.file}“ geschnitten werden, und diese Datei fehlt${hint(p)}`,
    'article-thread-unknown': (p) =>
      de`Der Artikel „${p.article}“ wird mit dem Faden „${p.thread}“ genäht, der weder bei ihm noch beim Auftrag unter „threads“ steht${hint(p)}`,
    'piece-thread-unknown': (p) =>
      de`Das Teil ${who(p)} wird mit dem Faden „${p.thread}“ genäht, der weder bei ihm noch beim Auftrag unter „threads“ steht${hint(p)}`,
    'piece-count-bad': (p) =>
      de`Das Teil ${who(p)} hat die Stückzahl ${p.count}; es muss eine ganze Zahl ab 0 sein.`,
    'piece-mirrored-bad': (p) =>
      de`Vom Teil ${who(p)} sollen ${p.mirrored} von ${p.count} gespiegelt sein; mehr gespiegelte als Stücke gehen nicht.`,
    'piece-layers-bad': (p) =>
      de`Das Teil ${who(p)} hat ${p.layers} Lagen; es muss eine ganze Zahl ab 1 sein.`,
    'seam-piece-unknown': (p) =>
      de`Das Teil ${who(p)} wird an „${p.wanted}“ genäht, im Artikel gibt es dieses Teil aber nicht${hint(p)}`,
    'beside-piece-unknown': (p) =>
      de`Im Artikel „${p.article}“ soll „${p.wanted}“ neben einem anderen Teil liegen, im Artikel gibt es dieses Teil aber nicht${hint(p)}`,
    'seam-line-unknown': (p) =>
      de`Das Teil ${who(p)} wird entlang seiner Linie „${p.line}“ genäht, hat aber keine Nahtlinie dieses Namens${hint(p)}`,
    'face-line-unknown': (p) =>
      de`Die Sichtfläche des Teils „${p.piece}“ soll innerhalb der Linie „${p.line}“ liegen, es hat aber keine geschlossene Linie dieses Namens${hint(p)}`,
    'lane-not-straight': (p) =>
      de`Das Teil ${who(p)} soll in einer Bahn von Riemen geschnitten werden, ist aber nicht nach Maßen als Riemen oder Rechteck gezeichnet; so zeichnen oder die Bahn weglassen.`,
    'allowance-bad': (p) =>
      de`Die Zugabe des Teils „${p.piece}“ ist ${p.allowanceMm} mm; es müssen 0 mm oder mehr sein.`,

    'pattern-without-pieces': (p) =>
      de`In dieser Datei wurde kein Teil gefunden, das Teil ${who(p)} soll aber daraus kommen; es braucht eine geschlossene Schnittlinie.`,
    'pattern-name-twice': (p) =>
      de`In dieser Datei heißen ${p.count} Teile „${p.wanted}“; für das Teil ${who(p)} ist nicht klar, welches gemeint ist. Jedem einen eigenen Namen geben.`,
    'pattern-piece-unknown': (p) =>
      de`Das Teil ${who(p)} soll „${p.wanted}“ sein, das es in dieser Datei nicht gibt${hint(p)}`,
    'pattern-outline-crosses': (p) =>
      de`Die Schnittlinie von „${p.wanted}“ schneidet sich hier selbst, darum kann das Teil ${who(p)} nicht daraus werden; die Linie in der Zeichnung auseinanderziehen.`,

    'drawn-not-positive': (p) =>
      de`Das Teil „${p.piece}“ lässt sich nicht zeichnen: ${term(MEASURES, p.what)} muss mehr als 0 mm sein.`,
    'drawn-corners-too-large': (p) =>
      de`Das Teil „${p.piece}“ lässt sich nicht zeichnen: Ein Eckenradius von ${p.radiusMm} mm passt nicht in ${p.widthMm} × ${p.lengthMm} mm.`,
    'drawn-ends-too-long': (p) =>
      de`Das Teil „${p.piece}“ lässt sich nicht zeichnen: Seine zwei Enden sind länger als seine Länge von ${p.lengthMm} mm.`,
    'drawn-holes-outside': (p) =>
      de`Das Teil „${p.piece}“ lässt sich nicht zeichnen: Seine Reihe von ${p.holes} Löchern liegt nicht im Riemen.`,
    'drawn-slot-short': (p) =>
      de`Das Teil „${p.piece}“ lässt sich nicht zeichnen: Sein Schlitz ist kürzer als breit.`,
    'drawn-slot-outside': (p) =>
      de`Das Teil „${p.piece}“ lässt sich nicht zeichnen: Sein Schlitz liegt nicht im Riemen.`,

    'keep-piece-unknown': (p) =>
      de`In der Auslegung, die bleiben soll, liegt ${who(p)} fest, im Auftrag gibt es dieses Teil aber nicht; aus der Auslegung nehmen oder in den Auftrag zurücktun.`,
    'piece-not-ready': (p) =>
      de`Im Artikel „${p.article}“ ist kein Teil „${p.piece}“ zum Auslegen vorbereitet${hint(p)}`,
    'layout-piece-not-held': (p) => de`Die Auslegung legt das Teil ${who(p)} auf, enthält es aber nicht.`,
  } satisfies Translation<typeof ORDER_SENTENCES>;
}
