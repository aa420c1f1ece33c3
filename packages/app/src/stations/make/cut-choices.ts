import { html, nothing } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import type { App } from '../../app/app.js';
import { layoutAt } from '../../job/job.js';
import type { CutChoices } from '../../work/make-tasks.js';
import { checkField, lengthField, oneOf, wholeField } from '../../fields/index.js';
import { choose, makeTable } from './table.js';

/** Of one piece; more leave nothing to cut. */
const MOST_BRIDGES = 100;

/** How a machine is to cut: what stands in every workshop first, the rest behind a lid. */
export function cutChoices(app: App): TemplateResult {
  const { cut } = makeTable(app).choices;
  const change = (part: Partial<CutChoices>): void => choose(app, { cut: { ...cut, ...part } });
  const orderKerf = layoutAt(app.job.get(), app.place.get().layout)?.order.cutting.kerfMm ?? 0;
  return html`
    ${oneOf(
      'make-format',
      app.say('make.cut.format'),
      [
        ['R12', app.say('make.cut.r12')],
        ['R2000', app.say('make.cut.r2000')],
        ['svg', 'SVG'],
      ],
      cut.format === 'svg' ? 'svg' : cut.version,
      (picked) => change(picked === 'svg' ? { format: 'svg' } : { format: 'dxf', version: picked }),
    )}
    ${oneOf(
      'make-cut',
      app.say('make.cut.what'),
      [
        ['pieces', app.say('make.cut.pieces')],
        ['rough-cuts-first', app.say('make.cut.roughFirst')],
        ['both', app.say('make.cut.both')],
      ],
      cut.choice,
      (choice) => change({ choice }),
    )}
    ${lengthField(app, {
      id: 'make-kerf',
      label: app.say('make.cut.kerf'),
      hint: app.say('make.cut.kerf.hint'),
      value: cut.kerfMm ?? orderKerf,
      least: 0,
      take: (kerfMm) => change({ kerfMm }),
    })}
    ${checkField(app.say('make.cut.marks'), cut.marks, (marks) => change({ marks }))}
    ${checkField(app.say('make.cut.labels'), cut.labels, (labels) => change({ labels }))}
    ${checkField(app.say('make.cut.frame'), cut.frame, (frame) => change({ frame }))}
    <details class="make-more">
      <summary>${app.say('make.cut.more')}</summary>
      ${lengthField(app, {
        id: 'make-lead-in',
        label: app.say('make.cut.leadIn'),
        value: cut.leadInMm,
        least: 0,
        take: (leadInMm) => change({ leadInMm }),
      })}
      ${
        cut.leadInMm > 0
          ? oneOf(
              'make-lead-in-shape',
              app.say('make.cut.leadInShape'),
              [
                ['straight', app.say('make.cut.straight')],
                ['arc', app.say('make.cut.arc')],
              ],
              cut.leadInKind,
              (leadInKind) => change({ leadInKind }),
            )
          : nothing
      }
      ${wholeField(app, {
        id: 'make-bridges',
        label: app.say('make.cut.bridges'),
        hint: app.say('make.cut.bridges.hint'),
        value: cut.bridges,
        least: 0,
        most: MOST_BRIDGES,
        take: (bridges) => change({ bridges }),
      })}
      ${
        cut.bridges > 0
          ? lengthField(app, {
              id: 'make-bridge',
              label: app.say('make.cut.bridge'),
              value: cut.bridgeMm,
              take: (bridgeMm) => change({ bridgeMm }),
            })
          : nothing
      }
      ${lengthField(app, {
        id: 'make-overcut',
        label: app.say('make.cut.overcut'),
        value: cut.overcutMm,
        least: 0,
        take: (overcutMm) => change({ overcutMm }),
      })}
    </details>
  `;
}
