import type { Diagnostic } from '../model/diagnostic.js';
import type { ResolvedArticle } from '../model/order.js';
import type { StitchRule, StitchedLine } from '../model/stitch.js';
import { trimmed } from '../units/length.js';
import { nearestWord } from '../words/nearest.js';
import type { SeamGroup } from './seam-groups.js';

/** What is to be said of lines that are sewn together. */
export function seamFindings(
  article: string,
  group: SeamGroup,
  rule: StitchRule,
  stitched: readonly StitchedLine[],
): readonly Diagnostic[] {
  return [...gathered(article, rule, stitched), ...unlikeRules(article, group, rule)];
}

/** Lines of one seam that differ by more than their share. */
function gathered(article: string, rule: StitchRule, stitched: readonly StitchedLine[]): Diagnostic[] {
  const sorted = [...stitched].sort((a, b) => a.marks.lengthMm - b.marks.lengthMm);
  const [short, long] = [sorted[0]!, sorted[sorted.length - 1]!];
  const differenceMm = long.marks.lengthMm - short.marks.lengthMm;
  const share = differenceMm / short.marks.lengthMm;
  if (share <= rule.gatherShare) return [];
  const params = {
    article,
    long: `${long.piece}/${long.line}`,
    short: `${short.piece}/${short.line}`,
    differenceMm: trimmed(differenceMm, 1),
    percent: trimmed(share * 100, 1),
    allowedPercent: trimmed(rule.gatherShare * 100, 1),
  };
  return [{ code: 'stitch-gathered', severity: 'warning', params, place: { at: long.piece } }];
}

/** Pieces that are sewn together can't be sewn at two pitches. */
function unlikeRules(article: string, group: SeamGroup, rule: StitchRule): Diagnostic[] {
  const own = group.lines.flatMap((line) => (line.rule === undefined ? [] : [{ ...line, rule: line.rule }]));
  const [first] = own;
  const other = own.find(
    (line) => line.rule.pitchMm !== first!.rule.pitchMm || line.rule.with !== first!.rule.with,
  );
  if (first === undefined || other === undefined || group.partOf !== undefined) return [];
  const params = {
    article,
    seam: group.lines.map(({ piece, line }) => `${piece.name}/${line}`).join(' + '),
    piece: first.piece.name,
    other: other.piece.name,
    pitchMm: trimmed(rule.pitchMm, 2),
    with: rule.with,
  };
  return [{ code: 'stitch-rules-differ', severity: 'warning', params, place: { at: other.piece.name } }];
}

/** Names of lines to be left out that no line of the article has: a slip, most likely. */
export function leftOutNowhere(article: ResolvedArticle, names: ReadonlySet<string>): Diagnostic[] {
  const asked = new Set(article.pieces.flatMap(({ stitch }) => stitch?.leaveOut ?? []));
  return [...asked]
    .filter((line) => !names.has(line))
    .map((line): Diagnostic => {
      const near = nearestWord(line, names);
      const params = { article: article.name, line, ...(near === undefined ? {} : { near }) };
      return { code: 'stitch-left-out-nowhere', severity: 'warning', params };
    });
}

/** Lines of which nobody said how they are sewn. */
export function withoutPitch(silent: readonly string[]): Diagnostic[] {
  if (silent.length === 0) return [];
  const params = { count: silent.length, lines: silent.join(', ') };
  return [{ code: 'stitch-without-pitch', severity: 'note', params }];
}
