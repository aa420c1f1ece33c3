import { CUT_LAYERS } from '@hidebound/render';
import type { CutDrawing, Drawing } from '@hidebound/render';

/** Of the longer side: lines of a machine's file are too thin to be seen. */
const LINE_SHARE = 1 / 900;

/** What a machine gets, to be looked at: the same lines and colours, as thick as an eye needs them. */
export function cutPreview({ title, widthMm, heightMm, paths }: CutDrawing): Drawing {
  const line = Math.max(widthMm, heightMm) * LINE_SHARE;
  const pad = line * 4;
  return {
    widthMm: widthMm + 2 * pad,
    heightMm: heightMm + 2 * pad,
    title,
    layers: [
      {
        name: 'lines',
        elements: [
          {
            kind: 'group',
            transform: { a: 1, b: 0, c: 0, d: 1, e: pad, f: pad },
            elements: paths.map(({ kind, curves }) => ({
              kind: 'path' as const,
              curves,
              style: { stroke: { colour: CUT_LAYERS[kind].colour, widthMm: line } },
            })),
          },
        ],
      },
    ],
  };
}
