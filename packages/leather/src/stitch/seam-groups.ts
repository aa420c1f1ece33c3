import type { ResolvedArticle, ResolvedPiece, Seam } from '../model/order.js';
import type { StitchRule } from '../model/stitch.js';
import type { LineWalk } from './line-walk.js';

/** A stitch line of an article's piece. */
export interface SeamLine {
  readonly piece: ResolvedPiece;
  readonly line: string;
  /** Which of the piece's stitch lines it is. */
  readonly index: number;
  readonly walk: LineWalk;
  /** Absent where nobody gave a pitch. */
  readonly rule?: StitchRule;
}

/** Lines that one needle goes through, the one that most others are sewn to first. */
export interface SeamGroup {
  readonly lines: readonly SeamLine[];
  /** The line of another group of which this seam takes up a part. */
  readonly partOf?: SeamLine;
  /** Its piece is sewn to itself, as a tube is. */
  readonly closesOnItself: boolean;
}

/** Which lines of an article are sewn together, by its seams; every other line is alone. */
export function seamGroups(article: ResolvedArticle, lines: readonly SeamLine[]): readonly SeamGroup[] {
  const lineOf = (piece: string, name: string): SeamLine | undefined =>
    lines.find((each) => each.piece.name === piece && each.line === name);
  const seams = article.pieces.flatMap((piece) =>
    piece.seams.flatMap((seam): JoinedLines[] => {
      const from = lineOf(piece.name, seam.line);
      const to = lineOf(seam.to.piece, seam.to.line);
      return from === undefined || to === undefined || from === to ? [] : [{ from, to, seam }];
    }),
  );
  const whole = seams.filter(({ seam }) => seam.covers !== 'part');
  const groups = joinLines(lines, whole);
  return groups.map((members): SeamGroup => {
    const within = whole.filter(({ from }) => members.includes(from));
    const sewnTo = (line: SeamLine): number => within.filter(({ to }) => to === line).length;
    const part = seams.find(({ from, seam }) => seam.covers === 'part' && members.includes(from));
    const partOf = part === undefined || members.includes(part.to) ? {} : { partOf: part.to };
    return {
      lines: [...members].sort((a, b) => sewnTo(b) - sewnTo(a) || lines.indexOf(a) - lines.indexOf(b)),
      closesOnItself: within.some(({ from, to }) => from.piece === to.piece),
      ...partOf,
    };
  });
}

interface JoinedLines {
  readonly from: SeamLine;
  readonly to: SeamLine;
  readonly seam: Seam;
}

/** Sets of lines that hang together, each in the order of the lines. */
function joinLines(lines: readonly SeamLine[], joints: readonly JoinedLines[]): SeamLine[][] {
  const groups = lines.map((line) => [line]);
  for (const { from, to } of joints) {
    const a = groups.find((group) => group.includes(from))!;
    const b = groups.find((group) => group.includes(to))!;
    if (a === b) continue;
    a.push(...b);
    groups.splice(groups.indexOf(b), 1);
  }
  return groups.map((group) => group.sort((a, b) => lines.indexOf(a) - lines.indexOf(b)));
}

/** How often a set has the seam: as often as the piece of which it takes the most copies. */
export function seamsPerSet({ lines }: SeamGroup): number {
  return Math.max(...lines.map(({ piece }) => piece.count));
}

/** All that the needle goes through, at the thickest that the pieces may be; undefined where one has no thickness. */
export function seamStackMm({ lines, closesOnItself }: SeamGroup): number | undefined {
  const through = closesOnItself ? lines : firstOfEachPiece(lines);
  let stackMm = 0;
  for (const { piece } of through) {
    if (piece.thickness === undefined) return undefined;
    stackMm += piece.thickness.maxMm * piece.layers;
  }
  return stackMm;
}

function firstOfEachPiece(lines: readonly SeamLine[]): readonly SeamLine[] {
  return lines.filter((line, i) => lines.findIndex(({ piece }) => piece === line.piece) === i);
}
