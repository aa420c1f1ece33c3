import { hideRegion } from '../hide/hide-region.js';
import { thicknessField } from '../hide/fields.js';
import type {
  Order,
  OrderArticle,
  OrderPiece,
  ResolvedArticle,
  ResolvedOrder,
  ResolvedPiece,
} from '../model/order.js';
import type { LayablePiece } from '../model/piece.js';
import type { Workshop } from '../model/workshop.js';
import type { NamedHide } from '../order/sheets.js';
import { hidePlaces } from './hide-places.js';
import type { HidePlace, HidePlaces } from './hide-places.js';
import { qualityFit } from './quality-fit.js';
import { isTooLarge, sizeOf } from './size-fit.js';
import type { ShapeSize } from './size-fit.js';
import { suitFindings } from './suit-findings.js';
import type { HideFit, Suit, SuitHide, SuitPiece, SuitRemark } from './suit-model.js';
import { finishedThickness, suitWork } from './suit-work.js';
import { leatherErrorAs } from '../words/refuse.js';
import { listWords } from '../words/sentence.js';
import { spanOf, thicknessFit } from './thickness-fit.js';
import { wantedLeather } from './wanted-leather.js';

export interface SuitInput {
  /** As it is written: only it tells a piece's own word from its part's. */
  readonly written: Order;
  readonly order: ResolvedOrder;
  readonly pieces: readonly LayablePiece[];
  /** The order's own hides under the names that it gives them, and others that are on hand. */
  readonly hides: readonly NamedHide[];
  readonly workshop: Workshop;
}

interface ShelfHide extends NamedHide {
  readonly places: HidePlaces;
  readonly size: ShapeSize;
}

/**
 * Each piece of an order against each hide on hand: whether its thickness, temper, tannage, finish and colour fit, and
 * what is to be done to it. Places count by zone, strength and measured thickness, not by looks and room: these are the
 * layout's. Throws `LeatherError` (`duplicate`) for two hides of one id.
 */
export function suitOrder(input: SuitInput): Suit {
  refuseSameIds(input.hides);
  const shelf = input.hides.map(({ file, hide }): ShelfHide => ({
    file,
    hide,
    places: hidePlaces(hide, input.workshop),
    size: sizeOf(hideRegion(hide)),
  }));
  const hides = shelf.map((each) => shownHide(each, input.order));
  const pieces = input.order.articles.flatMap((article, i) =>
    article.pieces.map((resolved, k) => {
      const written = input.written.articles[i]!;
      return suitPiece(input, shelf, { article, written, resolved, piece: written.pieces[k]! });
    }),
  );
  const isSuited = pieces.every(({ fits }) => fits.some(({ kind }) => kind !== 'no'));
  return { hides, pieces, isSuited, diagnostics: suitFindings(input, { hides, pieces }) };
}

function refuseSameIds(hides: readonly NamedHide[]): void {
  const seen = new Map<string, string>();
  for (const { file, hide } of hides) {
    const other = seen.get(hide.id);
    if (other !== undefined) {
      const params = { hide: hide.id, first: other, second: file };
      throw leatherErrorAs('duplicate', 'suit-hide-id-twice', params);
    }
    seen.set(hide.id, file);
  }
}

function shownHide({ file, hide, places }: ShelfHide, order: ResolvedOrder): SuitHide {
  const { tannage, temper, finish, colour, readings } = hide.leather;
  const thickness = spanOf(places.places) ?? rangeOf(thicknessField(hide)?.rangeMm);
  return {
    id: hide.id,
    file,
    cut: hide.cut,
    leathers: order.leathers.filter(({ hides }) => hides.includes(file)).map(({ name }) => name),
    ...(thickness === undefined ? {} : { thickness }),
    readings: readings.length,
    ...(tannage === undefined ? {} : { tannage }),
    ...(temper === undefined ? {} : { temper }),
    ...(finish === undefined ? {} : { finish }),
    ...(colour === undefined ? {} : { colour }),
    ...(hide.lot === undefined ? {} : { lot: hide.lot }),
    ...(hide.storedAt === undefined ? {} : { storedAt: hide.storedAt }),
  };
}

function rangeOf(range: readonly [number, number] | undefined): SuitHide['thickness'] {
  return range && { minMm: range[0], maxMm: range[1] };
}

interface AskedPiece {
  readonly article: ResolvedArticle;
  readonly written: OrderArticle;
  readonly piece: OrderPiece;
  readonly resolved: ResolvedPiece;
}

function suitPiece(input: SuitInput, shelf: readonly ShelfHide[], asked: AskedPiece): SuitPiece {
  const { article, piece, resolved, written } = asked;
  const leather = input.order.leathers.find(({ name }) => name === piece.leather);
  const wanted = wantedLeather({ article: written, piece, resolved, leather, workshop: input.workshop });
  const shape = input.pieces.find((each) => each.article === article.name && each.piece === resolved.name)!;
  const size = sizeOf(shape.region);
  const sets = article.sets === 'as many as fit' ? 1 : article.sets;
  return {
    article: article.name,
    goods: article.goods,
    piece: resolved.name,
    part: resolved.part,
    leather: resolved.leather,
    copies: resolved.count * sets * resolved.layers,
    layers: resolved.layers,
    wanted,
    fits: shelf.map((hide) => hideFit({ input, asked, leather, wanted, shape, size }, hide)),
  };
}

interface FitAsked {
  readonly input: SuitInput;
  readonly asked: AskedPiece;
  readonly leather: ResolvedOrder['leathers'][number] | undefined;
  readonly wanted: SuitPiece['wanted'];
  readonly shape: LayablePiece;
  readonly size: ShapeSize;
}

function hideFit({ input, asked, leather, wanted, shape, size }: FitAsked, shelf: ShelfHide): HideFit {
  const { hide } = shelf;
  const { workshop } = input;
  const { piece, resolved } = asked;
  const places = shelf.places.places.filter((place) => mayComeFrom(place, asked));
  const quality = qualityFit({ wanted, leather, has: hide.leather, workshop });
  const reasons: SuitRemark[] = [
    ...(hide.state === 'cut' ? [remarkOf('cut-already')] : []),
    ...quality.reasons,
    ...(isTooLarge(size, shelf.size) ? [remarkOf('too-small')] : []),
  ];
  const reserved = hide.state === 'reserved' ? [remarkOf('reserved')] : [];
  if (places.length === 0) {
    const zones = (resolved.zones ?? []).join(' or ');
    const none = remarkOf('no-such-zone', { zones, isLoad: resolved.bearsLoad ? 1 : 0 });
    return noFit(hide.id, [...reasons, none], quality.remarks);
  }
  const fit = thicknessFit({
    places,
    cellMm2: shelf.places.cellMm2,
    isMeasured: shelf.places.isMeasured,
    wanted: wanted.thickness?.value,
    isSkived: resolved.tooThick === 'skive',
    refusesSkiving: piece.tooThick === 'refuse',
    mayDouble: mayDouble(asked, wanted),
    copyMm2: size.areaMm2,
    workshop,
  });
  const all = [...reasons, ...fit.reasons];
  const remarks = [...reserved, ...fit.remarks, ...quality.remarks, ...zoneRemark(places, wanted)];
  const span = fit.span === undefined ? {} : { thickness: fit.span };
  if (all.length > 0) return { ...noFit(hide.id, all, remarks), ...span };
  const finished = finishedThickness(fit, wanted);
  return {
    hide: hide.id,
    kind: isUnsure(quality.remarks, wanted) ? 'measure' : fit.kind,
    ...span,
    ...(finished === undefined ? {} : { finished }),
    ...(fit.rightShare === undefined ? {} : { rightShare: fit.rightShare }),
    work: suitWork({ piece: resolved, shape: shape.shape, wanted, fit, workshop }),
    reasons: [],
    remarks,
  };
}

/** Nobody knows the tannage, and something is asked of it. */
function isUnsure(remarks: readonly SuitRemark[], { needs }: SuitPiece['wanted']): boolean {
  return needs.length > 0 && remarks.some(({ code }) => code === 'tannage-not-known');
}

function noFit(hide: string, reasons: readonly SuitRemark[], remarks: readonly SuitRemark[]): HideFit {
  return { hide, kind: 'no', work: [], reasons, remarks };
}

function remarkOf(code: SuitRemark['code'], params: SuitRemark['params'] = {}): SuitRemark {
  return { code, params };
}

/** Said where the table has these goods cut from other zones; it does not refuse. */
function zoneRemark(places: readonly HidePlace[], { partRow, goodsRow }: SuitPiece['wanted']): SuitRemark[] {
  const usual = (partRow ?? goodsRow)?.zones;
  if (usual === undefined) return [];
  const isUsual = places.some(
    ({ zones }) => zones === undefined || usual.some((zone) => zones.includes(zone)),
  );
  return isUsual ? [] : [remarkOf('zone-unusual', { zones: listWords(usual) })];
}

/** As layouts read it: one of its zones, and sound leather under load. What the article's `wants` says comes on top. */
function mayComeFrom({ zones, isWeak }: HidePlace, { resolved, written }: AskedPiece): boolean {
  if (isWeak && resolved.bearsLoad) return false;
  if (zones === undefined) return true;
  const isIn = (wanted: readonly string[] | undefined): boolean =>
    wanted === undefined || wanted.some((zone) => zones.includes(zone));
  return isIn(resolved.zones) && isIn(written.wants?.zones);
}

/** A second layer stiffens: no lining and nothing soft is made up so. What the order gives layers, it has counted. */
function mayDouble({ resolved }: AskedPiece, { tempers }: SuitPiece['wanted']): boolean {
  if (resolved.layers > 1 || resolved.part === 'lining') return false;
  return tempers === undefined || tempers.value.some((temper) => temper !== 'soft');
}
