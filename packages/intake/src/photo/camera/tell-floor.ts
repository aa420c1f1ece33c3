import { markerPlace } from '@hidebound/leather';
import type { Findings } from '../../findings.js';
import { tell } from '../../findings.js';
import type { SeenMarker, SeenReferences } from './seen-references.js';
import { groupMisses } from './least-squares.js';
import type { Settled } from './settle-doubts.js';
import type { SolvedFloor } from './solved-floor.js';
import { FLOOR_UNIT_MM } from './unknowns.js';
import { USUAL_DEVIATION } from './usual.js';

/** Beyond this slant the far side has half of the near side's pixels, and lumps move places by half their height. */
const STEEP_DEG = 27;
/** Wider edges than this come of shaking or dirt; sharp photos have 1 px, small ones 1.5 px. */
const BLURRED_PX = 2.5;
/** As light; sensors cut off above. */
const TOO_BRIGHT = 0.985;
/** Ink with more than this share of its paper's light. */
const TOO_DIM = 0.45;

/** A marker that counts less than this is as good as left out. */
const LEFT_OUT_WEIGHT = 0.25;
/** The rim of a sheet that seems to stand higher than this over the floor, mm; lying paper curls by 1 or 2. */
const NOT_FLAT_MM = 3.5;
/** Of a body's six numbers, those of how it rises. */
const SHEET_RISE_SLOTS = [3, 4, 5] as const;
/** A side of a print that is so much longer than the other one says. */
const STRETCHED_SHARE = 0.006;
/** A reference that lies farther off than this, mm, and more than is usual for how it was measured. */
const UNFIT_MM = 3;
const UNFIT_MISS = 3;

/** What can be said of the references and the photos once the floor is solved. */
export function tellOfFloor(settled: Settled, floor: SolvedFloor, findings: Findings): void {
  tellOfPhotos(settled.scene.seen, floor, findings);
  tellOfFit(settled, floor, findings);
  tellOfPaper(settled, findings);
  const { bodies } = settled.scene;
  if (bodies.length === 1) {
    const mm = Math.ceil(Math.max(...floor.error.at.map((place) => place.mm)));
    tell(findings, 'warning', 'one-reference-only', { name: bodies[0]!.name, mm });
  }
  if (bodies.some(({ sizeGroup }) => sizeGroup === 'printed')) {
    tell(findings, 'note', 'bars-not-measured', { percent: round1(PRINTED_BOUND_PERCENT) });
  }
}

/** Nine of ten prints that nobody measured are within this, per cent of a length. */
const PRINTED_BOUND_PERCENT = (1.645 * 100 * USUAL_DEVIATION.printedShare) / Math.SQRT2;

function tellOfFit({ scene, solved }: Settled, floor: SolvedFloor, findings: Findings): void {
  const misses = groupMisses(solved.problem, solved.solution.values);
  scene.bodies.forEach((body, i) => {
    const groups = new Set(
      solved.problem.sights.filter((_, k) => scene.sightings[k]!.body === i).map(({ group }) => group),
    );
    const miss = Math.sqrt([...groups].reduce((sum, group) => sum + misses[group]! ** 2, 0) / groups.size);
    const { residualMm } = floor.references[i]!;
    if (residualMm < UNFIT_MM || miss < UNFIT_MISS) return;
    const bad = [...groups].filter((group) => solved.solution.weights[group]! < LEFT_OUT_WEIGHT);
    const isOneOfMany = bad.length > 0 && bad.length < groups.size && body.kind === 'sheet';
    const code = isOneOfMany ? 'marker-left-out' : 'reference-does-not-fit';
    tell(findings, 'warning', code, { name: body.name, mm: round1(residualMm) });
  });
}

function tellOfPaper({ scene, solved }: Settled, findings: Findings): void {
  const { values } = solved.solution;
  const stretched = new Set<string>();
  scene.bodies.forEach((body, i) => {
    if (body.kind !== 'sheet') return;
    const rise = SHEET_RISE_SLOTS.map(
      (slot) => Math.abs(values[solved.layout.body[i]! + slot]!) * FLOOR_UNIT_MM,
    );
    const mm = round1(Math.max(...rise));
    if (mm > NOT_FLAT_MM) tell(findings, 'warning', 'sheet-not-flat', { name: body.name, mm });
    const first = solved.layout.size[i]!;
    const share = values[first]! - values[first + 1]!;
    if (Math.abs(share) < STRETCHED_SHARE || stretched.has(body.sizeGroup)) return;
    stretched.add(body.sizeGroup);
    const name = body.sizeGroup === 'printed' ? 'the printed sheets' : body.name;
    const direction = share > 0 ? 'wide' : 'long';
    tell(findings, 'warning', 'sheet-stretched', { name, percent: round1(Math.abs(share) * 100), direction });
  });
}

/** What can be said of the photos themselves. */
function tellOfPhotos(seen: readonly SeenReferences[], floor: SolvedFloor, findings: Findings): void {
  seen.forEach(({ file, markers }, photo) => {
    const { tiltDeg } = floor.unsureness.cameras[photo]!;
    if (tiltDeg > STEEP_DEG) {
      tell(findings, 'warning', 'steep-view', { degrees: Math.round(tiltDeg) }, { file });
    }
    tellOfMarkers(file, markers, findings);
  });
}

function tellOfMarkers(file: string, markers: readonly SeenMarker[], findings: Findings): void {
  const blurPx = median(markers.map((marker) => marker.blurPx));
  if (blurPx > BLURRED_PX) tell(findings, 'warning', 'blurred-photo', { px: round1(2 * blurPx) }, { file });
  for (const [sheet, mine] of bySheet(markers)) {
    const name = `sheet ${sheet}`;
    if (median(mine.map(({ white }) => white)) > TOO_BRIGHT) {
      tell(findings, 'warning', 'sheet-too-bright', { name }, { file });
    }
    if (median(mine.map(({ white, black }) => black / white)) > TOO_DIM) {
      tell(findings, 'warning', 'sheet-too-dim', { name }, { file });
    }
  }
}

function bySheet(markers: readonly SeenMarker[]): Map<number, SeenMarker[]> {
  const sheets = new Map<number, SeenMarker[]>();
  for (const marker of markers) {
    const { sheet } = markerPlace(marker.id)!;
    sheets.set(sheet, [...(sheets.get(sheet) ?? []), marker]);
  }
  return sheets;
}

function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[values.length >> 1] ?? 0;
}

export const round1 = (value: number): number => Math.round(value * 10) / 10;
