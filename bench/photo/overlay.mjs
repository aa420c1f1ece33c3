import { createRequire } from 'node:module';
import { join } from 'node:path';

const WIDTH_PX = 1600;

/** The straightened picture with the true outline (green), the traced one (red), unsure stretches, flaws and candidates. */
export async function drawOverlay({ hide, picture }, truth, { motion, worstAt, worstMm }, file, root) {
  const sharp = createRequire(join(root, 'packages/intake/package.json'))('sharp');
  const scale = WIDTH_PX / picture.width;
  const px = ({ x, y }) =>
    `${((x - picture.origin.x) * picture.pxPerMm * scale).toFixed(2)},${((y - picture.origin.y) * picture.pxPerMm * scale).toFixed(2)}`;
  // The truth comes into the hide's own frame: the motion there is a turn and a move, so its way back is the transpose.
  const back = ({ x, y }) => {
    const [u, v] = [x - motion.e, y - motion.f];
    return { x: motion.a * u + motion.b * v, y: motion.c * u + motion.d * v };
  };
  const line = (points, colour, width, isClosed) =>
    `<path d="M${points.map(px).join('L')}${isClosed ? 'Z' : ''}" fill="none" stroke="${colour}" stroke-width="${width}"/>`;
  const corners = (curve) => [curve.start, ...curve.segments.map(({ to }) => to)];
  const shape = ({ shape: flaw }, colour) => {
    if (flaw.kind === 'point') return line(around(flaw.at, flaw.radiusMm), colour, 1.5, true);
    if (flaw.kind === 'line') return line(flaw.line, colour, 1.5, false);
    return line(corners(flaw.outline), colour, 1.5, true);
  };
  const parts = [
    ...[truth.outline, ...truth.openings].map((ring) => line(ring.map(back), '#00c000', 2.2, true)),
    ...hide.unsureEdges.map((edge) => line(edge.line, '#ffd000', 5, false)),
    ...[hide.outline, ...hide.openings].map((curve) => line(corners(curve), '#ff0000', 1, true)),
    ...hide.candidates.map((one) => shape(one, one.confidence >= 0.5 ? '#ff00ff' : '#c080ff')),
    ...hide.flaws.map((one) => shape(one, '#00b0ff')),
    line(around(back(worstAt), Math.max(25, worstMm)), '#ffffff', 2, true),
    ...(hide.backbone === undefined ? [] : [line(hide.backbone, '#00ffff', 1.5, false)]),
  ];
  const height = Math.round(picture.height * scale);
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${WIDTH_PX}" height="${height}">${parts.join('')}</svg>`;
  const raw = { width: picture.width, height: picture.height, channels: 3 };
  const base = await sharp(picture.rgb, { raw }).resize(WIDTH_PX, height, { fit: 'fill' }).png().toBuffer();
  await sharp(base)
    .composite([{ input: Buffer.from(svg) }])
    .png()
    .toFile(file);
}

function around({ x, y }, radius) {
  return Array.from({ length: 32 }, (_, i) => ({
    x: x + radius * Math.cos((Math.PI * i) / 16),
    y: y + radius * Math.sin((Math.PI * i) / 16),
  }));
}
