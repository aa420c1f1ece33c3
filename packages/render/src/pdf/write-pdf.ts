import { arcsToCubics, sinCosDeg } from '@hidebound/geometry';
import type { Curve } from '@hidebound/geometry';
import PDFDocument from 'pdfkit';
import type { PdfImage } from 'pdfkit';
import type {
  Drawing,
  DrawingElement,
  FontFace,
  GroupElement,
  ImageElement,
  ImageFile,
  PathStyle,
  TextElement,
} from '../drawing/model.js';
import { RenderError } from '../error.js';
import { openFonts } from '../text/font-book.js';
import type { FontBook } from '../text/font-book.js';

/** PDF measures in points: 72 to the inch of 25.4 mm. */
const POINTS_PER_MM = 72 / 25.4;

/** The day that stands in every file. Core code has no clock, and equal input is to give equal bytes. */
const FIXED_DATE_MS = Date.UTC(2000, 0, 1);

const FACES: readonly FontFace[] = ['regular', 'bold', 'narrow', 'narrow bold'];

export interface PdfOptions {
  readonly fonts: FontBook;
  readonly title: string;
  readonly subject?: string;
  /** Language of the texts; "en" if absent. */
  readonly language?: string;
}

/**
 * The drawings as a PDF file, one a page, each page as large as its drawing, at true scale; the file asks viewers to
 * print it unscaled, on paper of each page's own size. Fonts are embedded as far as they are used. Equal input gives equal bytes on every machine:
 * streams stay uncompressed, because deflate libraries differ. Throws `bad-drawing` if there is no drawing.
 */
export async function writePdf(drawings: readonly Drawing[], options: PdfOptions): Promise<Uint8Array> {
  if (drawings.length === 0) throw new RenderError('bad-drawing', 'A PDF file needs at least one drawing.');
  const document = openDocument(options);
  const bytes = collect(document);
  const images: OpenImages = new Map();
  for (const drawing of drawings) drawPage(document, drawing, images);
  document.end();
  return bytes;
}

function openDocument(options: PdfOptions): PDFDocument {
  const fonts = openFonts(options.fonts.files);
  const document = new PDFDocument({
    autoFirstPage: false,
    compress: false,
    pdfVersion: '1.6',
    lang: options.language ?? 'en',
    font: fonts.regular,
    info: {
      Title: options.title,
      ...(options.subject === undefined ? {} : { Subject: options.subject }),
      Creator: 'Hidebound',
      Producer: 'Hidebound',
      CreationDate: new Date(FIXED_DATE_MS),
    },
  });
  for (const face of FACES) document.registerFont(face, fonts[face]);
  // The document ends this reference itself.
  document._root.data['ViewerPreferences'] = document.ref({
    PrintScaling: 'None',
    PickTrayByPDFSize: true,
    DisplayDocTitle: true,
  });
  return document;
}

function collect(document: PDFDocument): Promise<Uint8Array> {
  return new Promise((resolve, reject) => {
    const chunks: Uint8Array[] = [];
    document.on('data', (chunk) => chunks.push(chunk));
    document.on('error', reject);
    document.on('end', () => {
      const bytes = new Uint8Array(chunks.reduce((sum, chunk) => sum + chunk.byteLength, 0));
      let offset = 0;
      for (const chunk of chunks) {
        bytes.set(chunk, offset);
        offset += chunk.byteLength;
      }
      resolve(bytes);
    });
  });
}

function drawPage(document: PDFDocument, drawing: Drawing, images: OpenImages): void {
  document.addPage({
    size: [drawing.widthMm * POINTS_PER_MM, drawing.heightMm * POINTS_PER_MM],
    margin: 0,
  });
  setPageBoxes(document, drawing);
  document.save();
  // pdfkit has turned y downwards already; from here on everything is in mm.
  document.transform(POINTS_PER_MM, 0, 0, POINTS_PER_MM, 0, 0);
  for (const layer of drawing.layers) {
    for (const element of layer.elements) drawElement(document, element, images);
  }
  document.restore();
}

/**
 * The whole sheet is shown, printed and kept: all boxes are that of the medium (ISO 32000-1, 14.11.2). They are written
 * out so that no viewer or printer takes another one for the page and scales that to the sheet.
 */
function setPageBoxes(document: PDFDocument, { widthMm, heightMm }: Drawing): void {
  const sheet = [0, 0, widthMm * POINTS_PER_MM, heightMm * POINTS_PER_MM];
  for (const name of ['CropBox', 'BleedBox', 'TrimBox']) document.page.dictionary.data[name] = sheet;
}

function drawElement(document: PDFDocument, element: DrawingElement, images: OpenImages): void {
  switch (element.kind) {
    case 'path':
      if (element.curves.length > 0) drawPath(document, element.curves, element.style);
      break;
    case 'text':
      if (element.text !== '') drawText(document, element);
      break;
    case 'image':
      drawImage(document, element, images);
      break;
    case 'group':
      drawGroup(document, element, images);
      break;
  }
}

function drawGroup(document: PDFDocument, element: GroupElement, images: OpenImages): void {
  const { transform: m, clip } = element;
  document.save();
  if (m !== undefined) document.transform(m.a, m.b, m.c, m.d, m.e, m.f);
  if (clip !== undefined) {
    for (const curve of clip) traceCurve(document, curve);
    document.clip('even-odd');
  }
  for (const child of element.elements) drawElement(document, child, images);
  document.restore();
}

function drawPath(document: PDFDocument, curves: readonly Curve[], style: PathStyle): void {
  const { stroke, fill } = style;
  if (stroke === undefined && fill === undefined) return;
  document.save();
  if (style.opacity !== undefined) document.opacity(style.opacity);
  if (stroke !== undefined) {
    document.lineWidth(stroke.widthMm);
    document.lineCap(stroke.cap ?? 'butt');
    document.lineJoin(stroke.join ?? 'round');
    if (stroke.dashMm !== undefined) document.dash([...stroke.dashMm], { phase: 0 });
  }
  for (const curve of curves) traceCurve(document, curve);
  if (stroke !== undefined && fill !== undefined) document.fillAndStroke(fill, stroke.colour, 'even-odd');
  else if (stroke !== undefined) document.strokeColor(stroke.colour).stroke();
  else if (fill !== undefined) document.fillColor(fill).fill('even-odd');
  document.restore();
}

function traceCurve(document: PDFDocument, curve: Curve): void {
  const smooth = arcsToCubics(curve);
  document.moveTo(smooth.start.x, smooth.start.y);
  for (const segment of smooth.segments) {
    if (segment.kind === 'cubic') {
      const { handle1, handle2, to } = segment;
      document.bezierCurveTo(handle1.x, handle1.y, handle2.x, handle2.y, to.x, to.y);
    } else document.lineTo(segment.to.x, segment.to.y);
  }
  if (curve.closed) document.closePath();
}

/** Picture files that are part of the document already: one that stands on several pages is written once. */
type OpenImages = Map<ImageFile, PdfImage>;

function drawImage(document: PDFDocument, element: ImageElement, images: OpenImages): void {
  const { file, box, opacity } = element;
  const image = images.get(file) ?? document.openImage(file.bytes);
  images.set(file, image);
  document.save();
  if (opacity !== undefined) document.opacity(opacity);
  const [width, height] = [box.maxX - box.minX, box.maxY - box.minY];
  // Its pixels fill the box as they are stored, whatever the file says of how the camera was held: so does SVG.
  document.image(image, box.minX, box.minY, { width, height, ignoreOrientation: true });
  document.restore();
}

function drawText(document: PDFDocument, element: TextElement): void {
  const { sin, cos } = sinCosDeg(element.angleDeg);
  const shift = { start: 0, middle: -element.widthMm / 2, end: -element.widthMm }[element.anchor];
  document.save();
  document.transform(cos, sin, -sin, cos, element.at.x, element.at.y);
  document.font(element.face).fontSize(element.sizeMm).fillColor(element.colour);
  document.text(element.text, shift, 0, { lineBreak: false, baseline: 'alphabetic' });
  document.restore();
}
