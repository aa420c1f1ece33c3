import { basename } from 'node:path';
import type { TraceReport } from '@hidebound/intake/photo';
import { formatArea } from '@hidebound/leather';
import type { Hide } from '@hidebound/leather';
import { countWords } from '../count-words.js';
import { textTable } from '../text-table.js';

export interface TraceCircumstances {
  /** Whether possible flaws were looked for at all. */
  readonly soughtPossible: boolean;
  /** Whether the hide goes on beyond what the photos show, so that nobody knows how large the whole is. */
  readonly leavesPicture: boolean;
}

/** What was found, for a person: the figures that decide whether a photo is good enough. */
export function traceLines(
  hide: Hide,
  report: TraceReport,
  { soughtPossible, leavesPicture }: TraceCircumstances,
): readonly string[] {
  const { scaleErrorShare, placeErrorMm } = report;
  const facts: readonly (readonly [string, string])[] = [
    ['hide', hide.id],
    ['cut', hide.cut],
    ['area', areaWords(report, leavesPicture)],
    ['scale', `off by ${percent(scaleErrorShare)} at most, by ${hide.photo!.scaledBy}`],
    ['places', `known within ${placeErrorMm.least.toFixed(1)} to ${placeErrorMm.most.toFixed(1)} mm`],
    ['openings', String(hide.openings.length)],
    ['unsure edge', unsureWords(hide, report)],
    ['chalked', chalkWords(report)],
    ['possible', soughtPossible ? countWords(hide.candidates.length, 'possible flaw') : 'not looked for'],
  ];
  const width = Math.max(...facts.map(([name]) => name.length));
  const references = report.references.map(({ name, residualMm }) => [name, residualMm.toFixed(2)]);
  return [
    ...facts.map(([name, words]) => `${name.padEnd(width)}  ${words}`),
    '"At most" holds in nine cases of ten.',
    '',
    ...textTable(['reference', 'off by mm'], references, [1]),
    ...joinLines(report),
    '',
  ];
}

function areaWords({ areaMm2, areaErrorShare }: TraceReport, leavesPicture: boolean): string {
  if (leavesPicture) return `${bothUnits(areaMm2)} of what the photo shows; the whole hide is larger`;
  return `${bothUnits(areaMm2)}, off by ${percent(areaErrorShare)} at most (${squareMetres(areaMm2 * areaErrorShare)})`;
}

function bothUnits(mm2: number): string {
  return `${formatArea(mm2, { unit: 'm2' })} (${formatArea(mm2, { unit: 'ft2' })})`;
}

function squareMetres(mm2: number): string {
  return `${(mm2 / 1e6).toFixed(3)} m²`;
}

function percent(share: number): string {
  return `${(100 * share).toFixed(share < 0.01 ? 2 : 1)} %`;
}

function unsureWords({ unsureEdges }: Hide, { unsureLengthMm }: TraceReport): string {
  if (unsureEdges.length === 0) return 'none';
  const most = Math.ceil(Math.max(...unsureEdges.map(({ offByMm }) => offByMm)));
  return `${Math.round(unsureLengthMm)} mm in ${countWords(unsureEdges.length, 'stretch', 'stretches')}, off by ${most} mm at most`;
}

function chalkWords({ chalkFlaws, crosses }: TraceReport): string {
  const flaws = countWords(chalkFlaws, 'flaw');
  return crosses === 0 ? flaws : `${flaws}, ${countWords(crosses, 'cross', 'crosses')}`;
}

function joinLines({ otherSideMisfitMm, movedMisfitMm }: TraceReport): readonly string[] {
  const fits = (what: string, mm: number | undefined) =>
    mm === undefined ? [] : [`${what} within ${mm.toFixed(1)} mm.`];
  return [
    ...fits('The other side fits', otherSideMisfitMm),
    ...fits('The photos of the hide that was moved fit together', movedMisfitMm),
  ];
}

/** What to do next, as a command line to copy. */
export function nextStep(hide: Hide, file: string, picture: string | undefined): readonly string[] {
  const { candidates, guessed = [] } = hide;
  const look =
    picture === undefined ? `hidebound hide ${file} --picture ${pictureName(file)}` : `look at ${picture}`;
  const decide = [
    ...(candidates.length === 0 ? [] : [`--take ${candidates[0]!.id}`, '--drop all']),
    ...(guessed.length === 0 ? [] : [`--confirm ${guessed.join(',')}`]),
  ];
  if (decide.length === 0) return [`Next: ${look}; then name the hide in an order.`];
  return [`Next: ${look}; then decide: hidebound hide ${file} ${decide.join(' ')}`];
}

function pictureName(file: string): string {
  return basename(file).replace(/(\.hide)?\.json$/, '.svg');
}
