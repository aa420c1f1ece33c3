import type { German } from '@hidebound/leather/words-de';
import type { Sentence } from '../sentence.js';

/** PDF files, in German. */
export function pdfGerman({ de, count: counted }: German) {
  const one = (count: string | number | undefined): boolean => Number(count) === 1;
  return {
    'pdf-broken': () =>
      'Die Datei ist kein ganzes PDF (beschädigt oder zu früh zu Ende); noch einmal kopieren oder sichern, oder in einem Betrachter öffnen und in ein neues PDF drucken.',
    'pdf-encrypted': () =>
      'Die Datei ist mit einem Passwort gesperrt und verbietet das Lesen; drucken und die Seiten fotografieren oder scannen, oder den Hersteller um eine offene Fassung bitten.',
    'pdf-forbids-reading': () =>
      'Der Hersteller der Datei verbietet, etwas daraus zu entnehmen; drucken und die Seiten fotografieren oder scannen, oder ihn um eine offene Fassung bitten.',
    'pdf-locked-too-large': ({ megabytes }) =>
      de`Die Datei ist gesperrt, und ein Stück von ${megabytes} MB darin lässt sich vor dem Entpacken nicht ansehen; den Hersteller um eine offene Fassung bitten.`,
    'pdf-no-pages': () => 'Das PDF hat keine Seiten; in dem Programm, aus dem es kommt, neu sichern.',
    'pdf-no-such-page': ({ page, pages }) =>
      de`Verlangt ist Seite ${page}, die Datei hat aber ${counted(pages, 'Seite', 'Seiten')}; Seitenzahlen von 1 bis ${pages} nehmen.`,
    'pdf-too-many-pages': ({ pages, limit }) =>
      de`Das PDF hat ${pages} Seiten, ein Schnittmuster höchstens ${limit}; die Seiten damit als eigene Datei sichern.`,
    'pdf-only-pictures': () =>
      'Die Seiten enthalten Bilder (Scans oder Fotos) und keine gezeichneten Linien; zeigen sie Schablonen aus Pappe oder Papier auf einfarbigem Grund, liest sie „hidebound trace --pieces“ mit dieser Datei. Sonst das Schnittmuster im Zeichenprogramm nachzeichnen oder den Hersteller um ein PDF mit Linien bitten.',
    'pdf-no-pictures': () =>
      'Die Seiten enthalten keine Bilder, die sich hier lesen lassen; ein PDF mit gezeichneten Linien wird als Schnittmuster gelesen, Scans am besten als JPEG oder PNG sichern.',
    'pdf-pictures-too-large': ({ limit }) =>
      de`Die gescannten Seiten haben zusammen mehr als ${limit} Millionen Pixel; mit 300 Pixeln je Zoll scannen oder einige Seiten als eigene Datei sichern.`,
    'pdf-no-lines': () =>
      'Auf den gelesenen Seiten sind keine Linien gezeichnet; nachsehen, ob das Schnittmuster darauf ist und seine Ebenen eingeschaltet sind.',
    'pdf-too-many-operators': ({ limit }) =>
      de`Die Seiten brauchen mehr als ${limit} Zeichenschritte; nur die Seiten des Schnittmusters sichern, ohne Bilder und Füllungen.`,
    'pdf-too-many-forms': ({ limit }) =>
      de`Zeichnungen in Zeichnungen würden mehr als ${limit}-mal gezeichnet; in einem Betrachter öffnen und in ein neues PDF drucken.`,
    'pdf-form-unfinished': () =>
      'Eine Zeichnung in der Zeichnung enthält sich selbst oder bricht ab; in einem Betrachter öffnen und in ein neues PDF drucken.',
    'pdf-too-deep': ({ limit }) =>
      de`Zeichnungen sind mehr als ${limit}-fach geschachtelt; in einem Betrachter öffnen und in ein neues PDF drucken.`,
    'pdf-clip-too-heavy': () =>
      'Die Beschneidungspfade der Seiten zu verfolgen dauert zu lange; im Zeichenprogramm die Masken auflösen.',
    'pdf-inflates-too-far': ({ limit }) =>
      de`Ein Stück der Datei wird entpackt größer als ${limit} MB, weit mehr, als eine Zeichnung braucht; in einem Betrachter öffnen und in ein neues PDF drucken.`,
    'pdf-too-many-objects': ({ limit }) =>
      de`Die Datei will mehr als ${limit} Objekte enthalten; in einem Betrachter öffnen und in ein neues PDF drucken.`,

    'pdf-scale-in-file': ({ name }) =>
      de`Ein PDF nennt seine Größe in echten Einheiten, darum ändert ${name} nichts; weglassen oder einen Maßstab angeben.`,
    'pdf-white-lines': ({ count, elements }) =>
      de`${counted(count, 'Linie ist', 'Linien sind')} weiß wie das Papier und ${one(count) ? 'bleibt' : 'bleiben'} weg (${elements}); ihnen eine Farbe geben, wenn sie zum Schnittmuster gehören.`,
    'pdf-thin-areas': ({ count, elements }) =>
      de`${counted(count, 'schmale gefüllte Fläche sieht', 'schmale gefüllte Flächen sehen')} aus wie eine Linie, die als Umriss gezeichnet ist, darum werden beide Seiten gelesen (${elements}); als Linie mit Breite zeichnen, wenn es eine ist.`,
    'pdf-pages-without-lines': ({ pages, count }) =>
      de`Auf ${one(count) ? 'Seite' : 'den Seiten'} ${pages} sind keine Linien gezeichnet; gescannte Schablonen liest „hidebound trace --pieces“ mit dieser Datei.`,
    'pdf-part-not-read': ({ count }) =>
      de`${counted(count, 'Stück', 'Stücke')} der Datei ${one(count) ? 'ist' : 'sind'} auf eine Art gepackt, die nicht gelesen wird, und ${one(count) ? 'bleibt' : 'bleiben'} weg; fehlen Linien, die Datei in ein neues PDF drucken.`,
  } as const satisfies Readonly<Record<string, Sentence>>;
}
