import { ruleOfPart } from '../parts/part-table.js';
import type {
  Order,
  OrderArticle,
  OrderLeather,
  OrderPiece,
  ResolvedOrder,
  ResolvedPiece,
} from '../model/order.js';
import type { Workshop } from '../model/workshop.js';
import { stitchRuleFor } from '../stitch/stitch-rule.js';
import type { StitchWorkshop } from '../stitch/stitch-rule.js';
import { checkOrder } from './check-order.js';
import type { OrderStage } from './check-order.js';

/** What of a workshop fills in an order. */
export type OrderWorkshop = Pick<Workshop, 'parts'> & StitchWorkshop;

/**
 * The order with every rule of every piece filled in: what the order says wins, then what its leather says of the
 * thickness, then the workshop's row for the part, then the built-in row. Throws `LeatherError` where the order
 * contradicts itself (see `checkOrder`).
 */
export function resolveOrder(order: Order, workshop?: OrderWorkshop, stage: OrderStage = {}): ResolvedOrder {
  checkOrder(order, stage);
  return {
    ...order,
    articles: order.articles.map(({ stitch, ...article }) => ({
      ...article,
      pieces: article.pieces.map((piece) =>
        resolvePiece(
          piece,
          stitch,
          order.leathers.find((leather) => leather.name === piece.leather),
          workshop,
        ),
      ),
    })),
  };
}

function resolvePiece(
  piece: OrderPiece,
  articleStitch: OrderArticle['stitch'],
  leather: OrderLeather | undefined,
  workshop: OrderWorkshop | undefined,
): ResolvedPiece {
  const rule = ruleOfPart(piece.part, workshop);
  const zones = piece.zones ?? rule.zones;
  const stitch = stitchRuleFor(piece.stitch, articleStitch, workshop);
  const thickness = piece.thickness ?? leather?.thickness ?? rule.thickness;
  return {
    name: piece.name,
    leather: piece.leather,
    part: piece.part,
    from: piece.from,
    count: piece.count,
    mirrored: piece.mirrored,
    ...(piece.pair === undefined ? {} : { pair: piece.pair }),
    looks: { face: piece.looks?.face ?? rule.looks.face, rest: piece.looks?.rest ?? rule.looks.rest },
    bearsLoad: piece.bearsLoad ?? rule.bearsLoad,
    ...(zones === undefined ? {} : { zones }),
    side: piece.side ?? 'grain',
    direction: piece.direction ?? rule.direction,
    ...(piece.arrowDeg === undefined ? {} : { arrowDeg: piece.arrowDeg }),
    ...(piece.face === undefined ? {} : { face: piece.face }),
    ...(thickness === undefined ? {} : { thickness }),
    tooThick: piece.tooThick ?? rule.tooThick,
    ...(piece.isTooled === true ? { isTooled: true } : {}),
    layers: piece.layers,
    ...(piece.marginMm === undefined ? {} : { marginMm: piece.marginMm }),
    allowanceMm: piece.allowanceMm,
    seams: piece.seams,
    ...(stitch === undefined ? {} : { stitch }),
    priority: piece.priority,
    inLane: piece.inLane,
  };
}
