import { html, nothing } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import type { App } from '../../../app/app.js';
import { areaCard } from './cards/area-card.js';
import { detailsCard } from './cards/details-card.js';
import { flawCard } from './cards/flaw-card.js';
import { lookingCard, lookingTray } from './cards/looking-card.js';
import { backCard, edgeCard, thicknessCard, zoneCard } from './cards/tool-cards.js';
import { hideNow } from './change-hide.js';
import { TOOLS, marksTable, takeTool } from './table.js';
import type { MarksTable } from './table.js';

export { asksFirst, doubtsLine } from './cards/looking-card.js';
export { MARKS_KEYS } from './keys.js';
export { openMarks } from './open-marks.js';
export { marksTable } from './table.js';

/** The card of the hide that lies in front: what is in hand, its size, what is known of it. */
export function marksCard(app: App): TemplateResult {
  const hide = hideNow(app);
  if (hide === undefined) return html`<p>${app.say('marks.none')}</p>`;
  const table = marksTable(app).get();
  const isLooking = table.looking !== undefined;
  return html`<div class="marks">
    ${isLooking ? lookingCard(app) : toolCard(app, table)} ${areaCard(app, hide)}
    ${isLooking || table.tool !== undefined ? nothing : lookingCard(app)} ${detailsCard(app, hide)}
  </div>`;
}

function toolCard(app: App, { tool, chosen }: MarksTable): TemplateResult | typeof nothing {
  switch (tool) {
    case 'edge':
      return edgeCard(app);
    case 'back':
      return backCard(app);
    case 'zones':
      return zoneCard(app);
    case 'thickness':
      return thicknessCard(app);
    case 'flaws':
      return flawCard(app);
    case undefined:
      return chosen?.kind === 'flaw'
        ? flawCard(app)
        : html`<p class="soft">${app.say('marks.help.none')}</p>`;
  }
}

/** The tools for marking, in words; the one in hand is put away by another press. */
export function marksTray(app: App): TemplateResult {
  const { tool: now, looking } = marksTable(app).get();
  if (looking !== undefined) return lookingTray(app);
  return html`${TOOLS.map(
    (tool) =>
      html`<button
        type="button"
        aria-pressed=${String(tool === now)}
        @click=${() => takeTool(app, tool === now ? undefined : tool)}
      >
        ${app.say(`marks.tool.${tool}`)}
      </button>`,
  )}`;
}
