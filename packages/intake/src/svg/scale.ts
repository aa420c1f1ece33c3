import { composeAffine, scaling } from '@hidebound/geometry';
import type { Affine } from '@hidebound/geometry';
import type { PatternReading } from '@hidebound/leather';
import { tell } from '../findings.js';
import type { FileScale, ScaleSource } from '../pattern-read.js';
import type { Findings } from '../findings.js';
import { IntakeError } from '../error.js';
import { MM_PER_INCH, PX_PER_INCH } from '../limits.js';
import type { XmlElement } from '../xml/node.js';
import { DEFAULT_FONT_SIZE, isPhysicalUnit, plainFrame, resolveLength, splitLength } from './length.js';
import type { LengthAxis, LengthFrame } from './length.js';
import { parseViewBox, viewBoxTransform } from './viewport.js';

/** The root's viewport: from its user units to mm, and what lengths within it are measured against. */
export interface RootFrame {
  readonly toMm: Affine;
  readonly frame: LengthFrame;
  readonly scale: FileScale;
  /** The file's own size is in px, so its real size rests on what a px is. */
  readonly isInPx: boolean;
}

/**
 * Resolves the size of the root (SVG 2, sections 8.2 to 8.9; CSS Values 4, section 6.2): the one place where a unit
 * of the file becomes mm. `dpi` says how many px of the file make an inch, `scale` enlarges everything after that.
 */
export function rootFrame(
  root: XmlElement,
  reading: PatternReading | undefined,
  findings: Findings,
): RootFrame {
  checkReading(reading, findings.file);
  const pxPerInch = reading?.dpi ?? PX_PER_INCH;
  const viewBox = parseViewBox(root.attributes.get('viewBox'));
  if (root.attributes.has('viewBox') && viewBox === undefined) {
    tell(findings, 'warning', 'bad-view-box', { value: root.attributes.get('viewBox')! }, { at: '<svg>' });
  }
  const width = rootLength(root, 'width', pxPerInch, findings);
  const height = rootLength(root, 'height', pxPerInch, findings);
  const size = {
    width: width?.px ?? (height === undefined ? viewBox?.width : widthFor(viewBox, height.px)) ?? 0,
    height: height?.px ?? (width === undefined ? viewBox?.height : heightFor(viewBox, width.px)) ?? 0,
  };
  const isPhysical = (width ?? height)?.isPhysical ?? false;
  const inner =
    viewBox === undefined || size.width === 0 || size.height === 0
      ? scaling(1)
      : viewBoxTransform(viewBox, size, root.attributes.get('preserveAspectRatio'));
  const mmPerPx = (MM_PER_INCH / pxPerInch) * (reading?.scale ?? 1);
  const toMm = composeAffine(scaling(mmPerPx), inner);
  if (reading?.dpi !== undefined && isPhysical)
    tell(findings, 'warning', 'dpi-without-effect', {}, { at: '<svg>' });
  const frame = {
    width: viewBox?.width ?? size.width,
    height: viewBox?.height ?? size.height,
    fontSize: DEFAULT_FONT_SIZE,
    pxPerInch,
  };
  const hasSize = width !== undefined || height !== undefined;
  const source = sourceOf(reading, isPhysical, hasSize, viewBox !== undefined);
  return { toMm, frame, scale: { mmPerUnit: evenScale(toMm), source }, isInPx: !isPhysical };
}

function sourceOf(
  reading: PatternReading | undefined,
  isPhysical: boolean,
  hasSize: boolean,
  hasViewBox: boolean,
): ScaleSource {
  if (reading?.scale !== undefined) return 'scale';
  if (isPhysical) return 'units';
  if (reading?.dpi !== undefined) return 'dpi';
  return !hasSize && hasViewBox ? 'viewBox' : '96 px per inch';
}

/** How much lengths grow on average. */
export function evenScale(matrix: Affine): number {
  return Math.sqrt(Math.abs(matrix.a * matrix.d - matrix.b * matrix.c));
}

function rootLength(
  root: XmlElement,
  name: 'width' | 'height',
  pxPerInch: number,
  findings: Findings,
): { readonly px: number; readonly isPhysical: boolean } | undefined {
  const text = root.attributes.get(name)?.trim();
  if (text === undefined || text === '' || text === 'auto' || text.endsWith('%')) return undefined;
  const axis: LengthAxis = name === 'width' ? 'x' : 'y';
  const px = resolveLength(text, plainFrame(pxPerInch), axis);
  if (px === undefined || !(px > 0) || !Number.isFinite(px)) {
    tell(findings, 'warning', 'bad-size', { name, value: text }, { at: '<svg>' });
    return undefined;
  }
  return { px, isPhysical: isPhysicalUnit(splitLength(text)!.unit) };
}

type Size = { readonly width: number; readonly height: number } | undefined;

function widthFor(viewBox: Size, height: number): number | undefined {
  return viewBox === undefined ? undefined : (height * viewBox.width) / viewBox.height;
}

function heightFor(viewBox: Size, width: number): number | undefined {
  return viewBox === undefined ? undefined : (width * viewBox.height) / viewBox.width;
}

function checkReading(reading: PatternReading | undefined, file: string): void {
  const numbers = { dpi: reading?.dpi, scale: reading?.scale, 'known length': reading?.knownLength?.mm };
  for (const [name, value] of Object.entries(numbers)) {
    if (value !== undefined && !(value > 0 && Number.isFinite(value))) {
      throw new IntakeError('bad-reading', { name, value }, { file });
    }
  }
}
