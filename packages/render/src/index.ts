export type {
  Drawing,
  DrawingElement,
  FontFace,
  GroupElement,
  ImageElement,
  ImageFile,
  Layer,
  PathElement,
  PathStyle,
  Stroke,
  TextAnchor,
  TextElement,
} from './drawing/model.js';
export { boxCorners, chain, circle, group, line, path, rectangle, regionCurves } from './drawing/build.js';
export { formatNumber } from './drawing/format-number.js';
export { hatchLines } from './drawing/hatch.js';
export type { HatchOptions } from './drawing/hatch.js';
export { createFontBook } from './text/font-book.js';
export type { FontBook, FontFiles } from './text/font-book.js';
export {
  capitalHeightMm,
  fitText,
  measureText,
  missingCharacters,
  textLine,
  wrapText,
} from './text/measure-text.js';
export type { TextMeasure, TextSetting } from './text/measure-text.js';
export { namesUsedTwice, writePatternSvg } from './pattern/write-pattern-svg.js';
export type { PatternSvgOptions } from './pattern/write-pattern-svg.js';
export { curveToPathData, writeSvg } from './svg/write-svg.js';
export { writePdf } from './pdf/write-pdf.js';
export type { PdfOptions } from './pdf/write-pdf.js';
export { RenderError } from './error.js';
export type { RenderErrorCode } from './error.js';
export { drawCuttingSheets } from './sheet/cutting-sheet.js';
export type { CuttingSheetOptions } from './sheet/cutting-sheet.js';
export { PAGE_SIZES } from './sheet/page-size.js';
export type { PageName, PageSize } from './sheet/page-size.js';
export { drawLayoutTrueScale } from './sheet/true-scale.js';
export type { TrueScaleOptions } from './sheet/true-scale.js';
export { drawSettingOut } from './setting-out/draw-setting-out.js';
export type { SettingOutOptions } from './setting-out/draw-setting-out.js';
export { drawHide } from './picture/draw-hide.js';
export type { HidePictureOptions } from './picture/draw-hide.js';
export type { HidePicture, HidePictures } from './picture/hide-photo.js';
export { drawPieces } from './picture/draw-pieces.js';
export type { PieceStitches, PiecesPictureOptions } from './picture/draw-pieces.js';
export { drawScraps } from './scraps-picture/draw-scraps.js';
export type { NumberedScrap, ScrapsPictureOptions } from './scraps-picture/draw-scraps.js';
export { drawPages } from './pages-picture/draw-pages.js';
export type { PagesPictureOptions } from './pages-picture/draw-pages.js';
export type { PatternPagePicture } from './pages-picture/page-sheet.js';
export { stackDrawings } from './drawing/stack.js';
export type { StackedDrawing } from './drawing/stack.js';
export type { SeenFrom } from './picture/hide-view.js';
export type { LengthUnit } from './sheet/words.js';
export { drawHideTemplate, drawPieceTemplates, drawRoughCutTemplates } from './template/draw-templates.js';
export type { TemplateOptions, TemplatePages } from './template/draw-templates.js';
export { drawCutFile } from './cutfile/cut-drawing.js';
export type {
  CutDrawing,
  CutDrawingOptions,
  CutDrawingPath,
  CutDrawingResult,
} from './cutfile/cut-drawing.js';
export { makeCutFile } from './cutfile/make-cut-file.js';
export type { MadeCutFile } from './cutfile/make-cut-file.js';
export { CUT_LAYERS } from './cutfile/layers.js';
export type { CutLayer } from './cutfile/layers.js';
export { writeCutSvg } from './cutfile/write-cut-svg.js';
export { DXF_VERSIONS, writeDxf } from './dxf/write-dxf.js';
export type { DxfVersion } from './dxf/write-dxf.js';
export { drawReferenceSheet } from './reference/draw-reference-sheet.js';
export type { ReferenceSheetOptions } from './reference/draw-reference-sheet.js';
export { drawReport } from './report/draw-report.js';
export type { ReportOptions } from './report/draw-report.js';
export type {
  Report,
  ReportBar,
  ReportBars,
  ReportBlock,
  ReportChecklist,
  ReportColumn,
  ReportFact,
  ReportItem,
  ReportTable,
  TextTone,
} from './report/report.js';
export { stagePicture } from './stages/stage-picture.js';
export type { StagePictureOptions } from './stages/stage-picture.js';
export { stageReport } from './stages/stage-report.js';
export type { StageReportOptions } from './stages/stage-report.js';
export { shownTopics, valuesReport } from './workshop/values-report.js';
export type { ShownTopic, ShownValue, ValuesOptions } from './workshop/values-report.js';
export { pieceTrialReport, stockHistoryReport, stockReport } from './stock/stock-report.js';
export type { StockReportOptions } from './stock/stock-report.js';
export { drawStockLabels } from './stock/stock-labels.js';
export { pieceListReport } from './piece-list/piece-list-report.js';
export { suitReport } from './suit/suit-report.js';
export type { SuitReportOptions } from './suit/suit-report.js';
export { buyingReport } from './buying/buying-report.js';
export type { BuyingReportInput } from './buying/buying-report.js';
export { chanceChart } from './buying/chance-chart.js';
export { cardReport } from './costing/card-report.js';
export type { CardReportInput } from './costing/card-report.js';
export { drawSmallPieces } from './costing/pieces-picture.js';
export type { SmallPiecesOptions } from './costing/pieces-picture.js';
export { costReport } from './costing/cost-report.js';
export type { CostReportInput } from './costing/cost-report.js';
export { quoteReport } from './costing/quote-report.js';
export type { QuoteInput } from './costing/quote-report.js';
export { hasNothingToPrepare, prepareReport, workshopCard } from './preparing/prepare-report.js';
export type { PrepareReportInput } from './preparing/prepare-report.js';
export { timetableChart } from './preparing/timetable-chart.js';
export type { ChartOptions } from './preparing/timetable-chart.js';
