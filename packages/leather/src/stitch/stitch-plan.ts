import type { Point } from '@hidebound/geometry';
import type { Diagnostic } from '../model/diagnostic.js';
import type { ResolvedArticle, ResolvedOrder } from '../model/order.js';
import type { LayablePiece, MarkLine } from '../model/piece.js';
import type { StitchedLine, StitchRule, StitchSeam, ThreadNeed } from '../model/stitch.js';
import { lineFindings } from './line-findings.js';
import { walkLine } from './line-walk.js';
import { refuseTooShort } from './marks-along.js';
import { matchedMarks } from './match-lines.js';
import { leftOutNowhere, seamFindings, withoutPitch } from './seam-findings.js';
import { seamGroups, seamsPerSet, seamStackMm } from './seam-groups.js';
import type { SeamGroup, SeamLine } from './seam-groups.js';
import { threadLengthMm } from './thread.js';
import { threadFindings, threadNeeds } from './thread-needs.js';

export interface StitchInput {
  readonly order: ResolvedOrder;
  /** Each piece of the order once, as a layout holds them. */
  readonly pieces: readonly LayablePiece[];
  /** Sets that are made of an article; where it is silent, what the order says (one, where as many as fit are wanted). */
  readonly setsOf?: (article: string) => number | undefined;
}

/** Every hole of an order, and the thread that it takes. */
export interface StitchPlan {
  /** Article by article, piece by piece, in the order's order. */
  readonly lines: readonly StitchedLine[];
  readonly seams: readonly StitchSeam[];
  readonly threads: readonly ThreadNeed[];
  readonly diagnostics: readonly Diagnostic[];
}

/**
 * The stitch marks of all pieces, in the frame of each piece's shape: the same number of holes on lines that are sewn
 * together, and thread for each seam. Lines for which nobody gave a pitch get no holes; that is told.
 * @throws LeatherError `stitch-line-too-short`
 */
export function planStitches({ order, pieces, setsOf }: StitchInput): StitchPlan {
  const found = order.articles.map((article) => planArticle(order, article, pieces));
  const seams = found.flatMap((each) => each.seams);
  const setsFor = (article: ResolvedArticle): number =>
    setsOf?.(article.name) ?? (typeof article.sets === 'number' ? article.sets : 1);
  const threads = threadNeeds(order, seams, setsFor);
  return {
    lines: found.flatMap((each) => each.lines),
    seams,
    threads,
    diagnostics: [
      ...found.flatMap((each) => each.diagnostics),
      ...(seams.length === 0 ? [] : withoutPitch(found.flatMap((each) => each.silent))),
      ...threadFindings(order, seams, threads),
    ],
  };
}

interface ArticlePlan {
  readonly lines: readonly StitchedLine[];
  readonly seams: readonly StitchSeam[];
  readonly diagnostics: readonly Diagnostic[];
  /** "piece/line" of lines without a pitch. */
  readonly silent: readonly string[];
}

function planArticle(
  order: ResolvedOrder,
  article: ResolvedArticle,
  pieces: readonly LayablePiece[],
): ArticlePlan {
  const layables = new Map(
    pieces.filter((each) => each.article === article.name).map((each) => [each.piece, each]),
  );
  const lines = linesOfArticle(article, layables);
  const groups = seamGroups(article, lines);
  const sewn = new Map<SeamGroup, SewnGroup>();
  const sew = (group: SeamGroup, above: readonly SeamGroup[]): SewnGroup | undefined => {
    const known = sewn.get(group);
    if (known !== undefined) return known;
    const { partOf } = group;
    const host =
      partOf === undefined || above.includes(group)
        ? undefined
        : groups.find((each) => each.lines.includes(partOf));
    const done = sewGroup(article, group, host && sew(host, [...above, group]));
    if (done !== undefined) sewn.set(group, done);
    return done;
  };
  for (const group of groups) sew(group, []);
  const all = groups.flatMap((group) => sewn.get(group) ?? []);
  const silent = groups
    .filter((group) => !sewn.has(group))
    .flatMap((group) => group.lines.map(({ piece, line }) => `${piece.name}/${line}`));
  const stitched = all.flatMap((each) => each.stitched);
  return {
    lines: lines.flatMap((line) => stitched.filter((each) => isOf(each, line))),
    seams: all.map((each) => toSeam(order, article, each, all)),
    diagnostics: [
      ...all.flatMap((each) => findingsOf(article, each, layables)),
      ...leftOutNowhere(article, drawnNames(article, layables)),
    ],
    silent,
  };
}

/** The names of all stitch lines of an article. */
function drawnNames(
  article: ResolvedArticle,
  layables: ReadonlyMap<string, LayablePiece>,
): ReadonlySet<string> {
  const shapes = article.pieces.flatMap(({ name }) => layables.get(name)?.shape ?? []);
  return new Set(shapes.flatMap(({ stitchLines }) => stitchLines.map(nameOfLine)));
}

function nameOfLine({ name }: MarkLine, index: number): string {
  return name ?? `stitch line ${index + 1}`;
}

function isOf(stitched: StitchedLine, { piece, index }: SeamLine): boolean {
  return stitched.piece === piece.name && stitched.index === index;
}

function linesOfArticle(article: ResolvedArticle, layables: ReadonlyMap<string, LayablePiece>): SeamLine[] {
  return article.pieces.flatMap((piece) => {
    const drawn = layables.get(piece.name)?.shape.stitchLines ?? [];
    const named = drawn.map((mark, index): SeamLine => {
      const { stitch: rule } = piece;
      const line = nameOfLine(mark, index);
      return { piece, line, index, walk: walkLine(mark.curve), ...(rule === undefined ? {} : { rule }) };
    });
    const leaveOut = piece.stitch?.leaveOut ?? [];
    return named.filter(({ line, walk }) => !leaveOut.includes(line) && walk.steps.length > 0);
  });
}

/** A group with its holes. */
interface SewnGroup {
  readonly group: SeamGroup;
  readonly rule: StitchRule;
  readonly main: StitchedLine;
  readonly stitched: readonly StitchedLine[];
  /** The seam of which this one takes up a part. */
  readonly host?: SewnGroup;
}

/** Undefined where none of its lines has a pitch. */
function sewGroup(
  article: ResolvedArticle,
  group: SeamGroup,
  host: SewnGroup | undefined,
): SewnGroup | undefined {
  const own = ownRule(group);
  const rule = host === undefined ? own : ruleOnHost(own ?? host.rule, host);
  if (rule === undefined) return undefined;
  for (const { piece, line, walk } of group.lines) {
    refuseTooShort(walk, rule, { article: article.name, piece: piece.name, line });
  }
  const matched = matchedMarks(
    group.lines.map(({ walk }) => walk),
    rule,
  );
  const stitched = group.lines.map(({ piece, line, index }, i): StitchedLine => ({
    article: article.name,
    piece: piece.name,
    line,
    index,
    with: rule.with,
    marks: matched.marks[i]!,
  }));
  return { group, rule, main: stitched[matched.main]!, stitched, ...(host === undefined ? {} : { host }) };
}

/** The first line that has a rule says how; the ends keep the largest gap that any of the lines asks for. */
function ownRule({ lines }: SeamGroup): StitchRule | undefined {
  const rules = lines.flatMap(({ rule }) => (rule === undefined ? [] : [rule]));
  const [first] = rules;
  return first && { ...first, endGapMm: Math.max(...rules.map(({ endGapMm }) => endGapMm)) };
}

/** On a part of another line the holes are that line's: its pitch as it came out, and the ends give. */
function ruleOnHost(own: StitchRule, host: SewnGroup): StitchRule {
  return { ...own, pitchMm: host.main.marks.usedPitchMm.mean, with: 'iron' };
}

function toSeam(
  order: ResolvedOrder,
  article: ResolvedArticle,
  sewn: SewnGroup,
  all: readonly SewnGroup[],
): StitchSeam {
  const { group, rule, main, stitched, host } = sewn;
  const lengths = stitched.map(({ marks }) => marks.lengthMm);
  const stackMm = rule.stackMm ?? sumOrNone(seamStackMm(group), host === undefined ? 0 : stackOf(host));
  const perSet = seamsPerSet(group);
  const pitchMm = main.marks.usedPitchMm.mean;
  const aloneMm = Math.max(0, main.marks.sewnMm - sewnOnItMm(sewn, all) / perSet);
  const thread =
    stackMm === undefined
      ? {}
      : { stackMm, threadMm: threadFor({ lengthMm: aloneMm, pitchMm, stackMm, tailsMm: rule.tailsMm }) };
  const hostName = host === undefined ? '' : ` on ${host.main.piece}/${host.main.line}`;
  return {
    article: article.name,
    name: stitched.map(({ piece, line }) => `${piece}/${line}`).join(' + ') + hostName,
    lines: stitched,
    holes: main.marks.holes.length,
    pitchMm,
    lengthMm: main.marks.sewnMm,
    differenceMm: Math.max(...lengths) - Math.min(...lengths),
    perSet,
    ...thread,
    tailsMm: rule.tailsMm,
    thread: rule.thread ?? article.threads[0]?.name ?? order.threads[0]?.name ?? NO_THREAD,
  };
}

/** What the thread is called where neither article nor order has one. */
const NO_THREAD = 'thread';

/** Nothing is left to sew where other seams take up all but so little of a line. In mm. */
const NOTHING_LEFT_MM = 1;

function threadFor(seam: Parameters<typeof threadLengthMm>[0]): number {
  return seam.lengthMm < NOTHING_LEFT_MM ? 0 : threadLengthMm(seam);
}

function stackOf({ group, rule }: SewnGroup): number | undefined {
  return rule.stackMm ?? seamStackMm(group);
}

function sumOrNone(a: number | undefined, b: number | undefined): number | undefined {
  return a === undefined || b === undefined ? undefined : a + b;
}

/** How much of the seam, in a set, other seams sew as parts of it. */
function sewnOnItMm(sewn: SewnGroup, all: readonly SewnGroup[]): number {
  return all
    .filter(({ host }) => host === sewn)
    .reduce((sum, { group, main }) => sum + main.marks.sewnMm * seamsPerSet(group), 0);
}

function findingsOf(
  article: ResolvedArticle,
  { group, rule, stitched }: SewnGroup,
  layables: ReadonlyMap<string, LayablePiece>,
): readonly Diagnostic[] {
  const ofLines = group.lines.flatMap(({ piece, walk }, i) =>
    lineFindings({ stitched: stitched[i]!, walk, piece, layable: layables.get(piece.name)!, rule }),
  );
  return [...ofLines, ...seamFindings(article.name, group, rule, stitched)];
}

/** The holes of each line, for whoever draws them: in the frame of the piece's shape. */
export function holePlaces({ lines }: Pick<StitchPlan, 'lines'>): readonly HolePlaces[] {
  return lines.map(({ article, piece, marks }) => ({ article, piece, at: marks.holes.map(({ at }) => at) }));
}

export interface HolePlaces {
  readonly article: string;
  readonly piece: string;
  readonly at: readonly Point[];
}
