import type { Diagnostic } from '@hidebound/leather';
import { newFindings, tell } from '../findings.js';
import type { Findings } from '../findings.js';
import type { Gathered, GatherOptions } from '../pieces/gather.js';
import type { RoleLine } from '../lines/role-line.js';
import type { SizedLines } from '../roles/decide-size.js';
import type { Drawing } from './drawn-line.js';

/** Makes pieces of the lines of one size, or of the lines of all sizes. */
export type GatherSize = (
  drawing: Drawing,
  options: Omit<GatherOptions, 'unfolds'>,
  findings: Findings,
) => Gathered;

/**
 * Pieces of a drawing in several graded sizes: for each size those of its lines together with the lines of no size. A
 * piece of lines of no size alone comes once, without a size.
 */
export function gatherSizes(
  drawing: Drawing,
  { sizes, found, by }: SizedLines,
  gather: GatherSize,
  findings: Findings,
): Gathered {
  const linesOf = (size: string | undefined) => ({
    ...drawing,
    lines: drawing.lines.filter((_, i) => sizes[i] === undefined || sizes[i] === size),
  });
  const withoutSize = new Set<string>();
  const probe = gather(
    linesOf(undefined),
    {
      takes: (shape) => {
        withoutSize.add(shape);
        return false;
      },
    },
    newFindings(findings.file),
  );
  const unchanged = new Set<string>();
  const takes = (shape: string) => {
    if (withoutSize.has(shape)) unchanged.add(shape);
    return !withoutSize.has(shape);
  };
  const inSizes = found.map((size) => {
    const own = newFindings(findings.file);
    return { gathered: gather(linesOf(size), { size, takes }, own), findings: own };
  });
  const common = newFindings(findings.file);
  const once = gather(linesOf(undefined), { takes: (shape) => unchanged.has(shape), isQuiet: true }, common);
  tell(findings, 'note', 'sizes-found', { sizes: found.join(', '), by });
  mergeInto(findings, [common, ...inSizes.map((run) => run.findings)]);
  const runs = inSizes.map(({ gathered }) => gathered);
  const strays = straysOfAll(
    runs.map((run) => run.strays),
    probe.strays,
  );
  return { pieces: [...once.pieces, ...runs.flatMap(({ pieces }) => pieces)], strays };
}

/** A line of all sizes is astray only if it lies in no piece of any size. */
function straysOfAll(runs: readonly (readonly RoleLine[])[], common: readonly RoleLine[]): RoleLine[] {
  const seen = new Map<string, { readonly line: RoleLine; runs: number }>();
  for (const strays of runs) {
    for (const line of strays) {
      const key = keyOfLine(line);
      const entry = seen.get(key) ?? { line, runs: 0 };
      entry.runs++;
      seen.set(key, entry);
    }
  }
  const ofAll = new Set(common.map(keyOfLine));
  return [...seen]
    .filter(([key, entry]) => entry.runs === runs.length || !ofAll.has(key))
    .map(([, { line }]) => line);
}

function keyOfLine({ source, curve }: RoleLine): string {
  return `${source.name}|${source.line ?? ''}|${JSON.stringify(curve)}`;
}

/** Findings of several runs as one: what all of them say is said once, counts of the same note are added up. */
function mergeInto(findings: Findings, runs: readonly Findings[]): void {
  findings.diagnostics.push(...mergeDiagnostics(runs.map(({ diagnostics }) => diagnostics)));
  for (const one of mergeLists(runs.map(({ ignored }) => ignored))) findings.ignored.push(one);
  for (const one of mergeLists(runs.map(({ repairs }) => repairs))) findings.repairs.push(one);
}

/** Each entry as often as the run says it that says it most. */
function mergeLists<T>(lists: readonly (readonly T[])[]): T[] {
  const merged: T[] = [];
  const have = new Map<string, number>();
  for (const list of lists) {
    const counts = new Map<string, number>();
    for (const item of list) {
      const key = JSON.stringify(item);
      const count = (counts.get(key) ?? 0) + 1;
      counts.set(key, count);
      if (count <= (have.get(key) ?? 0)) continue;
      have.set(key, count);
      merged.push(item);
    }
  }
  return merged;
}

/** Notes that count pieces and name the first few. */
const COUNTING = new Set(['role-guessed', 'direction-not-drawn', 'text-too-long-for-name']);
const NAMED_PIECES = 4;

function mergeDiagnostics(lists: readonly (readonly Diagnostic[])[]): Diagnostic[] {
  const all = mergeLists(lists);
  const counting = all.filter(({ code }) => COUNTING.has(code));
  const sums = new Map<string, Diagnostic>();
  for (const note of counting) {
    const key = `${note.code}|${String(note.params['role'] ?? '')}`;
    const before = sums.get(key);
    sums.set(key, before === undefined ? note : addedUp(before, note));
  }
  return [...all.filter(({ code }) => !COUNTING.has(code)), ...sums.values()];
}

function addedUp(a: Diagnostic, b: Diagnostic): Diagnostic {
  const count = Number(a.params['count']) + Number(b.params['count']);
  const names = [...namesIn(a), ...namesIn(b)];
  const shown = names.slice(0, NAMED_PIECES).join(', ');
  const pieces = names.length > NAMED_PIECES ? `${shown} and others` : shown;
  return { ...a, params: { ...a.params, count, pieces } };
}

function namesIn({ params }: Diagnostic): string[] {
  return String(params['pieces'] ?? '')
    .replace(/ and others$/, '')
    .split(', ');
}
