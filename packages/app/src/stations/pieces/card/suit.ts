import { html, nothing } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import { suitRemarkWords } from '@hidebound/leather';
import type { OrderPiece, SuitRemark } from '@hidebound/leather';
import type { App } from '../../../app/app.js';
import { filesOfKind } from '../../../job/job.js';
import type { ShownFit } from '../../../work/patterns-tasks.js';
import { askSuit, benchOf } from '../bench.js';

/** Which of the job's hides suits this piece; looked up when it is first opened. */
export function suitSection(app: App, piece: OrderPiece): TemplateResult | typeof nothing {
  if (filesOfKind(app.job.get(), 'hide').length === 0) return nothing;
  return html`<details
    class="suits"
    @toggle=${({ target }: Event) => (target as HTMLDetailsElement).open && ask(app)}
  >
    <summary>${app.say('pieces.suits')}</summary>
    ${answer(app, piece)}
  </details>`;
}

function ask(app: App): void {
  askSuit(app);
  app.redraw();
}

function answer(app: App, piece: OrderPiece): TemplateResult {
  const { suit, suitRefused, chosen, board } = benchOf(app);
  if (suitRefused !== undefined) return html`<p class="finding is-warning">${app.sentence(suitRefused)}</p>`;
  if (suit === undefined) return html`<button @click=${() => ask(app)}>${app.say('pieces.suitAsk')}</button>`;
  if (suit === 'asked') return html`<p class="soft">${app.say('pieces.suitAsked')}</p>`;
  const article = chosen.kind === 'piece' ? board?.articles[chosen.article]?.name : undefined;
  const found = suit.find((each) => each.article === article && each.piece === piece.name);
  return html`<dl class="suit">
    ${(found?.fits ?? []).map(
      (fit) =>
        html`<dt>${fit.hide}</dt>
          <dd>
            <b>${kindWords(app, fit)}</b>
            ${fit.remarks.map((remark) => html`<span class="soft">${remarkWords(app, remark)}</span>`)}
          </dd>`,
    )}
  </dl>`;
}

function remarkWords(app: App, remark: SuitRemark): string {
  return app.sentence({
    sentence: suitRemarkWords(remark),
    finding: { of: 'suit remark', ...remark },
  });
}

function kindWords(app: App, { kind, skiveTo }: ShownFit): string {
  if (kind === 'skive' && skiveTo !== undefined)
    return app.say('pieces.suit.skiveTo', { thickness: app.measures().thicknessRange(skiveTo) });
  return app.say(`pieces.suit.${kind}`);
}
