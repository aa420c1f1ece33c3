import { IntakeError } from '../error.js';
import { ignore, tell } from '../findings.js';
import type { Findings } from '../findings.js';
import { MAX_FILE_BYTES } from '../limits.js';
import { guardStreams } from './guard/streams.js';
import { startLoading } from './pdfjs.js';
import type { LoadingTask, OnPicture, PdfDocument } from './pdfjs.js';

export interface OpenedPdf {
  readonly document: PdfDocument;
  /** Pictures in the file. */
  readonly pictures: number;
  close(): Promise<void>;
}

/** pdf.js's number of the permission to copy text and graphics (ISO 32000-1, table 22, bit 5). */
const COPY = 0x10;

/**
 * Opens a PDF, after a look at what its streams would inflate to. Rejects with `IntakeError` for what may not be read.
 * Pictures are unpacked only if they are asked for.
 */
export async function openPdf(
  bytes: Uint8Array,
  findings: Findings,
  onPicture?: OnPicture,
): Promise<OpenedPdf> {
  const { file } = findings;
  if (bytes.length === 0) throw new IntakeError('empty-file', {}, { file });
  if (bytes.length > MAX_FILE_BYTES) {
    const params = { megabytes: Math.ceil(bytes.length / 2 ** 20), limit: MAX_FILE_BYTES / 2 ** 20 };
    throw new IntakeError('too-large', params, { file });
  }
  const { data, pictures, unread, isLocked } = guardStreams(bytes, file, onPicture !== undefined);
  const task = await startLoading(data, onPicture);
  try {
    const document = await loaded(task, isLocked, file);
    if (pictures > 0 && onPicture === undefined)
      ignore(findings, pictures === 1 ? 'picture' : 'pictures', 'image');
    if (unread > 0) tell(findings, 'warning', 'pdf-part-not-read', { count: unread });
    return { document, pictures, close: () => task.destroy() };
  } catch (reason) {
    await task.destroy();
    throw reason;
  }
}

async function loaded(task: LoadingTask, isLocked: boolean, file: string): Promise<PdfDocument> {
  let document: PdfDocument;
  try {
    document = await task.promise;
  } catch (reason) {
    const isLocked = reason instanceof Error && reason.name === 'PasswordException';
    throw new IntakeError(isLocked ? 'pdf-encrypted' : 'pdf-broken', {}, { file });
  }
  const granted = await document.getPermissions();
  // A lock that is hidden from the look at the streams hides what they unpack to.
  if (granted !== null && !isLocked) throw new IntakeError('pdf-broken', {}, { file });
  if (granted !== null && !granted.includes(COPY)) throw new IntakeError('pdf-forbids-reading', {}, { file });
  return document;
}
