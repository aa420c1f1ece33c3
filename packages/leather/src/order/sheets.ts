import type { QualityRegion, Sheet } from '@hidebound/geometry';
import { directionField, thicknessField } from '../hide/fields.js';
import { hideRegion } from '../hide/hide-region.js';
import { hideQualities, zoneOfCut } from '../hide/qualities.js';
import { useFromVector } from '../hide/use-from.js';
import type { LeatherError } from '../leather-error.js';
import type { Diagnostic } from '../model/diagnostic.js';
import type { Hide } from '../model/hide.js';
import type { ResolvedOrder, ResolvedPiece } from '../model/order.js';
import type { EffectDefaults } from '../parts/effects.js';
import { nearestParams } from '../words/nearest.js';
import { leatherErrorAs } from '../words/refuse.js';

/** A hide with the name of its file as the order gives it. */
export interface NamedHide {
  readonly file: string;
  readonly hide: Hide;
}

export interface SheetOptions {
  readonly workshop?: EffectDefaults | undefined;
  readonly avoidCandidates?: boolean | undefined;
}

export interface OrderSheets {
  /** Each hide once, in the order's preference. */
  readonly sheets: readonly Sheet[];
  /** Ids of the hides of each leather. */
  readonly ofLeather: ReadonlyMap<string, readonly string[]>;
  readonly diagnostics: readonly Diagnostic[];
}

/**
 * The order's hides as sheets. Throws `LeatherError` if the order names a hide that is not given, or two hides share
 * an id.
 */
export function sheetsOfOrder(
  order: ResolvedOrder,
  hides: readonly NamedHide[],
  options: SheetOptions = {},
): OrderSheets {
  const sheets = new Map<string, { readonly sheet: Sheet; readonly file: string }>();
  const ofLeather = new Map<string, readonly string[]>();
  const diagnostics: Diagnostic[] = [];
  for (const leather of order.leathers) {
    const ids: string[] = [];
    for (const file of leather.hides) {
      const hide = hideOfFile(leather.name, file, hides);
      const known = sheets.get(hide.id);
      if (known !== undefined && known.file !== file) throw sameId(hide.id, known.file, file);
      if (known === undefined) {
        const built = sheetOfHide(order, { file, hide }, options);
        sheets.set(hide.id, { sheet: built.sheet, file });
        diagnostics.push(...built.diagnostics);
      }
      if (!ids.includes(hide.id)) ids.push(hide.id);
    }
    ofLeather.set(leather.name, ids);
  }
  return { sheets: [...sheets.values()].map(({ sheet }) => sheet), ofLeather, diagnostics };
}

function sheetOfHide(
  order: ResolvedOrder,
  { file, hide }: NamedHide,
  options: SheetOptions,
): { readonly sheet: Sheet; readonly diagnostics: readonly Diagnostic[] } {
  const pieces = piecesOnHide(order, file);
  const useFrom = useFromVector(hide, order.useFrom);
  const direction = directionField(hide);
  const thickness = thicknessField(hide);
  const zones = undrawnZones(hide, pieces);
  const qualities = hideQualities(hide, {
    workshop: options.workshop,
    avoidCandidates: options.avoidCandidates === true,
    fleshIsSeen: pieces.some((piece) => piece.side === 'flesh'),
    edgeBeyondVoidMm: order.cutting.edgeMm - order.cutting.voidMm,
  });
  const region = hideRegion(hide);
  const anyZone = zones.map((zone): QualityRegion => ({
    id: `zones-not-drawn:${zone}`,
    areas: [{ outer: region.outer, openings: [] }],
    grade: 0,
    weak: false,
    isVoid: false,
    uncertaintyMm: 0,
    zone,
  }));
  const sheet: Sheet = {
    id: hide.id,
    region,
    qualities: [...qualities, ...anyZone],
    ...(direction === undefined ? {} : { direction }),
    ...(thickness === undefined ? {} : { thickness }),
    // A hide without a lot matches no other one.
    lot: hide.lot === undefined ? `hide:${hide.id}` : `lot:${hide.lot}`,
    useFrom: useFrom.vector,
  };
  const notes = hideNotes(hide, pieces, zones.length > 0);
  return { sheet, diagnostics: [...useFrom.diagnostics, ...notes] };
}

/** Zone names that pieces ask for but a hide without any drawn zone can't prove: there they don't count. */
function undrawnZones(hide: Hide, pieces: readonly ResolvedPiece[]): string[] {
  if (hide.zones.length > 0 || zoneOfCut(hide) !== undefined) return [];
  return [...new Set(pieces.flatMap((piece) => piece.zones ?? []))].sort();
}

function hideNotes(hide: Hide, pieces: readonly ResolvedPiece[], hasUndrawnZones: boolean): Diagnostic[] {
  const notes: Diagnostic[] = [];
  const warn = (code: string): void => {
    notes.push({ code, severity: 'warning', params: { hide: hide.id }, place: { at: hide.id } });
  };
  if (hasUndrawnZones) warn('zones-not-drawn');
  if (hide.state === 'cut') warn('hide-already-cut');
  if (hide.candidates.length > 0) {
    notes.push({
      code: 'candidates-not-confirmed',
      severity: 'warning',
      params: { hide: hide.id, count: hide.candidates.length },
      place: { at: hide.id },
    });
  }
  if ((hide.guessed ?? []).length > 0) {
    notes.push({
      code: 'guesses-not-confirmed',
      severity: 'warning',
      params: { hide: hide.id, guesses: hide.guessed!.join(' and ') },
      place: { at: hide.id },
    });
  }
  if (thicknessField(hide) === undefined && pieces.some((piece) => piece.thickness !== undefined)) {
    warn('thickness-not-known');
  }
  return notes;
}

function piecesOnHide(order: ResolvedOrder, file: string): ResolvedPiece[] {
  const leathers = order.leathers.filter((leather) => leather.hides.includes(file)).map(({ name }) => name);
  return order.articles.flatMap((article) =>
    article.pieces.filter((piece) => leathers.includes(piece.leather)),
  );
}

function hideOfFile(leather: string, file: string, hides: readonly NamedHide[]): Hide {
  const found = hides.find((named) => named.file === file);
  if (found !== undefined) return found.hide;
  const near = nearestParams(
    file,
    hides.map((named) => named.file),
  );
  throw leatherErrorAs('unknown-hide', 'leather-hide-not-given', { leather, file, ...near });
}

function sameId(id: string, first: string, second: string): LeatherError {
  return leatherErrorAs('duplicate', 'order-hide-id-twice', { hide: id, first, second });
}
