import { html, nothing } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import type { App } from '../../app/app.js';
import type { Station } from '../../shell/station.js';
import { benchOf, choose, readBoardSoon } from './bench.js';
import { togglePainting } from './card/face.js';
import { beginNumbers, numbersCard } from './card/numbers.js';
import { overviewCard } from './card/overview.js';
import { patternsCard } from './card/patterns.js';
import { pieceCard } from './card/piece.js';
import { toggleMeasuring } from './card/scale.js';
import { isOwnPiece } from './large/chosen-hand.js';
import { openPieces } from './open.js';
import { piecesOfArticle } from './pieces-of.js';
import { addPatterns } from './take.js';

/** What is made, of what, from which pieces. */
export const PIECES_STATION: Station = {
  card,
  tray,
  open: openPieces,
  keys: [
    { key: 'a', words: 'pieces.add', run: (app) => done(() => void addPatterns(app)) },
    { key: 'n', words: 'pieces.addByNumbers', run: (app) => done(() => beginNumbers(app)) },
    { key: 'Escape', words: 'pieces.all', run: leave },
    { key: 'm', words: 'pieces.measure', run: (app) => onPatterns(app) && done(() => toggleMeasuring(app)) },
    { key: 'f', words: 'pieces.paint', run: (app) => canPaint(app) && done(() => togglePainting(app)) },
    { key: '[', words: 'pieces.pieceBefore', run: (app) => step(app, -1) },
    { key: ']', words: 'pieces.pieceAfter', run: (app) => step(app, 1) },
  ],
};

function card(app: App): TemplateResult {
  readBoardSoon(app);
  switch (benchOf(app).chosen.kind) {
    case 'all':
      return html`<div class="pieces-card">${overviewCard(app)}</div>`;
    case 'piece':
      return html`<div class="pieces-card">${pieceCard(app)}</div>`;
    case 'patterns':
      return html`<div class="pieces-card">${patternsCard(app)}</div>`;
    case 'numbers':
      return html`<div class="pieces-card">${numbersCard(app)}</div>`;
  }
}

function tray(app: App): TemplateResult {
  const { chosen, tool } = benchOf(app);
  return html`${
    chosen.kind === 'all'
      ? nothing
      : html`<button @click=${() => choose(app, { kind: 'all' })}>${app.say('pieces.all')}</button>`
  }
  ${
    chosen.kind === 'patterns'
      ? html`<button aria-pressed=${String(tool === 'measure')} @click=${() => toggleMeasuring(app)}>
          ${app.say('pieces.measure')}
        </button>`
      : nothing
  }
  ${
    canPaint(app)
      ? html`<button aria-pressed=${String(tool === 'face')} @click=${() => togglePainting(app)}>
          ${app.say('pieces.paint')}
        </button>`
      : nothing
  }
  ${
    chosen.kind === 'piece'
      ? nothing
      : html`<button @click=${() => void addPatterns(app)}>${app.say('pieces.add')}</button>
          <button @click=${() => beginNumbers(app)}>${app.say('pieces.addByNumbers')}</button>`
  }`;
}

function done(act: () => void): boolean {
  act();
  return true;
}

function leave(app: App): boolean {
  if (benchOf(app).chosen.kind === 'all') return false;
  return done(() => choose(app, { kind: 'all' }));
}

function onPatterns(app: App): boolean {
  return benchOf(app).chosen.kind === 'patterns';
}

function canPaint(app: App): boolean {
  const { chosen } = benchOf(app);
  if (chosen.kind !== 'piece' || !isOwnPiece(app)) return false;
  return piecesOfArticle(app, chosen.article)[chosen.piece]?.from.kind === 'pattern';
}

/** The neighbour of the chosen piece, in the order's order. */
function step(app: App, by: number): boolean {
  const { chosen, board } = benchOf(app);
  const all = (board?.articles ?? []).flatMap(({ pieces }, article) =>
    pieces.map((_, piece) => ({ kind: 'piece', article, piece }) as const),
  );
  if (all.length === 0) return false;
  const at =
    chosen.kind === 'piece'
      ? all.findIndex((each) => each.article === chosen.article && each.piece === chosen.piece) + by
      : by > 0
        ? 0
        : all.length - 1;
  choose(app, all[(at + all.length) % all.length]!);
  return true;
}
