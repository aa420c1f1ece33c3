import type { SentenceTable } from './sentence.js';

/** English sentences for what can be wrong with a stock of hides and its journal. */
export const STOCK_SENTENCES = {
  'journal-finished': (p: { finished: number; entries: number }) =>
    `The journal says that ${p.finished} of its ${p.entries} entries are finished; at most the last one can be unfinished, so entries are missing or "finished" is wrong.`,
  'journal-change': (p: { file: string }) =>
    `The change of ${p.file} says neither what the file was nor what it became; one of the two must be there.`,

  'stock-not-in': (p: { hide: string }) =>
    `The layout was cut from hide ${p.hide}, which is not in this stock; put its hide file into the folder, or give the right folder.`,
  'stock-id-twice': (p: { hide: string; first: string; second: string }) =>
    `${p.first} and ${p.second} both say that they are hide ${p.hide}; give one of them another id, or take away the copy.`,
  'stock-already-cut': (p: { hide: string }) =>
    `Hide ${p.hide} is cut already, so nothing more can be taken from it; lay the order anew on what is left.`,
  'stock-cut-by-step': (p: { hide: string; number: number; date: string; layout: string }) =>
    `Hide ${p.hide} was cut already on ${p.date} by ${p.layout} (step ${p.number}); undo that step first if it was a mistake.`,
  'stock-hide-changed': (p: { hide: string; file: string }) =>
    `Hide ${p.hide} (${p.file}) was changed after the layout was made, so what is left of it is not known; lay the order anew.`,
  'stock-nothing-laid': () =>
    'No piece of this layout lies on a hide, so that nothing is to be taken; give the layout that was cut.',
  'stock-offcuts-differ': (p: { hide: string }) =>
    `The offcuts that the layout gives for hide ${p.hide} are not what its pieces leave of it; lay the order anew, or write the layout anew from a good copy.`,
  'stock-layout-not-proven': (p: { faults: number }) =>
    `The layout breaks ${p.faults === 1 ? 'a rule' : `${p.faults} rules`} that nobody accepted; "hidebound check" tells which. Its leather is taken all the same.`,
  'stock-nothing-to-undo': () => 'Nothing was taken from this stock that is not undone already.',
  'stock-no-such-step': (p: { number: number; last: number }) =>
    p.last === 0
      ? `There is no step ${p.number}: nothing was taken from this stock yet.`
      : `There is no step ${p.number}; the steps go from 1 to ${p.last}, and --history lists them.`,
  'stock-undone-already': (p: { number: number }) =>
    `Step ${p.number} is undone already, or is itself the undoing of a step; --history lists what can be undone.`,
  'stock-offcut-cut-since': (p: { number: number; offcut: string; by: number }) =>
    `Step ${p.number} can't be undone: offcut ${p.offcut} that came of it was cut by step ${p.by}; undo that one first.`,
  'stock-offcut-marked-cut': (p: { number: number; offcut: string }) =>
    `Step ${p.number} can't be undone: offcut ${p.offcut} that came of it is marked as cut; the leather is no longer whole.`,
  'stock-offcut-gone': (p: { number: number; offcut: string; file: string }) =>
    `Step ${p.number} can't be undone: offcut ${p.offcut} (${p.file}) is no longer in the stock; put its file back first.`,
  'stock-hide-gone': (p: { number: number; hide: string; file: string }) =>
    `Step ${p.number} can't be undone: hide ${p.hide} (${p.file}) is no longer in the stock; put its file back first.`,
  'stock-in-the-way': (p: { file: string; number: number }) =>
    `Step ${p.number} was interrupted, and ${p.file} was changed since; move that file out of the folder, run the command again, and compare the two.`,
  'stock-kept-missing': (p: { file: string; number: number }) =>
    `What step ${p.number} makes of ${p.file} is no longer in "stock.kept" as it was written; put that folder back from a copy.`,
  'stock-completed': (p: { number: number; date: string }) =>
    `Step ${p.number} of ${p.date} was interrupted; it is completed now.`,
  'stock-says-whole': (p: { hide: string; number: number; date: string }) =>
    `The journal says that hide ${p.hide} was cut on ${p.date} (step ${p.number}), but its file was changed to say otherwise; it counts as cut.`,
  'stock-shape-changed': (p: { offcut: string; number: number }) =>
    `The shape of offcut ${p.offcut} is no longer what step ${p.number} left of its hide; it was drawn anew since.`,
  'stock-file-gone': (p: { offcut: string; number: number; file: string }) =>
    `Offcut ${p.offcut} of step ${p.number} has no file any more (${p.file}); if it is not used up, put the file back.`,
  'stock-no-such-piece': (p: { piece: string; known: string }) =>
    `There is no piece "${p.piece}" here; its pieces are ${p.known}.`,
  'stock-piece-of-several': (p: { piece: string; articles: string }) =>
    `Several articles have a piece "${p.piece}" (${p.articles}); say which one with --article.`,
  'stock-broken-file': (p: { file: string; problem: string }) =>
    `${p.file} is left out, because it can't be read: ${p.problem.replace(/\.$/, '')}.`,
  'stock-too-many': (p: { count: number; most: number }) =>
    `There are ${p.count} hide files in this folder, and at most ${p.most} are read; part the stock into several folders.`,
} as const satisfies SentenceTable;
