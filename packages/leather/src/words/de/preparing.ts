import type { PREPARING_SENTENCES } from '../preparing.js';
import type { German, Translation } from './say.js';
import { TANNAGES, joined, term } from './terms.js';

const WORKED = {
  tooled: 'punziert',
  moulded: 'geformt',
  'tooled and moulded': 'punziert und geformt',
};

/** How leather is prepared, in German. */
export function preparingGerman({ de }: German) {
  const tannage = (word: string): string => term(TANNAGES, word);
  return {
    'coverage-reversed': (p) =>
      de`Die Ergiebigkeit von „${p.product}“ läuft von ${p.from} bis ${p.to} mL je m²; die kleinere Zahl kommt zuerst.`,
    'coverage-not-lighter': (p) =>
      de`Die Flasche „${p.product}“ wog vorher ${p.before} g und nachher ${p.after} g; nach einem Auftrag muss sie leichter sein.`,

    'prepare-block-cut': (p) =>
      de`Aus dem Grobzuschnitt „${p.id}“ sind schon Teile geschnitten, darum fehlt er im Plan.`,
    'prepare-hide-cut': (p) =>
      de`Die Haut „${p.hide}“ (${p.file}) gilt als zerschnitten, von ihr ist nichts mehr vorzubereiten; auf dem Vorhandenen neu auslegen.`,
    'prepare-hide-changed': (p) =>
      de`Die Haut „${p.hide}“ (${p.file}) wurde nach dieser Auslegung geändert; neu auslegen, dann vorbereiten.`,
    'prepare-margin-small': (p) =>
      de`${p.count === 1 ? 'Der Grobzuschnitt' : 'Die Grobzuschnitte'} ${joined(p.ids)} ${p.count === 1 ? 'hat' : 'haben'} ${p.hasMm} mm Zugabe um die Teile; Leder arbeitet, wenn es nass wird und trocknet, darum den Teilen von „${p.leather}“ eine Zugabe von mindestens ${p.needMm} mm geben.`,
    'prepare-not-tooled': (p) =>
      de`„${p.leather}“ soll punziert werden, dieses Leder hält aber keine Punzierung (${tannage(p.tannage)}); pflanzlich gegerbtes nehmen.`,
    'prepare-not-moulded': (p) =>
      de`„${p.leather}“ soll geformt werden, dieses Leder behält aber keine Form (${tannage(p.tannage)}); pflanzlich gegerbtes nehmen.`,
    'prepare-no-water': (p) =>
      de`„${p.leather}“ wird bei dieser Vorbereitung nass, und Wasser zieht die Gerbung heraus (${tannage(p.tannage)}); zuerst an einem Rest probieren.`,
    'prepare-dyed-through': (p) =>
      de`„${p.leather}“ nimmt in der Werkstatt Farbe schlecht an (${tannage(p.tannage)}) und färbt vielleicht ab; zuerst an einem Rest probieren.`,
    'prepare-full-of-oil': (p) =>
      de`„${p.leather}“ ist ab Werk voller Öl (${tannage(p.tannage)}): Es braucht kein Fett, und Farbe hält schlecht; zuerst an einem Rest probieren.`,
    'prepare-on-finished': (p) =>
      de`„${p.leather}“ ist zugerichtet gekauft (${p.finish}); Farbe dringt durch keine Zurichtung und färbt ab. Nicht zugerichtetes Leder nehmen oder zuerst an einem Rest probieren.`,
    'prepare-fed-later': (p) =>
      p.isLater === 1
        ? de`„${p.leather}“ bekommt vor dieser Farbe kein „${p.product}“, denn sie hielte dann nicht; es kommt danach.`
        : de`„${p.leather}“ bekommt kein „${p.product}“: Das Leder ist ab Werk voller Öl.`,
    'prepare-base-unknown': (p) =>
      de`Im Auftrag steht nicht, worauf die Farbe „${p.dye}“ für „${p.leather}“ beruht; Spiritus, Öl, Wasser oder Pigment als „dyeBase: spirit“, „oil“, „water“ oder „pigment“ hineinschreiben. Bis dahin gelten die längsten Zeiten.`,
    'prepare-thinner-unknown': (p) =>
      de`Womit die Farbe „${p.dye}“ verdünnt wird, steht nicht im Auftrag; nur das nehmen, was auf ihrem Etikett steht.`,
    'prepare-coverage-unknown': (p) =>
      de`Wie weit „${p.product}“ reicht, hat niemand gemessen, darum steht keine Menge da; die Flasche vor und nach einem Auftrag wiegen und in workshop.yaml unter „coverages“ eintragen.`,
    'prepare-worked-without-margin': (p) =>
      de`Teile von „${p.leather}“ auf ${p.hide} haben keine Zugabe, obwohl sie bearbeitet werden (${term(WORKED, p.worked)}); sie lassen sich nicht größer zuschneiden. Ihnen im Auftrag eine Zugabe geben.`,
    'prepare-others-on-hide': (p) =>
      de`Auf ${p.hide}, das ganz für „${p.leather}“ vorbereitet wird, liegen Teile anderer Leder; sie vorher ausschneiden, oder den Teilen von „${p.leather}“ eine Zugabe geben, damit sie Grobzuschnitte bekommen.`,
    'prepare-no-room-for-swatch': (p) =>
      de`Im Abfall ist kein Platz für ein Probestück bei ${p.where}; eines aus der Zugabe oder aus einem Reststück derselben Haut schneiden.`,
  } satisfies Translation<typeof PREPARING_SENTENCES>;
}
