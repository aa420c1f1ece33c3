import type { SentenceTable } from './sentence.js';

/** A stitch line, in words. */
export interface StitchLineParams {
  readonly line: string;
  readonly piece: string;
  readonly article?: string;
}

const which = (p: StitchLineParams): string =>
  `"${p.line}" on "${p.piece}"${p.article === undefined ? '' : ` of ${p.article}`}`;

/** English sentences of stitching. Figures come in rounded, as text. */
export const STITCH_SENTENCES = {
  'pitch-by-the-inch': (p: { found: string; perInch: string; ironMm: string; stitchesMm: string }) =>
    `${p.found} can be read two ways: an iron of ${p.perInch} teeth to the inch has ${p.ironMm} mm from tooth to tooth, and ${p.perInch} stitches to the inch are ${p.stitchesMm} mm apart; write "${p.ironMm} mm" for the first or "${p.stitchesMm} mm" for the second.`,
  'ambiguous-pitch': (p: { found: string; perInch: string; ironMm: string; stitchesMm: string }) =>
    `${p.found} without a unit may be ${p.found} mm, an iron of ${p.perInch} teeth to the inch, or ${p.perInch} stitches to the inch; write "${p.found} mm" for the first, "${p.ironMm} mm" for the second or "${p.stitchesMm} mm" for the third.`,
  'no-such-iron': (p: { iron: string; near?: string; known: string }) =>
    `There is no iron ${p.iron} in the workshop's table (${p.known}).${p.near === undefined ? '' : ` Did you mean "${p.near}"?`} Add it under "irons" in the workshop file, or give "pitch" instead.`,
  'stitch-line-too-short': (p: StitchLineParams & { lengthMm: string; pitchMm: string; endGapMm: string }) =>
    `The stitch line ${which(p)} is ${p.lengthMm} mm long${p.endGapMm === '0' ? '' : `, less ${p.endGapMm} mm at each end`}, shorter than one pitch of ${p.pitchMm} mm; draw it longer, give a smaller pitch, or name it under "leaveOut".`,
  'stitch-near-edge': (p: StitchLineParams & { count: number; distanceMm: string; thicknessMm: string }) =>
    `The stitch line ${which(p)} has ${p.count === 1 ? 'a hole' : `${p.count} holes`} nearer to the edge than one layer is thick (${p.distanceMm} mm, the leather ${p.thicknessMm} mm), where the thread cuts through; move the line inwards, or keep its ends off by "endGap".`,
  'stitch-across-strap': (p: StitchLineParams) =>
    `The stitch line ${which(p)} runs straight across the strap from edge to edge, where it tears like a perforation; sew to a point, or along the strap.`,
  'stitch-pitch-beyond': (p: StitchLineParams & { usedMm: string; pitchMm: string; percent: string }) =>
    `The stitch line ${which(p)} has stitches of ${p.usedMm} mm between its ends and corners, further from ${p.pitchMm} mm than ${p.percent} %; move a corner or an end, or give another pitch.`,
  'stitch-gathered': (p: {
    article: string;
    long: string;
    short: string;
    differenceMm: string;
    percent: string;
    allowedPercent: string;
  }) =>
    `In ${p.article}, ${p.long} is ${p.differenceMm} mm (${p.percent} %) longer than ${p.short}, to which it is sewn, and more than ${p.allowedPercent} % shows as gathers; mend the lines, or say "covers: part" if only a part is sewn.`,
  'stitch-rules-differ': (p: {
    article: string;
    seam: string;
    piece: string;
    other: string;
    pitchMm: string;
    with: string;
  }) =>
    `In ${p.article}, "${p.piece}" and "${p.other}" ask for different stitching of one seam (${p.seam}); it is marked as "${p.piece}" says, ${p.pitchMm} mm with the ${p.with}.`,
  'stitch-left-out-nowhere': (p: { article: string; line: string; near?: string }) =>
    `In ${p.article}, the line "${p.line}" is to be left without stitches, but no stitch line has that name.${p.near === undefined ? '' : ` Did you mean "${p.near}"?`}`,
  'stitch-without-pitch': (p: { count: number; lines: string }) =>
    `${p.count === 1 ? 'One stitch line has' : `${p.count} stitch lines have`} no pitch and no holes (${p.lines}); give "stitch: { pitch: … }" on the article, on the piece or in the workshop file.`,
  'stitch-thread-short': (p: { thread: string; neededM: string; statedM: string }) =>
    `The seams take about ${p.neededM} m of ${p.thread}, but the order counts on ${p.statedM} m.`,
  'stitch-pitch-for-thread': (p: {
    article: string;
    thread: string;
    threadMm: string;
    pitchMm: string;
    fromMm: string;
    toMm: string;
  }) =>
    `In ${p.article}, ${p.thread} of ${p.threadMm} mm is sewn at a pitch of ${p.pitchMm} mm; from ${p.fromMm} to ${p.toMm} mm is usual, as a hint.`,
} as const satisfies SentenceTable;
