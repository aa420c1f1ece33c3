import library from '@techstark/opencv-js';
import type { Vision } from './vision.js';

interface StartingLibrary extends Vision {
  onRuntimeInitialized?: () => void;
}

/**
 * The vision library, ready for use, in a box: it has a `then` of its own for some time, and a promise of it alone would
 * never come to an end. Loads some 90 MB and takes 0.2 s; every further call gives the same one.
 */
export function loadVision(): Promise<{ readonly vision: Vision }> {
  const starting = library as unknown as StartingLibrary;
  return new Promise((done) => {
    // The library is there at once, its compiled part comes later; until then it has no matrices.
    if ((starting as Partial<Vision>).Mat !== undefined) done({ vision: starting });
    else {
      const earlier = starting.onRuntimeInitialized;
      starting.onRuntimeInitialized = () => {
        earlier?.();
        done({ vision: starting });
      };
    }
  });
}
