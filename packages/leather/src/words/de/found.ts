import { term } from './terms.js';

const FOUND = {
  empty: 'nichts',
  missing: 'nichts',
  'an empty list': 'eine leere Liste',
  'a list of one entry': 'eine Liste mit einem Eintrag',
  'a group of keys': 'eine Gruppe von Schlüsseln',
  'the end of the text': 'das Ende des Textes',
  'the end of the file': 'das Ende der Datei',
};

/** What `quoteValue` says of a value that was found. */
export function foundGerman(found: string): string {
  return term(
    FOUND,
    found.replace(/^a list of (\d+) entries$/, (_, count: string) => `eine Liste mit ${count} Einträgen`),
  );
}
