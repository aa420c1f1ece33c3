import type { LeatherNeed } from '../../model/workshop-rules.js';
import type { SuitRemark, SuitRemarkCode } from '../../suit/suit-model.js';
import type { RemarkParams } from '../suit.js';
import { thicknessWords } from '../suit.js';
import type { German } from './say.js';
import { TANNAGES, TEMPERS, ZONES, term, termList } from './terms.js';

const CAN_NOT: Readonly<Record<LeatherNeed, string>> = {
  tooling: 'lässt sich nicht punzieren',
  moulding: 'behält keine nass geformte Form',
  'burnished edges': 'die Kanten lassen sich nicht polieren',
  'turned edges': 'lässt sich am Rand nicht umbugen',
  'standing up': 'steht nicht von selbst',
  'keeping its length': 'dehnt sich',
  'lying against steel': 'gehört nicht neben Stahl',
  'lying on skin': 'gehört nicht auf die Haut des Trägers',
};

const WITH_CARE: Readonly<Record<LeatherNeed, string>> = {
  tooling: 'nimmt Punzierung schlecht an',
  moulding: 'ist nass nur mit Vorsicht zu formen und hält vielleicht nicht',
  'burnished edges': 'die Kanten polieren schlecht: lackieren oder umbugen',
  'turned edges': 'am Rand mit Vorsicht umbugen',
  'standing up': 'steht nur mit einer Verstärkung',
  'keeping its length': 'kann sich dehnen: aus dem Kernstück schneiden oder füttern',
  'lying against steel': 'zeichnet Stahl mit der Zeit: weder Klinge noch Waffe darin aufbewahren',
  'lying on skin': 'auf der Haut: die Erklärung des Lieferanten zu Chrom(VI) aufheben',
};

/** What is said about a piece on a hide, to follow the hide's name and a colon. */
export function suitRemarkGerman({ de, figures }: German) {
  const has = (p: RemarkParams): string => figures(thicknessWords(p.minMm, p.maxMm));
  const wants = (p: RemarkParams): string => figures(thicknessWords(p.wantedMinMm, p.wantedMaxMm));
  const tannage = (words: string): string => termList(TANNAGES, words);
  const temper = (words: string): string => termList(TEMPERS, words);
  const words: Readonly<Record<SuitRemarkCode, (p: RemarkParams) => string>> = {
    'too-thin': (p) => `zu dünn (${has(p)}, gewünscht ${wants(p)})`,
    'too-thick': (p) => `zu dick (${has(p)}, gewünscht ${wants(p)}), und geschärft werden soll es nicht`,
    'skive-too-deep': (p) =>
      `zu dick (${has(p)}, gewünscht ${wants(p)}): zu viel zum Schärfen, spalten lassen`,
    'too-little-of-it': (p) => `zu wenig davon hat die gewünschte Stärke (${has(p)}, gewünscht ${wants(p)})`,
    'tannage-not-asked': (p) => `${tannage(p.found)}, verlangt ist ${tannage(p.asked)}`,
    'need-not-met': (p) => `${CAN_NOT[p.need]} (${term(TANNAGES, p.tannage)})`,
    'too-soft': (p) => `zu weich (${temper(p.found)}, gewünscht ${temper(p.asked)})`,
    'too-hard': (p) => `zu steif (${temper(p.found)}, gewünscht ${temper(p.asked)})`,
    'too-soft-to-stand': () => 'zu weich, um zu stehen',
    'too-hard-to-turn': () => 'zu hart, um am Rand umgebugt zu werden',
    'finished-for-tooling': (p) => `lässt sich nicht punzieren, denn es ist zugerichtet (${p.found})`,
    'finish-not-asked': (p) => `zugerichtet als „${p.found}“, verlangt ist „${p.asked}“`,
    'other-colour': (p) => `falsche Farbe (${p.found}, verlangt ist ${p.asked})`,
    'no-such-zone': (p) =>
      `hat ${p.zones === '' ? 'keine brauchbare Stelle dafür' : `diese Partie nicht: ${termList(ZONES, p.zones)}`}${p.isLoad === 1 ? ', die Last trägt' : ''}`,
    'too-small': () => 'zu klein',
    'cut-already': () => 'schon zerschnitten',
    'need-with-care': (p) => `${term(TANNAGES, p.tannage)}: ${WITH_CARE[p.need]}`,
    'tannage-unusual': (p) => `${tannage(p.found)} ist dafür nicht üblich (üblich: ${tannage(p.asked)})`,
    'softer-than-usual': (p) => `weicher als üblich (${temper(p.found)}, üblich ist ${temper(p.asked)})`,
    'stiffer-than-usual': (p) => `steifer als üblich (${temper(p.found)}, üblich ist ${temper(p.asked)})`,
    'only-places': (p) =>
      de`nur von Stellen mit ${has(p)} (${Math.round(p.share * 100)} % dessen, woraus es kommen darf)`,
    'measure-places': (p) =>
      `überall mit ${has(p)} angegeben, gewünscht ${wants(p)}: an mehreren Stellen messen und in die Hautdatei schreiben`,
    'within-tolerance': (p) => de`stimmt innerhalb der üblichen ${p.toleranceMm} mm; nachmessen`,
    'thickness-not-known': (p) => `Stärke nicht bekannt, gewünscht ${wants(p)}: messen`,
    'tannage-not-known': () => 'Gerbung nicht bekannt: den Verkäufer fragen',
    'temper-not-known': () => 'Griff nicht bekannt: eine Ecke biegen',
    'finish-not-known': () =>
      'Zurichtung nicht bekannt: einen Tropfen Wasser auf einem Reststück probieren, zum Punzieren muss er einziehen',
    'zone-unusual': (p) => `nicht aus der üblichen Partie (${termList(ZONES, p.zones)})`,
    reserved: () => 'zurückgelegt',
    'order-refuses-skiving': () =>
      'der Auftrag erlaubt das Schärfen nicht: „tooThick: skive“ hineinschreiben',
  };
  return ({ code, params }: SuitRemark): string => words[code](params as unknown as RemarkParams);
}
