import { html, nothing } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import type { App } from '../../../app/app.js';
import { askFor, lengthField, listField } from '../../../fields/index.js';
import type { Choice } from '../../../fields/index.js';
import type { PatternShown } from '../../../work/patterns-tasks.js';
import { benchOf, readingFor } from '../bench.js';
import { sizeOfPiece } from '../large/snap.js';
import { scaledReading } from '../order/readings.js';
import { changeReadingOf } from './patterns.js';

/** How many times larger or smaller a drawing may be made: beyond, a slip of the pen is likelier. */
const MOST_FACTOR = 1000;

/** A line that she knows, measured on the drawing or chosen by name, against its true length. */
export function scaleSection(
  app: App,
  path: string,
  read: NonNullable<PatternShown['read']>,
): TemplateResult {
  const bench = benchOf(app);
  const measured = bench.measured?.path === path ? bench.measured : undefined;
  const lengthMm =
    measured?.to === undefined
      ? undefined
      : Math.hypot(measured.to.x - measured.from.x, measured.to.y - measured.from.y);
  const measures = app.measures();
  const { scale } = readingFor(app, path);
  return html`<details ?open=${measured !== undefined || bench.tool === 'measure'}>
    <summary>${app.say('pieces.scale')}</summary>
    <p>${app.say('pieces.scaleHow')}</p>
    ${
      scale === undefined
        ? nothing
        : html`<p role="status">${app.say('pieces.scaled', { percent: measures.percent(scale, 2) })}</p>`
    }
    <div class="row">
      <button aria-pressed=${String(bench.tool === 'measure')} @click=${() => toggleMeasuring(app)}>
        ${app.say('pieces.measure')}
      </button>
      ${sideChoice(app, path, read)}
    </div>
    ${
      lengthMm === undefined
        ? measured === undefined
          ? nothing
          : html`<p class="soft">${app.say('pieces.secondPoint')}</p>`
        : html`<p>${app.say('pieces.measured', { length: measures.length(lengthMm) })}</p>
            ${trueLength(app, path, lengthMm)}`
    }
  </details>`;
}

export function toggleMeasuring(app: App): void {
  const bench = benchOf(app);
  bench.tool = bench.tool === 'measure' ? undefined : 'measure';
  app.redraw();
}

/** Width and height of each piece, for those who choose instead of tapping. */
function sideChoice(app: App, path: string, read: NonNullable<PatternShown['read']>): TemplateResult {
  const measures = app.measures();
  const sides = read.pieces.flatMap(({ piece }, i): readonly Choice<string>[] => {
    const { widthMm, heightMm } = sizeOfPiece(piece);
    return [
      [`${i}:w`, app.say('pieces.sideWidth', { piece: piece.name, length: measures.length(widthMm) })],
      [`${i}:h`, app.say('pieces.sideHeight', { piece: piece.name, length: measures.length(heightMm) })],
    ];
  });
  return listField('side', app.say('pieces.side'), [['', '…'], ...sides], '', (chosen) => {
    const [index, side] = chosen.split(':');
    const piece = read.pieces[Number(index)]?.piece;
    if (chosen === '' || piece === undefined) return;
    const { widthMm, heightMm } = sizeOfPiece(piece);
    const from = piece.cut.start;
    const to = side === 'w' ? { x: from.x + widthMm, y: from.y } : { x: from.x, y: from.y + heightMm };
    benchOf(app).measured = { path, from, to };
    app.redraw();
  });
}

function trueLength(app: App, path: string, lengthMm: number): TemplateResult {
  const bench = benchOf(app);
  return lengthField(app, {
    id: 'true-length',
    of: path,
    label: app.say('pieces.trueLength'),
    value: bench.trueMm,
    least: lengthMm / MOST_FACTOR,
    most: lengthMm * MOST_FACTOR,
    take: (mm) => {
      bench.trueMm = mm;
    },
    after: html`<button type="button" @click=${() => useScale(app, path, lengthMm)}>
      ${app.say('pieces.useScale')}
    </button>`,
  });
}

/** What was typed last is taken by now: a field is left before a button is pressed. */
function useScale(app: App, path: string, lengthMm: number): void {
  const bench = benchOf(app);
  const { trueMm } = bench;
  if (trueMm === undefined) {
    askFor(app, ['true-length'], path);
    return;
  }
  const factor = trueMm / lengthMm;
  bench.trueMm = undefined;
  if (Math.abs(factor - 1) < 1e-6) {
    app.tell({ tone: 'calm', text: app.say('pieces.scaleRight') });
    app.redraw();
    return;
  }
  bench.measured = undefined;
  bench.tool = undefined;
  changeReadingOf(app, path, scaledReading(readingFor(app, path), factor));
}
