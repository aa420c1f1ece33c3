import { html, nothing } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import type { App } from '../../../app/app.js';
import type { BenchNow } from '../bench-now.js';

/** All that lies is cut: what is left to do. */
export function endCard(app: App, { progress, layout }: BenchNow): TemplateResult {
  const { unlaid, cut } = progress;
  return html`<h2>${app.say(unlaid === 0 ? 'bench.allCut' : 'bench.allCutBut', { n: cut })}</h2>
    ${unlaid === 0 ? nothing : html`<p>${app.say('bench.unlaid', { n: unlaid })}</p>`}
    <h3>${app.say('bench.leftToDo')}</h3>
    <ul>
      ${unlaid === 0 ? nothing : html`<li>${app.say('bench.left.lay')}</li>`}
      ${
        layout.offcuts.length === 0
          ? nothing
          : html`<li>${app.say('bench.left.offcuts', { n: layout.offcuts.length })}</li>`
      }
      <li>
        ${app.say('bench.left.cost')}
        <button @click=${() => app.goTo('make')}>${app.say('bench.toMake')}</button>
      </li>
    </ul>`;
}
