export type { Diagnostic, DiagnosticPlace, Severity } from './model/diagnostic.js';
export type { Effect, Looks, Money, Side, Strength, ThicknessRange } from './model/marks.js';
export { FLAW_KINDS, HIDE_CUTS, ZONE_KINDS } from './model/hide.js';
export type {
  Flaw,
  FlawCandidate,
  FlawKind,
  FlawShape,
  Hide,
  HideArea,
  HideCut,
  HidePhoto,
  HidePrice,
  LeatherQualities,
  ThicknessReading,
  UnsureEdge,
  Zone,
  ZoneKind,
} from './model/hide.js';
export { LINE_ROLES } from './model/piece.js';
export type {
  DirectionArrow,
  LayablePiece,
  LineRole,
  MarkLine,
  Notch,
  PatternPiece,
  PatternPieces,
  Piece,
  Punch,
} from './model/piece.js';
export { PARTS, STRAP_ENDS } from './model/order.js';
export type {
  Article,
  ArticleBody,
  ArticleLeather,
  Cutting,
  DirectionWish,
  HardwareLine,
  KeepTogether,
  Order,
  OrderArticle,
  OrderLeather,
  OrderMode,
  OrderPiece,
  PairWish,
  Part,
  PatternReading,
  PieceSource,
  Preparation,
  ResolvedArticle,
  ResolvedOrder,
  ResolvedPiece,
  RoleRule,
  Seam,
  StrapEnd,
  StrapHoles,
  StrapNumbers,
  ThreadLine,
  UseFrom,
} from './model/order.js';
export type {
  AreaBalance,
  CuttingStep,
  HideYield,
  Layout,
  LayoutHide,
  LayoutOrigin,
  PieceCopy,
  PiecePlacement,
  PlacedRegion,
  RoughCutBlock,
  StrapLane,
  Swatch,
  UnplacedCopy,
  YieldReport,
} from './model/layout.js';
export type { Coverage, PartRule, PriceLine, SourceMark, Workshop } from './model/workshop.js';
export type { BundledFile, HideShelf, JobBundle, StockEntry, StockJournal } from './model/stock.js';
export { LeatherError } from './leather-error.js';
export type { LeatherErrorCode } from './leather-error.js';
export { placeWords, sentenceFor } from './words/catalogue.js';
export type { SentenceCode } from './words/catalogue.js';
export { groupDigits, listWords, quoteValue } from './words/sentence.js';
export type { SentenceParams, SentenceTable } from './words/sentence.js';
export { nearestWord } from './words/nearest.js';
export { hashHide, hashPieceShape, sha256Hex } from './hash/index.js';
export { parseHide, writeHide } from './files/hide-file.js';
export { parseLayout, writeLayout } from './files/layout-file.js';
