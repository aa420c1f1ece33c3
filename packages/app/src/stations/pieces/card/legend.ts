import { html, nothing, svg } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import type { Piece } from '@hidebound/leather';
import type { App } from '../../../app/app.js';
import type { WordKey } from '../../../words/words.js';

/** The lines that this piece has, each with how it is drawn. */
export function legend(app: App, piece: Piece): TemplateResult {
  const rows: readonly (readonly [boolean, string, WordKey])[] = [
    [true, 'piece-cut', 'pieces.line.cut'],
    [piece.stitchLines.length > 0, 'piece-stitch', 'pieces.line.stitch'],
    [piece.foldLines.length > 0, 'piece-fold', 'pieces.line.fold'],
    [piece.skiveLines.length > 0, 'piece-skive', 'pieces.line.skive'],
    [piece.cementLines.length > 0, 'piece-cement', 'pieces.line.cement'],
    [piece.punches.length > 0, 'piece-punch', 'pieces.line.punch'],
    [piece.notches.length > 0, 'piece-notch', 'pieces.line.notch'],
    [piece.face.length > 0, 'large-face', 'pieces.line.face'],
    [true, 'arrow-line', 'pieces.line.arrow'],
  ];
  return html`<details>
    <summary>${app.say('pieces.legend')}</summary>
    <ul class="legend">
      ${rows.map(([isThere, style, key]) =>
        isThere ? html`<li>${sample(style)} ${app.say(key)}</li>` : nothing,
      )}
    </ul>
  </details>`;
}

function sample(style: string): TemplateResult {
  const isArea = style === 'large-face' || style === 'piece-cut';
  return html`<svg class="legend-sample" width="44" height="16" viewBox="0 0 44 16" aria-hidden="true">
    ${
      style === 'piece-punch'
        ? svg`<circle class=${style} cx="22" cy="8" r="4"></circle>`
        : isArea
          ? svg`<rect class=${style} x="2" y="2" width="40" height="12"></rect>`
          : svg`<path class=${style} d="M2 8H42"></path>`
    }
  </svg>`;
}
