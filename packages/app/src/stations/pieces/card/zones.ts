import { html } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import { ZONE_KINDS } from '@hidebound/leather';
import type { OrderPiece, ZoneKind } from '@hidebound/leather';
import type { App } from '../../../app/app.js';
import { checkField } from '../../../fields/index.js';
import { toggledZones } from '../order/zones.js';

/** Which parts of a hide the piece may come from. `usual`: by what it is; absent: all of them. */
export function zonesField(
  app: App,
  piece: OrderPiece,
  usual: readonly ZoneKind[] | undefined,
  take: (zones: readonly ZoneKind[] | undefined) => void,
): TemplateResult {
  const now = piece.zones ?? usual ?? ZONE_KINDS;
  return html`<fieldset class="choice column">
    <legend>${app.say('pieces.zones')}</legend>
    ${ZONE_KINDS.map((zone) =>
      checkField(app.say(`marks.zone.${zone}`), now.includes(zone), () =>
        take(toggledZones(now, zone, usual ?? ZONE_KINDS)),
      ),
    )}
    <p class="soft">${app.say('pieces.zonesHow')}</p>
  </fieldset>`;
}
