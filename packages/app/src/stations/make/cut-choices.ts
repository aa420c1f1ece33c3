import { html, nothing } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import type { App } from '../../app/app.js';
import { layoutAt } from '../../job/job.js';
import type { CutChoices } from '../../work/make-tasks.js';
import { check, field, lengthOf, oneOf } from './controls.js';
import { choose, makeTable } from './table.js';

/** How a machine is to cut: what stands in every workshop first, the rest behind a lid. */
export function cutChoices(app: App): TemplateResult {
  const { cut } = makeTable(app).choices;
  const change = (part: Partial<CutChoices>): void => choose(app, { cut: { ...cut, ...part } });
  const orderKerf = layoutAt(app.job.get(), app.place.get().layout)?.order.cutting.kerfMm ?? 0;
  return html`
    ${oneOf(
      'format',
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
      'cut',
      app.say('make.cut.what'),
      [
        ['pieces', app.say('make.cut.pieces')],
        ['rough-cuts-first', app.say('make.cut.roughFirst')],
        ['both', app.say('make.cut.both')],
      ],
      cut.choice,
      (choice) => change({ choice }),
    )}
    ${lengthOf(
      app,
      'kerf',
      app.say('make.cut.kerf'),
      cut.kerfMm ?? orderKerf,
      (kerfMm) => change({ kerfMm }),
      app.say('make.cut.kerf.hint'),
    )}
    ${check(app.say('make.cut.marks'), cut.marks, (marks) => change({ marks }))}
    ${check(app.say('make.cut.labels'), cut.labels, (labels) => change({ labels }))}
    ${check(app.say('make.cut.frame'), cut.frame, (frame) => change({ frame }))}
    <details class="make-more">
      <summary>${app.say('make.cut.more')}</summary>
      ${lengthOf(app, 'lead-in', app.say('make.cut.leadIn'), cut.leadInMm, (leadInMm) => change({ leadInMm }))}
      ${
        cut.leadInMm > 0
          ? oneOf(
              'lead-in-shape',
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
      ${field(
        app,
        'bridges',
        app.say('make.cut.bridges'),
        app.measures().number(cut.bridges, 0),
        wholeNumber,
        (bridges) => change({ bridges }),
        { hint: app.say('make.cut.bridges.hint') },
      )}
      ${
        cut.bridges > 0
          ? lengthOf(app, 'bridge', app.say('make.cut.bridge'), cut.bridgeMm, (bridgeMm) =>
              change({ bridgeMm }),
            )
          : nothing
      }
      ${lengthOf(app, 'overcut', app.say('make.cut.overcut'), cut.overcutMm, (overcutMm) =>
        change({ overcutMm }),
      )}
    </details>
  `;
}

function wholeNumber(text: string): number | undefined {
  const value = Number(text.trim());
  return Number.isInteger(value) && value >= 0 && value <= 100 ? value : undefined;
}
