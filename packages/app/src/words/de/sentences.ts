import { intakeGerman } from '@hidebound/intake/words-de';
import { sentenceFor } from '@hidebound/leather';
import type { SentenceTable, SuitRemark } from '@hidebound/leather';
import { germanLanguage } from '@hidebound/leather/words-de';
import type { WriteFinding } from '../told.js';

/** Was beim Zeichnen nicht geht. */
const RENDER: Readonly<Record<string, string>> = {
  'bad-font': 'Eine Schriftdatei lässt sich nicht als TrueType-Schrift lesen.',
  'unknown-hide': 'In der Auslegung liegen Teile auf einer Haut, die im Auftrag fehlt.',
  'unknown-piece': 'In der Auslegung liegt ein Teil, dessen Form sie nicht enthält; neu auslegen.',
  'empty-hide': 'Der Umriss einer Haut umschließt keine Fläche.',
  'nothing-to-draw': 'So ausgewählt, gibt es keine Schablone zu zeichnen.',
};

/** Was die App selbst meldet. */
const APP: Readonly<Record<string, string>> = {
  'worker-failed': 'Ein Stück der App ließ sich nicht laden.',
  'no room': 'Es ist kein Platz mehr.',
  'out of reach': 'Der Ort, an dem der Auftrag liegt, antwortet nicht.',
  'not allowed': 'Der Tisch gibt es nicht her; die Adresse öffnen, die er zeigt.',
  'no key': 'Dieser Tisch braucht seine ganze Adresse.',
  'too large': 'Die Datei ist zu groß.',
  'not written': 'Eine Datei ließ sich nicht schreiben.',
};

/** Was die Pakete melden, auf Deutsch. */
export function germanFindings(locale: string): WriteFinding {
  const leather = germanLanguage(locale);
  const intake: SentenceTable = intakeGerman(locale);
  return (finding) => {
    const { of, code, params } = finding;
    if (of === 'render') return RENDER[code];
    if (of === 'app') return APP[code];
    if (of === 'suit remark') return leather.suitRemark({ code: code as SuitRemark['code'], params });
    const tables = of === 'leather' ? [leather.sentences] : [intake, leather.sentences];
    const sentences = tables.find((table) => Object.hasOwn(table, code));
    return sentences && sentenceFor(finding, [], { sentences, place: leather.place });
  };
}
