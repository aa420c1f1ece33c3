import { html, nothing } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import { ALL_FACE } from '@hidebound/leather';
import type { OrderPiece } from '@hidebound/leather';
import type { App } from '../../../app/app.js';
import { oneOf } from '../../../fields/index.js';
import type { Choice } from '../../../fields/index.js';
import { freePath, pathBeside } from '../../../job/job.js';
import type { JobFile } from '../../../job/job.js';
import { benchOf, boardInput, editOrder, nameInOrder } from '../bench.js';
import { changePiece } from '../order/pieces.js';

/** What is seen of a piece: all of it, what its pattern says, a closed line of it, or what is painted here. */
export function faceSection(app: App, key: string, piece: OrderPiece): TemplateResult {
  const bench = benchOf(app);
  const { chosen } = bench;
  if (chosen.kind !== 'piece') return html``;
  const { article, piece: index } = chosen;
  const set = (face: string | undefined): void =>
    editOrder(app, app.say('pieces.faceLabel', { piece: piece.name }), (order) =>
      changePiece(order, article, index, { face }),
    );
  const choices: readonly Choice<string | undefined>[] = [
    [undefined, app.say('pieces.faceAsDrawn')],
    [ALL_FACE, app.say('pieces.faceAll')],
    ...closedLines(app).map((name) => [name, app.say('pieces.faceLine', { line: name })] as const),
  ];
  return html`<details>
    <summary>${app.say('pieces.face')}</summary>
    ${oneOf(`face-${key}`, app.say('pieces.faceWhat'), choices, piece.face, set, { isColumn: true })}
    ${
      piece.from.kind === 'pattern'
        ? html`<button aria-pressed=${String(bench.tool === 'face')} @click=${() => togglePainting(app)}>
            ${app.say('pieces.paint')}
          </button>`
        : nothing
    }
  </details>`;
}

function closedLines(app: App): readonly string[] {
  const { chosen, board } = benchOf(app);
  if (chosen.kind !== 'piece') return [];
  const shape = board?.articles[chosen.article]?.pieces[chosen.piece]?.shape?.shape;
  if (shape === undefined) return [];
  const lines = [...shape.stitchLines, ...shape.foldLines, ...shape.skiveLines, ...shape.cementLines];
  const names = lines.flatMap(({ name, curve }) => (name !== undefined && curve.closed ? [name] : []));
  return [...new Set(names)];
}

/** While what is seen is painted: how, and what becomes of it. Above all else on the card, since it is done now. */
export function paintingSlip(app: App, piece: OrderPiece): TemplateResult | typeof nothing {
  const bench = benchOf(app);
  if (bench.tool !== 'face') return nothing;
  return html`<section class="painting" aria-label=${app.say('pieces.paint')}>
    <p>${app.say('pieces.paintHow')}</p>
    <div class="row">
      <button class="main" ?disabled=${bench.rings.length === 0} @click=${() => void keepFace(app, piece)}>
        ${app.say('pieces.paintKeep')}
      </button>
      <button
        @click=${() => {
          bench.rings = bench.rings.slice(0, -1);
          app.redraw();
        }}
        ?disabled=${bench.rings.length === 0}
      >
        ${app.say('pieces.paintBack')}
      </button>
      <button class="quiet" @click=${() => togglePainting(app)}>${app.say('pieces.paintLeave')}</button>
    </div>
  </section>`;
}

export function togglePainting(app: App): void {
  const bench = benchOf(app);
  bench.tool = bench.tool === 'face' ? undefined : 'face';
  bench.rings = [];
  app.redraw();
}

/** An order names a face by a line, so what is painted becomes a line of a pattern of the piece's own. */
async function keepFace(app: App, piece: OrderPiece): Promise<void> {
  const bench = benchOf(app);
  const { chosen, rings } = bench;
  const input = boardInput(app);
  if (chosen.kind !== 'piece' || input === undefined || piece.from.kind !== 'pattern') return;
  const { article, piece: index } = chosen;
  try {
    const { name, svg } = await bench.desk.ask('paintFace', { ...input, article, piece: index, rings });
    const path = paintedPath(app, pathBeside(input.path, piece.from.file));
    const file: JobFile = { kind: 'pattern', bytes: svg };
    bench.tool = undefined;
    bench.rings = [];
    editOrder(
      app,
      app.say('pieces.faceLabel', { piece: piece.name }),
      (order) =>
        changePiece(order, article, index, {
          from: { kind: 'pattern', file: nameInOrder(app, path), piece: name },
          face: undefined,
        }),
      new Map([[path, file]]),
    );
  } catch (error) {
    app.tellFailure(error);
  }
}

/** Painted once more, the file that was written for it is written anew; undo has the one before. */
function paintedPath(app: App, path: string): string {
  if (/-face(-\d+)?\.svg$/.test(path)) return path;
  return freePath(app.job.get(), `${path.replace(/\.\w+$/, '')}-face`, '.svg');
}
