import { atan2Deg, regionCentroid } from '@hidebound/geometry';
import type { Region } from '@hidebound/geometry';

/** How a shape stretches out. */
export interface LongAxis {
  /** Direction of the long axis, in (-90, 90], clockwise from the x axis. */
  readonly angleDeg: number;
  /** Length over width, of the ellipse with the same second moments; 1 for a disc or a square. */
  readonly slenderness: number;
}

/** Long axis by the second moments of the outer ring's area. */
export function longAxis(region: Region): LongAxis {
  const center = regionCentroid(region);
  let xx = 0;
  let yy = 0;
  let xy = 0;
  const ring = region.outer;
  for (let i = 0; i < ring.length; i++) {
    const px = ring[i]!.x - center.x;
    const py = ring[i]!.y - center.y;
    const qx = ring[(i + 1) % ring.length]!.x - center.x;
    const qy = ring[(i + 1) % ring.length]!.y - center.y;
    const twice = px * qy - qx * py;
    xx += (twice * (px * px + px * qx + qx * qx)) / 12;
    yy += (twice * (py * py + py * qy + qy * qy)) / 12;
    xy += (twice * (px * qy + 2 * px * py + 2 * qx * qy + qx * py)) / 24;
  }
  const spread = Math.sqrt(((xx - yy) / 2) ** 2 + xy ** 2);
  const mean = (xx + yy) / 2;
  return {
    angleDeg: atan2Deg(2 * xy, xx - yy) / 2,
    slenderness: Math.sqrt((mean + spread) / Math.max(mean - spread, 1e-9)),
  };
}

/** Steeper than this, text reads upwards, so that the head need only be bent to one side. */
const UPWARDS_FROM_DEG = 80;

/** The same direction, turned by half where text along it would stand on its head: in [-100, 80). */
export function readableDeg(angleDeg: number): number {
  const within = ((angleDeg % 180) + 180) % 180;
  return within >= UPWARDS_FROM_DEG ? within - 180 : within;
}
