/** Words that the packages use as names of kinds, in German; a person's own words stay as she wrote them. */
type Terms = Readonly<Record<string, string>>;

/** The term in German, or the word itself where it is somebody's own. */
export function term(terms: Terms, word: string): string {
  return Object.hasOwn(terms, word) ? terms[word]! : word;
}

/** "shoulder or belly", "a, b and c": each of the words in German, joined as German joins them. */
export function termList(terms: Terms, words: string): string {
  return words
    .split(/(, | or | and )/)
    .map((part) => (part === ' or ' ? ' oder ' : part === ' and ' ? ' und ' : term(terms, part)))
    .join('');
}

/** A list of names that are not to be translated, only the word that joins the last one. */
export function joined(names: string): string {
  return termList({}, names);
}

export const CUTS: Terms = {
  'whole hide': 'ganze Haut',
  side: 'halbe Haut',
  back: 'halbe Haut ohne Bauch',
  bend: 'halber Croupon',
  butt: 'Croupon',
  shoulder: 'Hals',
  'double shoulder': 'Doppelhals',
  belly: 'Bauch (Flämen)',
  panel: 'Zuschnitt',
  offcut: 'Reststück',
};

export const ZONES: Terms = {
  bend: 'Kernstück',
  shoulder: 'Hals und Schulter',
  belly: 'Bauch',
  flank: 'Flanke',
  neck: 'Nacken',
  shank: 'Klaue',
};

export const TANNAGES: Terms = {
  vegetable: 'pflanzlich gegerbt',
  'vegetable tanned': 'pflanzlich gegerbt',
  chrome: 'chromgegerbt',
  'chrome tanned': 'chromgegerbt',
  oil: 'sämisch gegerbt',
  combination: 'kombiniert gegerbt',
  alum: 'weißgegerbt (Alaun)',
  brain: 'hirngegerbt',
  aldehyde: 'aldehydgegerbt',
  rawhide: 'Rohhaut',
  bonded: 'Lederfaserstoff',
};

export const TEMPERS: Terms = { soft: 'weich', medium: 'mittel', firm: 'fest', hard: 'hart' };

export const ROLES: Terms = {
  cut: 'Schnittlinie',
  'cut-out': 'Ausschnitt',
  stitch: 'Nahtlinie',
  fold: 'Falzlinie',
  skive: 'Schärflinie',
  cement: 'Klebelinie',
  notch: 'Kerbe',
  punch: 'Loch',
  face: 'Rand der Sichtfläche',
  direction: 'Richtungspfeil',
  mirror: 'Spiegellinie',
};

export const FLAWS: Terms = {
  hole: 'Loch',
  cut: 'Schnitt',
  brand: 'Brandzeichen',
  scar: 'Narbe',
  bite: 'Insektenstich',
  vein: 'Ader',
  wrinkle: 'Mastfalte',
  'loose grain': 'loser Narben',
  stain: 'Fleck',
};

/** What lies beside a hide in a photo: "sheet 3", "rectangle". */
export function referenceTerm(name: string): string {
  const sheet = /^sheet (\d+)$/.exec(name);
  if (sheet !== null) return `Blatt ${sheet[1]!}`;
  return term(
    {
      rectangle: 'Rechteck',
      rules: 'Stahllineale',
      card: 'Karte',
      'the printed sheets': 'die gedruckten Blätter',
    },
    name,
  );
}

/** "a, b and 3 more": the end of a list that was cut short. */
export function cutShort(list: string): string {
  return list.replace(/ and (\d+) more$/, ' und $1 weitere').replace(/ and others$/, ' und andere');
}

/** "did you mean", closed, where a name is near. */
export function nearHint(near: string | undefined): string {
  return near === undefined ? '' : ` Gemeint war „${near}“?`;
}
