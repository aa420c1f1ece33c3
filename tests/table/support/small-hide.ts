import { photograph, sceneNamed } from '../../photo-trace-support.js';
import type { SimulatedPhoto } from '../../camera/index.js';

/** A small dark skin on a pale floor, four printed sheets around it and little on it: traced and looked through in seconds. */
export function photographSmallHide(file: string): Promise<SimulatedPhoto> {
  const scene = sceneNamed('skin-301', 2000);
  const marks = {
    ...{ scars: 1, brands: 0, stains: 1, bites: 1, veins: 0 },
    ...{ chalkRings: 1, chalkLines: 0, chalkCrosses: 0 },
  };
  return photograph({ ...scene, hides: [{ ...scene.hides[0]!, openings: 1, marks }] }, file);
}
