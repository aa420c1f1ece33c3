import { plural } from '../sentence.js';
import type { Sentence } from '../sentence.js';

/** What can make such a file unreadable. */
export const PDF_REFUSALS = {
  'pdf-broken': () =>
    'The file is not a whole PDF (it is damaged, or stops too early); copy or save it again, or open it in a viewer and print it to a new PDF.',
  'pdf-encrypted': () =>
    'The file is locked with a password and forbids to be read; print it and photograph or scan the pages, or ask its maker for an open copy.',
  'pdf-forbids-reading': () =>
    'The maker of the file forbids to take anything out of it; print it and photograph or scan the pages, or ask its maker for an open copy.',
  'pdf-locked-too-large': ({ megabytes }) =>
    `The file is locked, and a part of ${megabytes} MB in it can't be looked into before it is unpacked; ask its maker for an open copy.`,
  'pdf-no-pages': () => 'The PDF has no pages; save it again from the program that made it.',
  'pdf-no-such-page': ({ page, pages }) =>
    `Page ${page} is asked for, but the file has ${plural(pages, 'page', 'pages')}; take page numbers from 1 to ${pages}.`,
  'pdf-too-many-pages': ({ pages, limit }) =>
    `The PDF has ${pages} pages; a pattern has ${limit} at most, so save those that hold it as a file of their own.`,
  'pdf-only-pictures': () =>
    'The pages hold pictures (scans or photographs) and no drawn lines; if they show card or paper templates on a plain ground, read them with "hidebound trace --pieces" and this file, else trace the pattern in a drawing program, or ask its maker for a PDF with lines.',
  'pdf-no-pictures': () =>
    'The pages hold no pictures that can be read here; a PDF with drawn lines is read with "hidebound pieces", and scans are best saved as JPEG or PNG.',
  'pdf-pictures-too-large': ({ limit }) =>
    `The scanned pages have more than ${limit} million pixels together; scan them at 300 px to the inch, or save some pages as a file of their own.`,
  'pdf-no-lines': () =>
    'No lines are drawn on the pages that are read; check that these pages hold the pattern and that its layers are switched on.',
  'pdf-too-many-operators': ({ limit }) =>
    `The pages take more than ${limit} drawing steps; save the pages of the pattern alone, without pictures and fillings.`,
  'pdf-too-many-forms': ({ limit }) =>
    `Drawings within drawings would be drawn more than ${limit} times; open the file in a viewer and print it to a new PDF.`,
  'pdf-form-unfinished': () =>
    'A drawing within the drawing contains itself or breaks off; open the file in a viewer and print it to a new PDF.',
  'pdf-too-deep': ({ limit }) =>
    `Drawings are nested more than ${limit} deep; open the file in a viewer and print it to a new PDF.`,
  'pdf-clip-too-heavy': () =>
    'The clip paths of the pages take too long to follow; release the clip masks in the drawing program.',
  'pdf-inflates-too-far': ({ limit }) =>
    `A part of the file unpacks to more than ${limit} MB, far more than a drawing needs; open the file in a viewer and print it to a new PDF.`,
  'pdf-too-many-objects': ({ limit }) =>
    `The file says that it holds more than ${limit} objects; open it in a viewer and print it to a new PDF.`,
} as const satisfies Readonly<Record<string, Sentence>>;

/** Findings that are part of a result. */
export const PDF_FINDINGS = {
  'pdf-scale-in-file': ({ name }) =>
    `A PDF gives its size in real units, so ${String(name)} makes no difference; leave it out, or give a scale.`,
  'pdf-white-lines': ({ count, elements }) =>
    `${plural(count, 'path is', 'paths are')} white as the paper and left out (${elements}); give them a colour if they belong to the pattern.`,
  'pdf-thin-areas': ({ count, elements }) =>
    `${plural(count, 'narrow filled area looks', 'narrow filled areas look')} like a line drawn by its outline, so both of its sides are read (${elements}); draw it as a line with a width if it is one.`,
  'pdf-pages-without-lines': ({ pages, count }) =>
    `No lines are drawn on ${Number(count) === 1 ? 'page' : 'pages'} ${pages}; scanned templates are read with "hidebound trace --pieces" and this file.`,
  'pdf-part-not-read': ({ count }) =>
    `${plural(count, 'part', 'parts')} of the file ${Number(count) === 1 ? 'is' : 'are'} packed in a way that is not read, and left out; if lines are missing, print the file to a new PDF.`,
} as const satisfies Readonly<Record<string, Sentence>>;
