import type { Diagnostic, DiagnosticPlace, Severity } from '@hidebound/leather';
import type { DrawnSource } from './drawing/drawn-line.js';
import type { DXF_LEFT_OUT } from './dxf/words.js';
import type { Repair } from './repairs.js';
import type { SentenceParams } from './sentence.js';

/** Something in the file that was not used, and why. */
export interface IgnoredElement {
  /** "#logo", "<text> in line 12". */
  readonly element: string;
  readonly reason: IgnoredReason;
}

export type IgnoredReason =
  | keyof typeof DXF_LEFT_OUT
  | 'clip path'
  | 'external reference'
  | 'filter'
  | 'foreign object'
  | 'hidden'
  | 'image'
  | 'lettering'
  | 'mask'
  | 'missing target'
  | 'no size'
  | 'not painted'
  | 'marked to be ignored'
  | 'other branch of a switch'
  | 'script'
  | 'style not read'
  | 'text'
  | 'drawn twice'
  | 'unknown element'
  | 'view';

/** What a reader has to say besides its result; filled while it reads. */
export interface Findings {
  readonly file: string;
  readonly diagnostics: Diagnostic[];
  readonly ignored: IgnoredElement[];
  readonly repairs: Repair[];
}

export function newFindings(file: string): Findings {
  return { file, diagnostics: [], ignored: [], repairs: [] };
}

/** Adds a finding; the file is put into its place. */
export function tell(
  findings: Findings,
  severity: Severity,
  code: string,
  params: SentenceParams = {},
  place: DiagnosticPlace = {},
): void {
  findings.diagnostics.push({ code, severity, params, place: { file: findings.file, ...place } });
}

export function noteRepair(findings: Findings, repair: Repair): void {
  findings.repairs.push(repair);
}

export function ignore(findings: Findings, element: string, reason: IgnoredReason): void {
  findings.ignored.push({ element, reason });
}

/** Where an element stands in the file. */
export function placeOf(source: Pick<DrawnSource, 'name' | 'line'>): DiagnosticPlace {
  return { at: source.name, ...(source.line === undefined ? {} : { line: source.line }) };
}

/** "#flap" as it is; "<path>" with its line, since a file has many. */
export function longName(source: Pick<DrawnSource, 'name' | 'line'>): string {
  return source.name.startsWith('#') || source.line === undefined
    ? source.name
    : `${source.name} in line ${source.line}`;
}

/** Elements named in one sentence; the list in the result names all. */
const NAMED_IN_SENTENCE = 4;

/** Reasons that take something away which the maker of the file may have counted on. */
const WARNED_REASONS = new Set<IgnoredReason>(['external reference', 'missing target', 'clip path', 'mask']);

/** Reasons that have a finding of their own. */
const TOLD_REASONS = new Set<IgnoredReason>(['lettering']);

/** One note for each reason, naming the first few elements. */
export function summarizeIgnored(findings: Findings): void {
  const byReason = new Map<IgnoredReason, string[]>();
  for (const { element, reason } of findings.ignored) {
    if (TOLD_REASONS.has(reason)) continue;
    const names = byReason.get(reason);
    if (names === undefined) byReason.set(reason, [element]);
    else names.push(element);
  }
  for (const [reason, names] of byReason) {
    const shown = names.slice(0, NAMED_IN_SENTENCE).join(', ');
    const more = names.length - NAMED_IN_SENTENCE;
    const elements = more > 0 ? `${shown} and ${more} more` : shown;
    const severity = WARNED_REASONS.has(reason) ? 'warning' : 'note';
    tell(findings, severity, 'left-out', { reason, count: names.length, elements });
  }
}
