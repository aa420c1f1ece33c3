import type { STITCH_SENTENCES, StitchLineParams } from '../stitch.js';
import type { German, Translation } from './say.js';
import { nearHint, term } from './terms.js';

const TOOLS = { iron: 'mit dem Vorstecheisen', awl: 'mit der Ahle' };

/** Stitching, in German. */
export function stitchGerman({ de, figures, count }: German) {
  const which = (p: StitchLineParams): string =>
    `„${p.line}“ auf „${p.piece}“${p.article === undefined ? '' : ` von ${p.article}`}`;
  return {
    'pitch-by-the-inch': (p) =>
      de`${p.found} lässt sich auf zwei Arten lesen: Ein Eisen mit ${p.perInch} Zinken je Zoll hat ${figures(p.ironMm)} mm von Zinke zu Zinke, und ${p.perInch} Stiche je Zoll liegen ${figures(p.stitchesMm)} mm auseinander; für das Erste „${p.ironMm} mm“ schreiben, für das Zweite „${p.stitchesMm} mm“.`,
    'ambiguous-pitch': (p) =>
      de`${p.found} ohne Einheit kann ${p.found} mm sein, ein Eisen mit ${p.perInch} Zinken je Zoll oder ${p.perInch} Stiche je Zoll; für das Erste „${p.found} mm“ schreiben, für das Zweite „${p.ironMm} mm“, für das Dritte „${p.stitchesMm} mm“.`,
    'no-such-iron': (p) =>
      de`Das Eisen ${p.iron} steht nicht in der Tabelle der Werkstatt (${p.known}).${nearHint(p.near)} In der Werkstattdatei unter „irons“ ergänzen oder stattdessen „pitch“ angeben.`,
    'stitch-line-too-short': (p) =>
      de`Die Nahtlinie ${which(p)} ist ${figures(p.lengthMm)} mm lang${p.endGapMm === '0' ? '' : `, abzüglich ${figures(p.endGapMm)} mm an jedem Ende`}, kürzer als eine Stichweite von ${figures(p.pitchMm)} mm; länger zeichnen, eine kleinere Stichweite angeben oder unter „leaveOut“ nennen.`,
    'stitch-near-edge': (p) =>
      de`Die Nahtlinie ${which(p)} hat ${count(p.count, 'Loch', 'Löcher')} näher am Rand, als eine Lage dick ist (${figures(p.distanceMm)} mm, das Leder ${figures(p.thicknessMm)} mm); dort schneidet der Faden durch. Die Linie nach innen rücken oder ihre Enden mit „endGap“ fernhalten.`,
    'stitch-across-strap': (p) =>
      de`Die Nahtlinie ${which(p)} läuft quer über den Riemen von Kante zu Kante, wo er wie an einer Perforation reißt; spitz zulaufend oder längs nähen.`,
    'stitch-pitch-beyond': (p) =>
      de`Die Nahtlinie ${which(p)} hat zwischen Enden und Ecken Stiche von ${figures(p.usedMm)} mm, mehr als ${figures(p.percent)} % von ${figures(p.pitchMm)} mm entfernt; eine Ecke oder ein Ende verschieben oder eine andere Stichweite angeben.`,
    'stitch-gathered': (p) =>
      de`In ${p.article} ist ${p.long} um ${figures(p.differenceMm)} mm (${figures(p.percent)} %) länger als ${p.short}, woran es genäht wird; mehr als ${figures(p.allowedPercent)} % sieht man als Falten. Die Linien ausbessern, oder „covers: part“ schreiben, wenn nur ein Stück genäht wird.`,
    'stitch-rules-differ': (p) =>
      de`In ${p.article} verlangen „${p.piece}“ und „${p.other}“ für eine Naht (${p.seam}) Verschiedenes; angezeichnet wird sie, wie „${p.piece}“ es will: ${figures(p.pitchMm)} mm ${term(TOOLS, p.with)}.`,
    'stitch-left-out-nowhere': (p) =>
      de`In ${p.article} soll die Linie „${p.line}“ ohne Stiche bleiben, aber keine Nahtlinie heißt so.${nearHint(p.near)}`,
    'stitch-without-pitch': (p) =>
      de`${count(p.count, 'Nahtlinie', 'Nahtlinien')} ohne Stichweite und ohne Löcher (${p.lines}); beim Artikel, beim Teil oder in der Werkstattdatei „stitch: { pitch: … }“ angeben.`,
    'stitch-thread-short': (p) =>
      de`Die Nähte brauchen etwa ${figures(p.neededM)} m ${p.thread}, der Auftrag rechnet mit ${figures(p.statedM)} m.`,
    'stitch-pitch-for-thread': (p) =>
      de`In ${p.article} wird ${p.thread} von ${figures(p.threadMm)} mm mit einer Stichweite von ${figures(p.pitchMm)} mm genäht; üblich sind ${figures(p.fromMm)} bis ${figures(p.toMm)} mm, als Anhalt.`,
  } satisfies Translation<typeof STITCH_SENTENCES>;
}
