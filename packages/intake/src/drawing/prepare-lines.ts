import { curveLength, distanceBetween } from '@hidebound/geometry';
import type { RoleRule } from '@hidebound/leather';
import { ignore, longName, noteRepair, tell } from '../findings.js';
import type { Findings } from '../findings.js';
import { EXACT_MM, JOIN_MM } from '../limits.js';
import { gatherDashes } from '../lines/dashes.js';
import { dropDuplicates } from '../lines/duplicates.js';
import { joinLines } from '../lines/join.js';
import { mendLine, toMicrometres } from '../lines/mend.js';
import type { RoleLine } from '../lines/role-line.js';
import type { Repair } from '../repairs.js';
import { decideRole } from '../roles/decide.js';
import { findLettering } from '../roles/lettering.js';
import type { DrawnLine } from './drawn-line.js';

/** Lines with their roles, each drawn once, open ones joined where their ends meet. */
export function prepareLines(
  lines: readonly DrawnLine[],
  rules: readonly RoleRule[],
  findings: Findings,
): RoleLine[] {
  const withRoles = lines.map((line): RoleLine => {
    const role = decideRole(line.source, line, rules);
    return role === undefined ? line : { ...line, role };
  });
  const long = withoutLettering(withRoles, findings).filter((line) => {
    const isLong = line.curve.closed || line.curve.segments.length > 2 || curveLength(line.curve) > JOIN_MM;
    if (!isLong) ignore(findings, longName(line.source), 'no size');
    return isLong;
  });
  const drawnOnce = tellDropped(long, findings);
  const once = gatherDashes(drawnOnce);
  tellDashes(drawnOnce, once, findings);
  const joined = joinLines(once, ({ source }, from, to) => {
    const sizeMm = toMicrometres(distanceBetween(from, to));
    if (sizeMm <= EXACT_MM) return;
    noteRepair(findings, { kind: 'gap joined', element: longName(source), at: from, sizeMm });
  });
  const joints = once.length - joined.length;
  if (joints === 0) return mendLines(joined, findings);
  const to = countChanged(once, joined);
  tell(findings, 'note', 'lines-joined', { from: joints + to, to });
  return mendLines(tellDropped(joined, findings), findings);
}

/** The lines without texts that are drawn as outlines; one note says how many there are. */
function withoutLettering(lines: readonly RoleLine[], findings: Findings): readonly RoleLine[] {
  const lettering = findLettering(lines);
  const letters = lines.filter((_, i) => lettering.lines.has(i));
  if (letters.length === 0) return lines;
  const names = new Set(letters.map(({ source }) => longName(source)));
  for (const name of names) ignore(findings, name, 'lettering');
  const params = { count: letters.length, rows: lettering.rows };
  tell(findings, 'note', 'lettering-left-out', params, { point: letters[0]!.curve.start });
  return lines.filter((_, i) => !lettering.lines.has(i));
}

function tellDashes(drawn: readonly RoleLine[], gathered: readonly RoleLine[], findings: Findings): void {
  const lines = countChanged(drawn, gathered);
  const dashes = drawn.length - gathered.length + lines;
  if (lines > 0) tell(findings, 'note', 'dashes-gathered', { dashes, lines });
}

/** Every line mended, with a note for each kind of change. */
function mendLines(lines: readonly RoleLine[], findings: Findings): RoleLine[] {
  const before = findings.repairs.length;
  const mended = lines.map((line) => mendLine(line, findings));
  const made = findings.repairs.slice(before);
  tellRepairs(
    findings,
    'loops-removed',
    made.filter(({ kind }) => kind === 'loop removed'),
  );
  tellRepairs(
    findings,
    'curves-fitted',
    made.filter(({ kind }) => kind === 'curve fitted'),
  );
  return mended;
}

function tellRepairs(findings: Findings, code: string, repairs: readonly Repair[]): void {
  if (repairs.length === 0) return;
  const most = repairs.reduce((mm, { sizeMm }) => Math.max(mm, sizeMm), 0);
  tell(findings, 'note', code, { count: repairs.length, most }, { point: repairs[0]!.at });
}

function tellDropped(lines: readonly RoleLine[], findings: Findings): RoleLine[] {
  const { lines: kept, dropped } = dropDuplicates(lines);
  for (const { line, apartMm } of dropped) {
    const element = longName(line.source);
    ignore(findings, element, 'drawn twice');
    noteRepair(findings, {
      kind: 'double dropped',
      element,
      at: line.curve.start,
      sizeMm: toMicrometres(apartMm),
    });
  }
  return kept;
}

/** Lines that came out of joining: not among those that went in. */
function countChanged(before: readonly RoleLine[], after: readonly RoleLine[]): number {
  const known = new Set(before);
  return after.filter((line) => !known.has(line)).length;
}
