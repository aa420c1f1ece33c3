// Which numbers of the page for choosing are sums of its result.
import { count, length, versions } from '../reckon.mjs';

export const suit = {
  name: 'suit',
  args: ({ order }) => ['suit', order],
  /** Pieces of each leather that a hide is for, and over how far a fold at a buckle is thinned. */
  derive({ hides, pieces }, inputs) {
    return [
      ...versions(inputs),
      ...hides.flatMap((hide) => hide.leathers.map((leather) => ofLeather(hide, leather, pieces))),
      ...pieces.flatMap((piece) => piece.fits.flatMap((fit) => tapersOf(piece, fit))),
    ];
  },
  relations: () => [],
};

function ofLeather(hide, leather, pieces) {
  const copies = pieces.filter((piece) => piece.leather === leather).map((piece) => piece.copies);
  return count(copies, 'copies of all pieces of a leather', [hide.id, leather]);
}

function tapersOf({ piece, article }, { hide, work }) {
  const ends = work.flatMap(({ taper = [] }) => taper);
  return ends.map((mm) => length(mm, 'work.taper', [piece, article, hide]));
}
