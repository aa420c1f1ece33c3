import type { TEMPLATE_SENTENCES } from '../template.js';
import type { German, Translation } from './say.js';
import { joined, term } from './terms.js';

const NOTHING = { 'no piece and no edge was given': 'Weder Teil noch Rand ist angegeben' };

/** "a roll of 300 mm". */
function paperGerman(paper: string): string {
  return paper.replace(/^an? roll of /i, 'eine Rolle von ');
}

/** Why full-scale templates can't be made as asked, in German. */
export function templateGerman({ de }: German) {
  return {
    'template-paper': (p) =>
      de`Ein Papier ${p.found} gibt es nicht; ${joined(p.known)} nehmen, oder eine Rolle nach ihrer Breite.`,
    'template-roll': (p) =>
      de`Eine Rolle kann nicht ${p.widthMm} mm breit sein; eine von ${p.leastMm} bis ${p.mostMm} mm nehmen.`,
    'template-margin': (p) =>
      de`Ein Rand von ${p.marginMm} mm liegt in dem, was Drucker leer lassen; mindestens ${p.leastMm} mm lassen.`,
    'template-sheet-too-small': (p) =>
      de`Für Ränder von ${p.marginMm} mm und Prüfbalken von 100 mm ist hier kein Platz: ${paperGerman(p.paper)}. Mindestens ${p.widthMm} × ${p.heightMm} mm nehmen oder kleinere Ränder.`,
    'template-overlap': (p) =>
      de`Seiten können sich nicht um ${p.overlapMm} mm überlappen (${paperGerman(p.paper)}); ${p.leastMm} bis ${p.mostMm} mm nehmen, damit die Passmarken Platz finden.`,
    'template-too-many-pages': (p) =>
      de`Das würden ${p.pages} Seiten (${paperGerman(p.paper)}), höchstens ${p.most} werden gemacht; einen größeren Bogen nehmen.`,
    'template-nothing': (p) => de`Es gibt nichts zu zeichnen: ${term(NOTHING, p.what)}.`,
  } satisfies Translation<typeof TEMPLATE_SENTENCES>;
}
