import { cutFileOf, cuttingNumbers, ownerWords, pieceCopyKey } from '@hidebound/leather';
import type { CutFile, CutFileOptions, Diagnostic, Hide, Layout } from '@hidebound/leather';
import type { FontBook } from '../text/font-book.js';
import { drawCutFile } from './cut-drawing.js';
import type { CutDrawing } from './cut-drawing.js';

/** The cutting of one hide, drawn for a machine. */
export interface MadeCutFile {
  readonly file: CutFile;
  readonly drawing: CutDrawing;
  readonly diagnostics: readonly Diagnostic[];
}

/** Works out and draws the cutting of one hide; `fonts` where pieces are named. Throws as `cutFileOf`. */
export function makeCutFile(
  layout: Layout,
  hide: Hide,
  options: CutFileOptions,
  fonts: FontBook | undefined,
): MadeCutFile {
  const { file, diagnostics } = cutFileOf(layout, hide, options);
  const numbers = cuttingNumbers(layout);
  const side = options.side === 'flesh' ? ', flesh side up' : '';
  const { drawing, unnamed } = drawCutFile(file, {
    title: `${layout.order.name}: hide ${hide.id}${side}, kerf ${options.kerfMm} mm, in mm`,
    ...(fonts === undefined
      ? {}
      : { text: { fonts, numberOf: (copy) => numbers.get(pieceCopyKey(copy)) ?? '' } }),
  });
  const [first] = unnamed;
  const notes: Diagnostic[] =
    first === undefined
      ? []
      : [
          {
            code: 'label-no-room',
            severity: 'note',
            params: { what: ownerWords({ kind: 'piece', copy: first }), count: unnamed.length },
          },
        ];
  return { file, drawing, diagnostics: [...diagnostics, ...notes] };
}
