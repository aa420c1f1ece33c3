import type { CUT_FILE_SENTENCES } from '../cutfile.js';
import { ownerGerman, whoGerman as who } from './owner.js';
import type { German, Translation } from './say.js';

/** What making a cut file can find, in German. */
export function cutFileGerman({ de, count }: German) {
  const more = (n: number): string => (n === 1 ? '' : de` und ${n - 1} weitere`);
  return {
    'cut-nothing': (p) =>
      de`Aus Haut ${p.hide} ist nichts zu schneiden: Kein Teil, das noch nicht geschnitten ist, liegt darauf, und kein Grobzuschnitt war verlangt; eine andere Haut wählen.`,
    'kerf-wider-than-punch': (p) =>
      de`Ein Schnitt von ${p.kerfMm} mm Breite kann das Loch von ${p.diameterMm} mm in ${who(p)} nicht schneiden; eine kleinere Schnittbreite nehmen, oder von Hand lochen und das Loch aus dem Schnittmuster nehmen.`,
    'kerf-wider-than-opening': (p) =>
      de`Ein Schnitt von ${p.kerfMm} mm Breite passt nicht in einen Ausschnitt von ${who(p)} oder eine enge Stelle davon; eine kleinere Schnittbreite nehmen oder den Ausschnitt weiter zeichnen.`,
    'kerf-wider-than-gap': (p) =>
      de`Ein Schnitt von ${p.kerfMm} mm Breite passt nicht zwischen ${who(p)} und ${ownerGerman(p.other)}, die ${p.gapMm} mm auseinanderliegen; mit dieser Schnittbreite neu auslegen oder eine kleinere nehmen.`,
    'bridges-longer-than-path': (p) =>
      de`${p.count} Stege von ${p.widthMm} mm lassen mit ihren Schnitten nichts mehr zu schneiden von ${ownerGerman(p.what)}, dessen Linie ${p.lengthMm} mm lang ist; weniger oder schmalere Stege verlangen.`,
    'lead-in-no-room': (p) =>
      de`Neben ${ownerGerman(p.what)}${more(p.count)} hat kein Anschnitt Platz; der Schnitt beginnt dort auf der Linie: den Anschnitt kürzen oder mit größerem Abstand auslegen.`,
    'lane-laid-for-less-kerf': (p) =>
      de`Die Riemen der Bahn ${p.lane} wurden für eine Schnittbreite von ${p.laidMm} mm ausgelegt; mit ${p.kerfMm} mm geschnitten werden sie ${p.lessMm} mm schmaler: mit dieser Schnittbreite neu auslegen.`,
    'kerf-closes-a-bay': (p) =>
      de`Eine enge Stelle im Umriss von ${who(p)} ist zu eng für einen Schnitt von ${p.kerfMm} mm und bleibt, wie sie ist; von Hand fertigschneiden.`,
    'label-no-room': (p) =>
      de`${ownerGerman(p.what)}${more(p.count)}: kein Platz für einen Namen, darum ohne.`,
    'rough-cuts-left-out': (p) =>
      de`Haut ${p.hide} hat ${count(p.count, 'Grobzuschnitt, der', 'Grobzuschnitte, die')} erst ganz zu schneiden und vorzubereiten sind und in dieser Datei fehlen; für die Datei dieses Schritts zuerst die Grobzuschnitte wählen.`,
    'already-cut-left-out': (p) =>
      de`Weggelassen: ${count(p.count, 'Teil', 'Teile')} der Haut ${p.hide}, schon geschnitten oder verdorben.`,
  } satisfies Translation<typeof CUT_FILE_SENTENCES>;
}
