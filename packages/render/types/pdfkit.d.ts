/** The part of pdfkit 0.20.2 that is used here, two private fields included. */
declare module 'pdfkit' {
  import type { Font } from 'fontkit';

  export interface PdfInfo {
    Title?: string;
    Author?: string;
    Subject?: string;
    Creator?: string;
    Producer?: string;
    CreationDate?: Date;
  }

  export interface PdfOptions {
    autoFirstPage?: boolean;
    compress?: boolean;
    pdfVersion?: '1.4' | '1.5' | '1.6' | '1.7';
    lang?: string;
    font?: Font;
    info?: PdfInfo;
    margin?: number;
  }

  export interface PdfReference {
    readonly data: Record<string, unknown>;
    end(): void;
  }

  /** A picture file that is part of a document. */
  export interface PdfImage {
    readonly width: number;
    readonly height: number;
  }

  class PDFDocument {
    constructor(options?: PdfOptions);
    /** Private: the catalogue of the document. */
    readonly _root: PdfReference;
    /** The page that is being drawn. */
    readonly page: { readonly dictionary: PdfReference; readonly resources: PdfReference };
    ref(data: Record<string, unknown>): PdfReference;
    addContent(operators: string): this;
    addPage(options: { size: [number, number]; margin: number }): this;
    registerFont(name: string, font: Font): this;
    font(name: string): this;
    fontSize(size: number): this;
    text(text: string, x: number, y: number, options: { lineBreak: boolean; baseline: 'alphabetic' }): this;
    save(): this;
    restore(): this;
    transform(a: number, b: number, c: number, d: number, e: number, f: number): this;
    moveTo(x: number, y: number): this;
    lineTo(x: number, y: number): this;
    bezierCurveTo(x1: number, y1: number, x2: number, y2: number, x: number, y: number): this;
    closePath(): this;
    lineWidth(width: number): this;
    lineCap(cap: 'butt' | 'round' | 'square'): this;
    lineJoin(join: 'miter' | 'round' | 'bevel'): this;
    dash(lengths: number[], options: { phase: number }): this;
    undash(): this;
    fillColor(colour: string): this;
    strokeColor(colour: string): this;
    opacity(opacity: number): this;
    openImage(file: Uint8Array): PdfImage;
    image(
      image: PdfImage,
      x: number,
      y: number,
      options: { width: number; height: number; ignoreOrientation: boolean },
    ): this;
    fill(rule: 'even-odd'): this;
    stroke(): this;
    fillAndStroke(fill: string, stroke: string, rule: 'even-odd'): this;
    clip(rule: 'even-odd'): this;
    on(event: 'data', listener: (chunk: Uint8Array) => void): this;
    on(event: 'end', listener: () => void): this;
    on(event: 'error', listener: (error: Error) => void): this;
    end(): void;
  }

  export { PDFDocument as default };
}
