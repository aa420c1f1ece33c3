export type { Diagnostic, DiagnosticPlace, Severity } from './model/diagnostic.js';
export type { Effect, Looks, Money, Side, Strength, ThicknessRange } from './model/marks.js';
export { FLAW_KINDS, HIDE_CUTS, HIDE_GUESSES, ZONE_KINDS } from './model/hide.js';
export type {
  Flaw,
  FlawCandidate,
  FlawKind,
  FlawShape,
  Hide,
  HideArea,
  HideCut,
  HideGuess,
  HidePhoto,
  HidePrice,
  LeatherQualities,
  ThicknessReading,
  UnsureEdge,
  Zone,
  ZoneKind,
} from './model/hide.js';
export type { EdgeHints, HintedPhoto, PhotoHints, StatedReference } from './model/photo-hints.js';
export { DRAWING_UNITS, PAGE_JOINTS, PAGE_ORDERS } from './model/pattern-reading.js';
export type {
  DrawingUnit,
  LineLook,
  PageJoint,
  PageOrder,
  PagesReading,
  PatternReading,
  RoleRule,
  SizeRule,
} from './model/pattern-reading.js';
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
  PieceSource,
  Preparation,
  ResolvedArticle,
  ResolvedOrder,
  ResolvedPiece,
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
  MarkMeanings,
  PieceCopy,
  PiecePlacement,
  PlacedRegion,
  RoughCutBlock,
  StrapLane,
  Swatch,
  UnplacedCopy,
  YieldReport,
} from './model/layout.js';
export type {
  Coverage,
  PartRule,
  PriceLine,
  SourceMark,
  WeighedCoverage,
  Workshop,
} from './model/workshop.js';
export type {
  BundledFile,
  HideShelf,
  JobBundle,
  StockChange,
  StockEntry,
  StockJournal,
  TakenEntry,
  UndoneEntry,
} from './model/stock.js';
export { STITCH_GIVES, STITCH_TOOLS } from './model/stitch.js';
export type {
  Iron,
  StitchGave,
  StitchGives,
  StitchHole,
  StitchMarks,
  StitchRule,
  StitchSeam,
  StitchTool,
  StitchWish,
  StitchedLine,
  ThreadNeed,
} from './model/stitch.js';
export { LeatherError } from './leather-error.js';
export { leatherError } from './words/refuse.js';
export type { LeatherErrorCode } from './leather-error.js';
export { placeWords, sentenceFor } from './words/catalogue.js';
export type { SentenceCode } from './words/catalogue.js';
export type { SentenceLanguage } from './words/language.js';
export { capital, groupDigits, listWords, quoteValue } from './words/sentence.js';
export type { SentenceParams, SentenceTable } from './words/sentence.js';
export { nearestWord } from './words/nearest.js';
export { hashHide, hashPieceShape, sha256Hex } from './hash/index.js';
export { parseHide, provenHide, writeHide } from './files/hide-file.js';
export { marksBeside } from './files/validate-hide.js';
export type { MarksBeside } from './files/validate-hide.js';
export { parsePhotoHints, writePhotoHints } from './files/hints-file.js';
export { parseLayout, writeLayout } from './files/layout-file.js';
export { DEFAULT_PARTS, ruleOfPart } from './parts/part-table.js';
export {
  DEEP_FROM,
  DEFAULT_FLAW_EFFECTS,
  DEFAULT_ZONE_EFFECTS,
  effectOf,
  gradeOfLooks,
} from './parts/effects.js';
export type { EffectDefaults, KindEffect } from './parts/effects.js';
export { drawDisc, drawRectangle, drawStrap } from './pieces/draw.js';
export { ALLOWANCE_MITRE_LIMIT, addAllowance } from './pieces/allowance.js';
export { mirrorPiece, pieceFace, pieceRegion, roundPiece, transformPiece } from './pieces/piece-shape.js';
export { ALL_FACE, layablePiece } from './pieces/layable-piece.js';
export { resolvePieces } from './pieces/resolve-pieces.js';
export type { ReadPattern, ResolvedPieces } from './pieces/resolve-pieces.js';
export { decideHide, freeFlawName } from './hide/confirm-hide.js';
export type { DecidedHide, HideDecisions } from './hide/confirm-hide.js';
export { hideFiles, withFilesNamed } from './hide/hide-files.js';
export { hideAreas, hideRegion, netRegions, voidRegions } from './hide/hide-region.js';
export type { HideAreas } from './hide/hide-region.js';
export { hideQualities, photoErrorAt, zoneOfCut } from './hide/qualities.js';
export type { QualityOptions } from './hide/qualities.js';
export { bufferedLine, flawRegions } from './hide/flaw-region.js';
export { directionField, thicknessField } from './hide/fields.js';
export { useFromVector } from './hide/use-from.js';
export type { UseFromVector } from './hide/use-from.js';
export { DEFAULT_IRONS, ironPitchOfTeethMm, pitchOfStitchesMm } from './stitch/irons.js';
export { stitchMarks } from './stitch/marks-along.js';
export type { LineName, MarkRule } from './stitch/marks-along.js';
export { holePlaces, planStitches } from './stitch/stitch-plan.js';
export type { HolePlaces, StitchInput, StitchPlan } from './stitch/stitch-plan.js';
export { stitchRuleFor } from './stitch/stitch-rule.js';
export type { StitchWorkshop } from './stitch/stitch-rule.js';
export { setsOfLayout } from './stitch/sets-of-layout.js';
export { threadLengthMm } from './stitch/thread.js';
export type { ThreadOfSeam } from './stitch/thread.js';
export { gaveWords } from './words/gave-words.js';
export { parsePitchMm } from './units/pitch.js';
export { resolveOrder } from './order/resolve-order.js';
export type { OrderStage } from './order/check-order.js';
export { copiesPerSet } from './order/items.js';
export { nestProblemFor } from './order/problem.js';
export type { KeptLayout, LayoutProblem, ProblemInput } from './order/problem.js';
export type { NamedHide, SheetOptions } from './order/sheets.js';
export { bareCopy, copyRefOf, itemId, pieceCopyKey, pieceCopyOf } from './order/item-id.js';
export type { ItemMeaning } from './order/item-id.js';
export { answerOfLayout } from './layout/answer-of.js';
export type { LayoutAnswer } from './layout/answer-of.js';
export { changedHides } from './layout/changed-hides.js';
export { usedHides } from './layout/used-hides.js';
export { workshopOfLayout } from './layout/workshop-of-layout.js';
export { layoutFrom } from './layout/layout-from.js';
export type { LayoutInput } from './layout/layout-from.js';
export { checkLayout } from './layout/check-layout.js';
export type { CheckLayoutOptions, LayoutCheck, LayoutViolation } from './layout/check-layout.js';
export { cuttingOrder } from './layout/cutting-order.js';
export { compareNumbers, cuttingNumbers } from './layout/cutting-numbers.js';
export { layoutAgain, movedCopies, problemAgain } from './stages/lay-again.js';
export type { AgainInput, AgainProblem } from './stages/lay-again.js';
export { liftFlawed } from './stages/lift-flawed.js';
export type { FlawedCopy, LiftedLayout } from './stages/lift-flawed.js';
export { parseFoundFlaw, withFoundFlaw } from './stages/found-flaw.js';
export type { FlawFrame, FoundFlaw } from './stages/found-flaw.js';
export { restOfHide } from './stages/rest-of-hide.js';
export type { RestOfHide } from './stages/rest-of-hide.js';
export { stageOf } from './stages/stage-of.js';
export type { CuttingStage, HideStage, LeftPiece } from './stages/stage-of.js';
export { tickLayout } from './stages/tick-layout.js';
export type { CopyState, TickWish, TickedCopy, TickedLayout } from './stages/tick-layout.js';
export { meaningsIn, withFigures } from './stages/with-figures.js';
export { seatsOf, withoutSpoiledSeats } from './layout/seats.js';
export type { Seats } from './layout/seats.js';
export { placedRegion, placedRegions, placementTransform } from './layout/placed-region.js';
export { hideUses, layoutYield, yieldOfHide } from './yield/layout-yield.js';
export type { HideUse, YieldInput } from './yield/layout-yield.js';
export { leftoverOf } from './yield/freeing-cut.js';
export type { FreeingCut, Leftover } from './yield/freeing-cut.js';
export { offcutsOf } from './offcuts/offcuts-of.js';
export { pieceList } from './piece-list/piece-list.js';
export type { ListedPiece } from './piece-list/piece-list.js';
export { writePieceListCsv, writePieceListJson } from './piece-list/write-piece-list.js';
export { cardPoints } from './setting-out/card-points.js';
export type { CardPoints } from './setting-out/card-points.js';
export { simpleShape } from './setting-out/simple-shape.js';
export type { SimpleShape } from './setting-out/simple-shape.js';
export { MEASURE_STEP_MM } from './setting-out/frame.js';
export type { Measure, SettingFrame } from './setting-out/frame.js';
export { settingOut } from './setting-out/setting-out.js';
export type {
  BaseLine,
  ChalkMark,
  FlawBeside,
  LaneRowSetting,
  LaneSetting,
  LaneStrapSetting,
  LineEnd,
  OutlineCorner,
  PieceSetting,
  RoughCutSetting,
  SettingOut,
  SettingStep,
} from './setting-out/model.js';
export { formatLength, parseLengthMm } from './units/length.js';
export { formatThickness, mmToOunces, ouncesToMm, parseThickness } from './units/thickness.js';
export { formatArea, mm2ToSquareFeet, parseAreaMm2, quarterFootMark, squareFeetToMm2 } from './units/area.js';
export type { AreaUnit } from './units/area.js';
export { parseAngleDeg } from './units/angle.js';
export { readPageNumbers, writePageNumbers } from './units/page-numbers.js';
export { formatMoney, parseMoney } from './units/money.js';
export {
  compareMoney,
  exactMoney,
  moneyNumber,
  moneyText,
  noMoney,
  overMoney,
  percentOfMoney,
  plusMoney,
  roundMoney,
  shareOfMoney,
  sumPlacedMoney,
  timesMoney,
  toCoins,
} from './units/exact-money.js';
export type { ExactMoney, PlacedMoney } from './units/exact-money.js';
export { areaOfUnit, readPriceUnit } from './units/price-unit.js';
export { articleCard } from './cards/article-card.js';
export type { ArticleCard, ArticleCardInput, CardLeather, CardNeed } from './cards/article-card.js';
export { ALL_LEATHERS, cardOrder } from './cards/card-order.js';
export type { CardLine, CardOrderOptions } from './cards/card-order.js';
export { withLastYield, yieldOfArticle } from './cards/last-yield.js';
export type { StockChoice, StockHide } from './cards/stock-choice.js';
export { leatherBudgets } from './costing/budgets.js';
export { costOfOrder } from './costing/cost-of-order.js';
export type { LeatherBudget, OrderCostInput } from './costing/cost-of-order.js';
export { costOfLayout } from './costing/cost-of-layout.js';
export type { LayoutCostInput } from './costing/cost-of-layout.js';
export { MATERIAL_KINDS, SUM_KINDS } from './costing/cost-sheet.js';
export type {
  ArticleCost,
  CostKind,
  CostRow,
  CostSheet,
  CostUnit,
  CustomerCost,
  HideCostLine,
  KindTotal,
  LeatherCostLine,
  MaterialKind,
  MissingPrice,
  PieceCost,
} from './costing/cost-sheet.js';
export { pricePerUsable } from './costing/hide-cost.js';
export type { CoinSpan, CostSpan, QuantitySpan, SpanOf } from './costing/cost-span.js';
export { parseArticle, writeArticle } from './files/article-file.js';
export { parseOrder, writeOrder } from './files/order-file.js';
export { isArticleReference } from './files/order-in-writing.js';
export type { ArticleReference, OrderFile, WrittenCutting } from './files/order-in-writing.js';
export { completeOrder, resolveArticles } from './files/complete-order.js';
export type { OrderWithArticles, ReadArticle } from './files/complete-order.js';
export { parseWorkshop, writeWorkshop } from './files/workshop-file.js';
export { madeUpHide } from './buying/hides/made-up-hide.js';
export type { MadeUpHideOptions } from './buying/hides/made-up-hide.js';
export { areaToBuy } from './buying/losses/area-to-buy.js';
export type { AreaToBuy, LossShares } from './buying/losses/area-to-buy.js';
export { lossAtEdge, outlineOfCut } from './buying/losses/loss-at-edge.js';
export { areaInLane, areaInRepeat, lossBetween } from './buying/losses/loss-between.js';
export type { RepeatWish, RepeatedPiece } from './buying/losses/loss-between.js';
export { lossesOf, usableFor } from './buying/losses/losses-of.js';
export type { LossPiece, Losses, LossesInput, LossesSpan } from './buying/losses/losses-of.js';
export { lossPieceOf } from './buying/losses/piece-losses.js';
export { DEFAULT_WORKSHOP } from './workshop/default-workshop.js';
export { WORKSHOP_TOPICS, staleRows, workshopRows } from './workshop/workshop-topics.js';
export type { StaleRow, WorkshopRow, WorkshopTopic } from './workshop/workshop-topics.js';
export { completeWorkshop, writeWorkshopInFull } from './files/workshop-in-full.js';
export type { CompletedWorkshop } from './files/workshop-in-full.js';
export { figureOf, middleOf } from './workshop/figures.js';
export { parseAreaSpanMm2 } from './units/area-span.js';
export { FIGURE_UNITS, LEATHER_NEEDS, TEMPERS } from './model/workshop-rules.js';
export type {
  CutSizeRule,
  Figure,
  FigureUnit,
  GoodsRule,
  GradeRule,
  LeatherNeed,
  LeatherWants,
  Offer,
  PriceRounding,
  Span,
  TannageRule,
  Temper,
} from './model/workshop-rules.js';
export { STOCK_JOURNAL_FILE, parseStockJournal, writeStockJournal } from './files/stock-journal-file.js';
export { planTake } from './stock/plan-take.js';
export type { HideInStock, TakeInput, TakePlan } from './stock/plan-take.js';
export { planUndo } from './stock/plan-undo.js';
export type { UndoInput, UndoPlan } from './stock/plan-undo.js';
export type { KeptContent, StockStep } from './stock/stock-step.js';
export { longestStrip } from './stock/longest-strip.js';
export type { InnerStrip } from './stock/longest-strip.js';
export { STOCK_ORDERS, listStock } from './stock/stock-list.js';
export type { ListInput, StockFilter, StockOrder, StockRow } from './stock/stock-list.js';
export { tryPiece } from './stock/try-piece.js';
export type { PieceTrial, StockRemark, TryInput } from './stock/try-piece.js';
export { stockRemarkText } from './words/stock-remarks.js';
export { stripWorthKeeping } from './stock/strips-left.js';
export { holdsAnyWay, largestRectangleAnyWay, stockSizes, usableParts } from './stock/stock-sizes.js';
export type { StockSizes } from './stock/stock-sizes.js';
export { openTakes, stepThatCut, stockFindings, unfinishedStep } from './stock/stock-findings.js';
export { parseJobBundle, writeJobBundle } from './files/job-bundle-file.js';
export { publishedSchemas } from './files/published-schema.js';
export type { JsonSchema } from './files/published-schema.js';
export { describeFormats, describeParts } from './files/describe.js';
export type { FieldDescription, FormatDescription, PartDescription } from './files/describe.js';
export { layoutMark } from './template/layout-mark.js';
export { PAPERS, paperNamed, rollOf } from './template/paper.js';
export type { Paper, RollPaper, SheetPaper } from './template/paper.js';
export { LEAST_MARGIN_MM, USUAL_OVERLAP_MM, refuseUnprintable, sheetFrame } from './template/sheet-frame.js';
export type { Orientation, PageSettings, SheetFrame } from './template/sheet-frame.js';
export type {
  GridPlace,
  JoinMarks,
  PageJoin,
  PageSide,
  TileContent,
  TilePage,
  TilePlan,
} from './template/tile-plan.js';
export { JOIN_SQUARES, MOST_JOINS, joinCode } from './template/join-code.js';
export { JOIN_NAMES_MM, JOIN_PITCH_MM, JOIN_SQUARE_MM } from './template/join-marks.js';
export { MOST_PAGES, planTiles } from './template/plan-tiles.js';
export type { TileRequest } from './template/plan-tiles.js';
export { packCards } from './template/pack-cards.js';
export type { Card, CardPacking, CardSize, PackedCard } from './template/pack-cards.js';
export { cutFileOf, kindsInOrder } from './cutfile/cut-file.js';
export { copyWords, ownerWords } from './cutfile/owner-words.js';
export { CUT_CHOICES, CUT_KINDS, MARK_KINDS } from './cutfile/types.js';
export type {
  CutChoice,
  CutFile,
  CutFileOptions,
  CutFileResult,
  CutKind,
  CutLabel,
  CutOwner,
  CutPath,
  LeadInKind,
} from './cutfile/types.js';
export { MARKER_CODES } from './reference/marker-codes.js';
export { markerOutline } from './reference/marker-outline.js';
export { MOST_PRINT_OFF, parseMeasuredBars } from './reference/measured-bars.js';
export { REFERENCE_PAPERS, barsOfSheet, withPrintedSheets } from './reference/reference-sheets.js';
export type { PrintedSheets, ReferencePaper, ReferenceSheets } from './reference/reference-sheets.js';
export {
  REFERENCE_SHEETS_FILE,
  parseReferenceSheets,
  writeReferenceSheets,
} from './reference/reference-sheets-file.js';
export {
  BAR_MM,
  MARKERS_PER_SHEET,
  MARKER_BLOCK_MM,
  MARKER_FIELDS,
  MARKER_MM,
  MARKER_QUIET_MM,
  MOST_SHEETS,
  PAPER_RING,
  markerCorners,
  markerFields,
  markerId,
  markerPlace,
  printStretch,
} from './reference/sheet-plan.js';
export type { MarkerPlace, MeasuredBars } from './reference/sheet-plan.js';
export { namesOf, buyablesFor } from './buying/trials/buyable.js';
export type { Buyable, BuyablesFound } from './buying/trials/buyable.js';
export { LEVELS, USUAL_LEVEL, needBeliefs, purchaseAnswer } from './buying/trials/buying-answer.js';
export type {
  CountAnswer,
  KindAnswer,
  LevelAnswer,
  CostRange,
  PurchaseAnswer,
} from './buying/trials/buying-answer.js';
export { areaForChance, chanceOfEnough, needAfter } from './buying/trials/need.js';
export type { Need, NeedBeliefs, NeedCase } from './buying/trials/need.js';
export { chanceOfCount } from './buying/trials/chances.js';
export { purchasesOf } from './buying/trials/purchase.js';
export type { Purchase } from './buying/trials/purchase.js';
export { cutThatHolds } from './buying/trials/cut-that-holds.js';
export { hidesOfTrial, layOn, orderOn, runTrial } from './buying/trials/run-trial.js';
export type { MissedPiece, TrialInput, TrialOutcome } from './buying/trials/run-trial.js';
export { runTrials } from './buying/trials/run-trials.js';
export type { TrialRounds, TrialsOptions } from './buying/trials/run-trials.js';
export { serveTrials } from './buying/trials/serve-trials.js';
export { buyingAnswers, buyingJob, firstTrialProblem } from './buying/trials/buying-job.js';
export type { BuyingInput, BuyingJob, BuyingTry } from './buying/trials/buying-job.js';
export { missedFindings } from './buying/trials/missed-findings.js';
export { coverageFor, liquidNeeds, mixOf } from './preparing/liquids.js';
export type { DyeMix, LiquidNeed, LiquidUse } from './preparing/liquids.js';
export { civilTimeAfter, formatCivilTime, formatClock, parseCivilTime } from './preparing/civil-time.js';
export type { CivilTime } from './preparing/civil-time.js';
export { goodsRowOf, partRowOf, tannageRowOf } from './goods/find-goods.js';
export { suitOrder } from './suit/suit-order.js';
export type { SuitInput } from './suit/suit-order.js';
export { SUIT } from './suit/suit-figures.js';
export { FIT_KINDS } from './suit/suit-model.js';
export type {
  FitKind,
  HideFit,
  Suit,
  SuitHide,
  SuitPiece,
  SuitRemark,
  SuitRemarkCode,
  SuitWork,
  Want,
  WantOrigin,
  WantedLeather,
} from './suit/suit-model.js';
export { suitRemarkWords, thicknessWords } from './words/suit.js';
export { preparePlan } from './preparing/prepare-plan.js';
export { planFindings, refuseSpentHides } from './preparing/plan-findings.js';
export type { PreparationJob, PreparePlan } from './preparing/prepare-plan.js';
export type { PreparedBlock } from './preparing/blocks.js';
export type { MarginNeed } from './preparing/margins.js';
export { HAZARDS } from './preparing/hazards.js';
export type { Hazard } from './preparing/hazards.js';
export type { StepKind, Worked, WorkStep } from './preparing/order-of-work.js';
export { readLot } from './preparing/tasks.js';
export type { TimedTask, Timetable, TimetableOptions, WorkingHours } from './preparing/timetable.js';
export { findSwatches, withSwatches } from './preparing/swatches.js';
export type { FoundSwatches, SwatchWish } from './preparing/swatches.js';
export { quickEstimate, usableShareOf } from './buying/estimate/quick-estimate.js';
export type {
  KindEstimate,
  LeatherEstimate,
  QuickEstimateInput,
  Thirds,
} from './buying/estimate/quick-estimate.js';
export { lossPiecesOf, quickNeed } from './buying/estimate/quick-need.js';
export type { NeedLosses, QuickHides, QuickNeed, QuickPiece } from './buying/estimate/quick-need.js';
export { preparedRoughCuts } from './preparing/prepared-blocks.js';
export type { PreparedRoughCut } from './preparing/prepared-blocks.js';
