import { composeAffine, invertAffine } from '@hidebound/geometry';
import { INTAKE_SENTENCES } from '@hidebound/intake';
import { loadVision, traceHide } from '@hidebound/intake/photo';
import type { Photo, TraceOptions, TraceRead } from '@hidebound/intake/photo';
import {
  REFERENCE_SHEETS_FILE,
  barsOfSheet,
  parseHide,
  parsePhotoHints,
  parseReferenceSheets,
  writeHide,
  writePhotoHints,
} from '@hidebound/leather';
import type { Hide, PhotoHints } from '@hidebound/leather';
import type { RawPhoto, TraceAsked, TraceDone, TraceStep } from '../photo-tasks.js';
import { told } from '../told.js';
import { carryOver } from './carry-over.js';
import { decodePhoto } from './decode-photo.js';
import { encodePixels } from './encode-picture.js';
import { hintsFromMarks } from './hints-from-marks.js';

/**
 * A hide from photos, as the command makes it.
 * @throws IntakeError, LeatherError
 */
export async function traceFromPhotos(
  asked: TraceAsked,
  progress: (step: TraceStep) => void,
  handOver: (buffers: readonly ArrayBuffer[]) => void,
): Promise<TraceDone> {
  progress('open');
  const photos = await decodePhotos(asked.photos);
  const sides = {
    raking: await decodePhotos(asked.raking ?? []),
    otherSide: await decodePhotos(asked.otherSide ?? []),
  };
  progress('load');
  const { vision } = await loadVision();
  const trace = (hints: PhotoHints): TraceRead =>
    traceHide(photos, { ...optionsFor(asked, hints), ...sides, onStage: progress }, vision);
  const { marks, changed } = asked;
  const known = 'text' in asked.hints ? parsePhotoHints(asked.hints.text, asked.hints) : asked.hints;
  const views = marks === undefined ? [] : (asked.views ?? trace(known).views);
  const hints = marks === undefined ? known : hintsFromMarks(known, marks, views);
  const { hide: traced, picture, diagnostics, report, views: seen } = trace(hints);
  const [before, after] = [views[0], seen[0]];
  const hide =
    changed === undefined || before === undefined || after === undefined
      ? traced
      : soundHide(carryOver(changed, traced, composeAffine(after.frame, invertAffine(before.frame))));
  const encoded = await encodePixels(picture.width, picture.height, picture.rgb);
  handOver([encoded.buffer]);
  const findings = diagnostics.map((finding) => ({ ...finding, ...told(finding, [INTAKE_SENTENCES]) }));
  return { hide, picture: encoded, hintsText: writePhotoHints(hints), findings, report, views: seen };
}

/** One after the other: many large ones at once would not fit a phone's memory. */
async function decodePhotos(raw: readonly RawPhoto[]): Promise<readonly Photo[]> {
  const photos: Photo[] = [];
  for (const photo of raw) photos.push(await decodePhoto(photo));
  return photos;
}

/** As its file will be read again. Throws LeatherError where it would not be. */
function soundHide(hide: Hide): Hide {
  return parseHide(writeHide(hide), { file: hide.id });
}

function optionsFor(asked: TraceAsked, hints: PhotoHints): TraceOptions {
  const { id, sideUp, pictureFile, hintsFile, cut, leather, lot, invoicedMm2, sheets } = asked;
  const printed =
    sheets === undefined ? undefined : parseReferenceSheets(sheets, { file: REFERENCE_SHEETS_FILE });
  return {
    id,
    sideUp,
    pictureFile,
    isMoved: asked.isMoved === true,
    ...(hints.photos.length === 0 ? {} : { hints, hintsFile }),
    ...(printed === undefined ? {} : { barsOf: (sheet: number) => barsOfSheet(printed, sheet) }),
    ...(cut === undefined ? {} : { cut }),
    leather: leather ?? {},
    ...(lot === undefined ? {} : { lot }),
    ...(invoicedMm2 === undefined ? {} : { invoicedMm2 }),
  };
}
