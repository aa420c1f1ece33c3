import type { BrokenParams, LAYOUT_SENTENCES, UnplacedParams } from '../leather.js';
import { whoGerman as who } from './owner.js';
import type { German, Translation } from './say.js';
import { term } from './terms.js';

const GUESSES = {
  backbone: 'Rückenlinie',
  cut: 'Art der Haut',
  'backbone and cut': 'Rückenlinie und Art der Haut',
};
const ENDS = { head: 'Kopf', tail: 'Schwanz', left: 'links', right: 'rechts' };

/** What laying pieces on hides can find, in German. */
export function layoutGerman({ de, count }: German) {
  const missing = (p: UnplacedParams): string =>
    p.count === undefined || p.count === 1 ? who(p) : de`${who(p)} (${p.count} Stück)`;
  const figures = (p: BrokenParams, unit: string): string =>
    p.measured === undefined || p.required === undefined
      ? ''
      : de` (${p.measured}${unit}, verlangt sind ${p.required}${unit})`;
  const turned = (p: BrokenParams): string =>
    p.measured === undefined || p.required === undefined
      ? ''
      : de` (um ${p.measured}°, höchstens ${p.required}° sind erlaubt)`;
  /** A distance below zero is how far one reaches into the other. */
  const reach = (p: BrokenParams): string | undefined =>
    p.measured !== undefined && p.measured < 0 ? de` um ${-p.measured} mm` : undefined;
  const party = (p: BrokenParams, otherwise: string): string => de`${p.other ?? otherwise}`;
  const what = (p: BrokenParams): string => de`${p.what}`;

  return {
    'unplaced-larger-than-every-sheet': (p) =>
      de`${missing(p)} ist größer als jede Haut dieses Leders; eine größere Haut nehmen oder das Teil teilen.`,
    'unplaced-no-sheet-allowed': (p) =>
      de`${missing(p)} darf aus keiner der vorhandenen Häute kommen; dem Auftrag eine Haut dieses Leders geben.`,
    'unplaced-no-room': (p) =>
      de`Für ${missing(p)} fand sich kein Platz; länger suchen lassen, eine Haut dazunehmen oder weniger Sätze verlangen.`,
    'unplaced-no-leather-good-enough': (p) =>
      de`Keine Stelle der Häute ist in Aussehen, Festigkeit und Partie gut genug für ${missing(p)}${p.needs === undefined ? '' : de` (verlangt: ${p.needs})`}; eine bessere Haut nehmen oder vom Teil weniger verlangen.`,
    'unplaced-direction-unknown': (p) =>
      de`${missing(p)} muss der Richtung folgen, in der sich das Leder am wenigsten dehnt, und die Haut zeigt sie nicht; Rückenlinie oder Striche einzeichnen.`,
    'unplaced-thickness': (p) =>
      de`Keine Haut hat die Stärke, die ${missing(p)} braucht; eine dazunehmen oder das Schärfen erlauben.`,
    'unplaced-set-incomplete': (p) =>
      de`${missing(p)} blieb weg, weil der Satz nicht ganz ausgelegt werden konnte; länger suchen lassen oder eine Haut dazunehmen.`,
    'unplaced-not-tried': (p) =>
      de`${missing(p)} kam vor dem Anhalten nicht mehr an die Reihe; länger suchen lassen.`,

    'broken-gap': (p) =>
      reach(p) === undefined
        ? de`${what(p)} liegt zu nah an ${party(p, 'einem anderen Teil')}${figures(p, ' mm')}; auseinanderrücken.`
        : de`${what(p)} liegt${reach(p)} über ${party(p, 'einem anderen Teil')}; auseinanderrücken.`,
    'broken-edge': (p) =>
      reach(p) === undefined
        ? de`${what(p)} liegt zu nah am Rand der Haut oder eines Lochs${figures(p, ' mm')}; nach innen rücken.`
        : de`${what(p)} reicht${reach(p)} über den Rand der Haut oder eines Lochs; nach innen rücken.`,
    'broken-void': (p) =>
      reach(p) === undefined
        ? de`${what(p)} liegt zu nah an einer Stelle, die nie verwendet wird (${party(p, 'ein Fehler')})${figures(p, ' mm')}; wegrücken.`
        : de`${what(p)} reicht${reach(p)} in eine Stelle, die nie verwendet wird (${party(p, 'ein Fehler')}); wegrücken.`,
    'broken-looks': (p) =>
      de`${what(p)} liegt auf Leder, das nicht schön genug ist (${party(p, 'ein Fehler oder eine Partie')}); wegrücken.`,
    'broken-strength': (p) =>
      de`${what(p)} trägt Last und liegt auf schwachem Leder (${party(p, 'ein Fehler oder eine Partie')}); wegrücken.`,
    'broken-zone': (p) => de`${what(p)} liegt außerhalb der Partien, aus denen es kommen darf; wegrücken.`,
    'broken-angle': (p) => de`${what(p)} ist aus seiner Richtung gedreht${turned(p)}; zurückdrehen.`,
    'broken-thickness': (p) =>
      de`${what(p)} liegt auf Leder der falschen Stärke${figures(p, ' mm')}; wegrücken.`,
    'broken-mirrored': (p) =>
      de`${what(p)} ist gespiegelt, wo es nicht sein soll, oder umgekehrt; das andere auslegen.`,
    'broken-pair': (p) =>
      de`${what(p)} und ${party(p, 'das Spiegelbild')} liegen nicht dort, wo sie sich gleich dehnen; eines davon verrücken.`,
    'broken-count': (p) =>
      de`${what(p)} liegt öfter oder seltener, als der Auftrag verlangt${figures(p, '-mal')}; neu auslegen.`,
    'broken-set': (p) => de`${what(p)} liegt nicht auf einer Haut mit dem Rest des Satzes; verrücken.`,
    'broken-lot': (p) =>
      de`${what(p)} liegt auf einer Haut einer anderen Charge als der Rest des Satzes, die Farbe kann abweichen; verrücken.`,
    'broken-sheet': (p) => de`${what(p)} liegt auf einer Haut, die nicht von seinem Leder ist; verrücken.`,
    'broken-locked': (p) =>
      de`${what(p)} war festgesteckt und liegt nicht mehr dort; an den Platz zurücklegen.`,
    'broken-lane': (p) =>
      de`${what(p)} hält ${party(p, 'die Bahn')} nicht ein: Die Riemen einer Bahn liegen in ihren Reihen darin, alles andere außerhalb; die Bahn neu auslegen.`,
    'broken-rough-cut': (p) =>
      de`${what(p)} hält ${party(p, 'den Grobzuschnitt')} nicht ein: Seine Teile liegen samt Zugabe darin, alles andere außerhalb; neu auslegen.`,
    'broken-finite': (p) =>
      de`${what(p)} hat einen Platz oder Winkel, der keine Zahl ist, oder steht gar nicht im Auftrag; richtigstellen oder herausnehmen.`,

    'arrow-guessed': (p) =>
      de`${who(p)} hat keinen Richtungspfeil, darum gilt die lange Achse (${Math.round(p.angleDeg * 10) / 10}° im Uhrzeigersinn von der Waagrechten der Zeichnung); einen Pfeil einzeichnen oder dem Teil im Auftrag einen geben, falls das nicht stimmt.`,
    'zones-not-drawn': (p) =>
      de`Auf Haut ${p.hide} sind keine Partien eingezeichnet; Teile, die nur aus bestimmten Partien kommen dürfen, können dort nicht daran gehalten werden. Die Partien einzeichnen.`,
    'hide-already-cut': (p) =>
      de`Haut ${p.hide} gilt als zerschnitten; nachsehen, ob wirklich dieses Leder gemeint ist.`,
    'candidates-not-confirmed': (p) =>
      de`Haut ${p.hide} hat ${count(p.count, 'möglichen Fehler, den', 'mögliche Fehler, die')} noch niemand bestätigt hat; vor dem Schneiden ansehen.`,
    'guesses-not-confirmed': (p) =>
      de`Aus dem Foto der Haut ${p.hide} geraten und von niemandem bestätigt: ${term(GUESSES, p.guesses)}; vor dem Schneiden ansehen.`,
    'thickness-not-known': (p) =>
      de`Die Stärke der Haut ${p.hide} ist nicht bekannt; Teile einer bestimmten Stärke können dort nicht daran gehalten werden. Nachmessen.`,
    'use-from-guessed': (p) =>
      de`Haut ${p.hide} hat keine Rückenlinie, darum ist das Ende, das zuerst verwendet wird (${term(ENDS, p.useFrom)}), nach der langen Achse geraten; die Rückenlinie einzeichnen oder einen Winkel angeben.`,

    'layout-hide-missing': (p) =>
      de`Haut ${p.hide} (${p.file}) ist nicht da, darum lässt sich nichts prüfen, was darauf liegt; die Datei dazugeben.`,
    'layout-hide-changed': (p) =>
      de`Haut ${p.hide} (${p.file}) wurde nach dieser Auslegung geändert; neu auslegen oder die alte Datei zurückholen.`,
    'layout-piece-missing': (p) =>
      de`${who(p)} steht im Auftrag der Auslegung, aber nicht unter ihren Teilen; neu auslegen.`,
    'layout-piece-twice': (p) => de`${who(p)} steht zweimal unter den Teilen der Auslegung; neu auslegen.`,
    'layout-piece-broken': (p) => de`Der gespeicherte Umriss von ${who(p)} umschließt nichts; neu auslegen.`,
    'layout-piece-hash': (p) =>
      de`Die gespeicherte Form von ${who(p)} passt nicht zu ihrer Prüfsumme: Sie wurde nach der Auslegung geändert; neu auslegen.`,
    'layout-piece-region': (p) =>
      de`Die Umrisse von ${who(p)} folgen nicht aus den Schnittlinien: Sie wurden nach der Auslegung geändert; neu auslegen.`,
    'layout-piece-face': (p) =>
      de`Die Sichtfläche von ${who(p)} folgt nicht aus den Linien: Sie wurde nach der Auslegung geändert; neu auslegen.`,
    'layout-piece-arrow': (p) =>
      de`Die Richtung von ${who(p)} folgt nicht aus dem Pfeil: Sie wurde nach der Auslegung geändert; neu auslegen.`,
    'layout-yield-differs': (p) =>
      de`Die Ausbeute von ${p.hide} nennt für ${p.figure} ${p.says}, die Teile ergeben aber ${p.is}; die Zahlen neu rechnen.`,
  } satisfies Translation<typeof LAYOUT_SENTENCES>;
}
