import { MAX_PICTURE_PIXELS } from './limits.js';
import { nearPorts } from './near-port.js';
import type { NearPort } from './near-port.js';
import { PDF_OPTIONS } from './pdfjs-options.js';

/**
 * The parts of pdf.js that the reader uses, among them one that is not in its public interface: the stream of a page's
 * operators (`_transport.messageHandler`), which can be stopped while it comes; the public call gathers all of them
 * first, and of a hostile page there are billions. A test holds this against the version that is installed.
 */
export interface PdfDocument {
  readonly numPages: number;
  getPage(number: number): Promise<PdfPage>;
  /** Flags that are granted; nothing for a file without restrictions. */
  getPermissions(): Promise<readonly number[] | null>;
  getOptionalContentConfig(options: { intent: string }): Promise<PdfLayers>;
}

export interface PdfPage {
  /** Crop box within the media box, user space units: x, y of two opposite corners. */
  readonly view: readonly number[];
  readonly rotate: number;
  readonly userUnit: number;
  cleanup(): boolean;
  readonly _transport: { readonly messageHandler: MessageHandler };
}

interface MessageHandler {
  sendWithStream(action: string, data: object): { getReader(): OperatorReader };
}

/** The platform's reader of a stream. */
export interface OperatorReader {
  read(): Promise<{ readonly done: boolean; readonly value?: OperatorChunk }>;
  cancel(reason: Error): Promise<void>;
}

/** Some operators in their order, with their operands. */
export interface OperatorChunk {
  readonly fnArray: readonly number[];
  readonly argsArray: readonly unknown[];
  readonly length: number;
}

/** Optional content: which layers are there, and which of them are seen (ISO 32000-1, section 8.11). */
export interface PdfLayers {
  isVisible(group: unknown): boolean;
  getGroup(id: string): { readonly name: string | null } | null;
}

export interface LoadingTask {
  readonly promise: Promise<PdfDocument>;
  destroy(): Promise<void>;
}

interface PdfJs {
  readonly getDocument: (options: object) => unknown;
  readonly PDFWorker: new (options: object) => { destroy(): void };
  readonly WorkerMessageHandler: { initializeFromPort(port: NearPort): void };
}

/** A picture that pdf.js has unpacked, or nothing for one that it could not. */
export type OnPicture = (id: string, picture: PdfPicture | undefined) => void;

/** Its pixels row by row; kinds are pdf.js's numbers (`ImageKind`): 1 bit a pixel, 24, or 32 with opacity. */
export interface PdfPicture {
  readonly width: number;
  readonly height: number;
  /** Absent: a mask, of which each 0 bit is painted. */
  readonly kind?: number;
  readonly data: Uint8Array | Uint8ClampedArray;
}

interface ObjectMessage {
  readonly action?: string;
  readonly data?: readonly unknown[];
}

/** Pictures come as objects of a page, or of the document where several pages show them. */
function pictureOf({
  action,
  data,
}: ObjectMessage): { readonly id: string; readonly picture: unknown } | undefined {
  if (data === undefined) return undefined;
  if (action === 'obj' && data[2] === 'Image') return { id: String(data[0]), picture: data[3] };
  if (action === 'commonobj' && data[1] === 'Image') return { id: String(data[0]), picture: data[2] };
  return undefined;
}

/**
 * Opens a document; `destroy` must be called on what this returns. The bytes are taken over. Pictures are unpacked only
 * where somebody listens to them.
 */
export async function startLoading(data: Uint8Array, onPicture?: OnPicture): Promise<LoadingTask> {
  const { getDocument, PDFWorker, WorkerMessageHandler } = await loadPdfJs();
  const [near, far] = nearPorts();
  const pictureOptions = onPicture === undefined ? {} : { maxImageSize: MAX_PICTURE_PIXELS };
  if (onPicture !== undefined) {
    near.addEventListener('message', ({ data: message }) => {
      const found = pictureOf(message as ObjectMessage);
      if (found !== undefined) onPicture(found.id, (found.picture ?? undefined) as PdfPicture | undefined);
    });
  }
  const worker = new PDFWorker({ port: near, verbosity: PDF_OPTIONS.verbosity });
  WorkerMessageHandler.initializeFromPort(far);
  const task = getDocument({ ...PDF_OPTIONS, ...pictureOptions, data, worker }) as LoadingTask;
  return {
    promise: task.promise,
    destroy: async () => {
      await task.destroy();
      worker.destroy();
    },
  };
}

/** What pdf.js says once when it is loaded where nothing can be drawn; nothing is ever drawn here. */
const LOADING_WARNINGS = /^Warning: Cannot (?:load "@napi-rs\/canvas"|polyfill|access the `require`)/;

/** Names of the platform that loading needs. */
interface Platform {
  readonly console: { warn: (...words: unknown[]) => void };
  /** A matrix of the browser's; pdf.js makes one when it is loaded and uses it for drawing alone. */
  DOMMatrix?: unknown;
}

/**
 * pdf.js brings stand-ins for what older browsers lack, and among them slow ones for `push` and its like, which then hold
 * for the whole program. Those of the platform are put back.
 */
function keepArrayMethods(): () => void {
  const names = Object.getOwnPropertyNames(Array.prototype);
  const before = names.map(
    (name) => [name, Object.getOwnPropertyDescriptor(Array.prototype, name)!] as const,
  );
  return () => {
    for (const [name, own] of before) {
      const now = Object.getOwnPropertyDescriptor(Array.prototype, name);
      if (typeof own.value === 'function' && now?.value !== own.value) {
        Object.defineProperty(Array.prototype, name, own);
      }
    }
  };
}

/** Both halves, loaded when the first PDF comes. */
async function loadPdfJs(): Promise<PdfJs> {
  const platform = globalThis as unknown as Platform;
  const { console } = platform;
  const before = console.warn;
  const quiet = (...words: unknown[]) => {
    if (!LOADING_WARNINGS.test(String(words[0]))) before.apply(console, words);
  };
  const standIn = platform.DOMMatrix === undefined ? class {} : undefined;
  const putBack = keepArrayMethods();
  console.warn = quiet;
  if (standIn !== undefined) platform.DOMMatrix = standIn;
  try {
    const { WorkerMessageHandler } = (await import('pdfjs-dist/legacy/build/pdf.worker.mjs')) as Pick<
      PdfJs,
      'WorkerMessageHandler'
    >;
    const front = (await import('pdfjs-dist/legacy/build/pdf.mjs')) as unknown as Omit<
      PdfJs,
      'WorkerMessageHandler'
    >;
    return { ...front, WorkerMessageHandler };
  } finally {
    putBack();
    if (console.warn === quiet) console.warn = before;
    if (standIn !== undefined && platform.DOMMatrix === standIn) delete platform.DOMMatrix;
  }
}

/** pdf.js's numbers of rendering intents: for a screen, without annotations, as a plain list. */
const INTENT = { display: 0x02, withoutAnnotations: 0x40, list: 0x100 };

/** The operators of a page as they are parsed. Cancelling it stops the parser. */
export function readOperators(page: PdfPage, pageIndex: number): OperatorReader {
  const stream = page._transport.messageHandler.sendWithStream('GetOperatorList', {
    pageId: pageIndex,
    pageIndex,
    intent: INTENT.display | INTENT.withoutAnnotations | INTENT.list,
    cacheKey: `hidebound-${pageIndex}`,
    annotationStorage: null,
    modifiedIds: null,
  });
  return stream.getReader();
}
