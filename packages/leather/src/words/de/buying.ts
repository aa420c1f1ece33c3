import type { BUYING_SENTENCES } from '../buying.js';
import type { German, Translation } from './say.js';
import { CUTS, joined, term } from './terms.js';

const WHY = {
  'no room was left for it': 'es war kein Platz mehr dafür',
  'it is larger than every one of them': 'es ist größer als jede davon',
  'no place on them is good enough in looks, strength and zone':
    'keine Stelle darauf ist in Aussehen, Festigkeit und Partie gut genug',
  'their direction is not known': 'ihre Richtung ist nicht bekannt',
  'none is of its thickness': 'keine hat seine Stärke',
};

/** Buying, in German. */
export function buyingGerman({ de }: German) {
  return {
    'buy-needs-sets': (p) =>
      de`Der Artikel „${p.article}“ soll so oft gemacht werden, wie er passt; ohne Haut lässt sich da nichts rechnen. Eine Zahl von Sätzen angeben.`,
    'nothing-to-buy': () =>
      'Der Auftrag verlangt kein einziges Teil, also ist nichts zu kaufen; seinen Artikeln Sätze und seinen Teilen Stückzahlen geben.',
    'lanes-in-open-sets': () =>
      'Riemen, die nebeneinander liegen, lassen sich nur in einer festen Zahl von Sätzen auslegen; dem Auftrag eine Zahl von Sätzen geben und alle auslegen lassen.',
    'leather-without-pieces': (p) =>
      de`Aus dem Leder „${p.leather}“ ist kein Teil zu schneiden, darum wird keines gekauft.`,
    'offer-of-unknown-cut': (p) =>
      de`Das Angebot „${p.offer}“ ist von der Art „${p.cut}“, die in der Tabelle der Häute fehlt; eine ihrer Zeilen nennen oder unter „cuts“ eine ergänzen.`,
    'offer-of-unknown-grade': (p) =>
      de`Das Angebot „${p.offer}“ ist von der Sorte „${p.grade}“, die in der Tabelle der Sorten fehlt; eine ihrer Zeilen nennen oder unter „grades“ eine ergänzen.`,
    'no-offers': (p) =>
      de`Die Werkstattdatei hat keine Angebote, darum stehen für ${joined(p.leather)} übliche Häute ein, ohne Preise; unter „offers“ aufzählen, was zu kaufen ist.`,
    'no-offer-suits': (p) =>
      de`Kein Angebot der Werkstattdatei passt für ${joined(p.leather)} in Gerbung, Farbe und Stärke, darum stehen übliche Häute ein, ohne Preise; ein passendes Angebot ergänzen.`,
    'offer-thickness-not-known': (p) =>
      de`Das Angebot „${p.offer}“ nennt keine Stärke, Teile aus ${joined(p.leather)} verlangen aber eine; vor dem Kauf messen.`,
    'offer-thickness-at-risk': (p) =>
      de`Das Angebot „${p.offer}“ kann stellenweise zu dick oder zu dünn sein für ${p.pieces}; vor dem Kauf messen, eine engere Spanne verlangen oder ${p.count === 1 ? 'das Teil' : 'die Teile'} schärfen lassen.`,
    'piece-fits-no-offer': (p) =>
      de`„${p.piece}“ von ${p.article} fand auf keiner der Häute Platz, die für ${joined(p.leather)} angeboten werden (${term(WHY, p.why)}); ${p.cut === '' ? 'keine Art der Tabelle fasst es, also teilen' : `diese Art würde es fassen: ${term(CUTS, p.cut)}`}.`,
    'piece-misses-offer': (p) =>
      de`„${p.piece}“ von ${p.article} fand in ${p.trials} von ${p.of} Probeauslegungen auf „${p.offer}“ keinen Platz.`,
  } satisfies Translation<typeof BUYING_SENTENCES>;
}
