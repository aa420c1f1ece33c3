/**
 * Makes the pictures of docs/nesting.md anew, from runs of the built engine:
 *
 *     pnpm build && node docs/pictures/make-nesting.mjs [poles strip lattices demo]
 *
 * Seeds and work are fixed, so that the same version gives the same pictures. The demo takes a minute or two.
 */
import { writeFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { demoJob } from '../../bench/cases/problem.mjs';
import { demoHidePicture } from './nesting/demo-hide.mjs';
import { latticePicture } from './nesting/lattices.mjs';
import { polesPicture } from './nesting/poles.mjs';
import { separationPictures } from './nesting/separation.mjs';

const FOLDER = dirname(fileURLToPath(import.meta.url));
const JOINS = 24;
const { problem } = demoJob(1).problem;

/** A piece of the demo's order, under the name that the pictures give it. */
function demoPiece(id, name) {
  return { name, region: problem.items.find((item) => item.id === id).region };
}

const MAKERS = {
  poles: () => ({
    'nesting-poles.svg': polesPicture([
      demoPiece('saddlebag/gusset', 'Gusset'),
      demoPiece('saddlebag/back and flap', 'Back and flap'),
      demoPiece('tube protector/protector', 'Tube protector'),
    ]),
  }),
  strip: separationPictures,
  lattices: () => ({
    'nesting-lattices.svg': latticePicture(demoPiece('tool roll/pockets', 'Tool roll pockets')),
  }),
  demo: async () => ({
    // The side and the shoulder: the third hide holds nothing but straps, which lie in their lanes.
    'nesting-demo.svg': await demoHidePicture(problem, { sheets: [0, 1], joins: JOINS }),
  }),
};

const wanted = process.argv.slice(2);
for (const [name, make] of Object.entries(MAKERS)) {
  if (wanted.length > 0 && !wanted.includes(name)) continue;
  for (const [file, svg] of Object.entries(await make())) {
    const path = join(FOLDER, file);
    writeFileSync(path, svg);
    console.log(`${relative(process.cwd(), path)}: ${Math.round(svg.length / 1000)} kB`);
  }
}
