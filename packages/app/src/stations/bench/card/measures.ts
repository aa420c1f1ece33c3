import { html, nothing } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import type { BaseLine, ChalkMark, LineEnd, PieceSetting } from '@hidebound/leather';
import type { App } from '../../../app/app.js';
import { letterOf } from '../logic/letters.js';
import { settingOf } from '../logic/measures-of.js';
import type { ItemSetting } from '../logic/measures-of.js';
import type { WorkItem } from '../logic/order-of-work.js';
import { benchTable } from '../table.js';
import { outWords, ruleLength, turnWords } from './rule-words.js';

/** Where what is in front goes, as a rule and a square tell it. */
export function measures(app: App, item: WorkItem) {
  const out = benchTable(app).setOut.get()?.out;
  if (out?.hide !== item.hide) return html`<p class="soft">${app.say('bench.measuring')}</p>`;
  const setting = settingOf(out, item);
  if (setting === undefined) return nothing;
  return html`${figures(app, out.baseLine, setting)} ${lineWords(app, out.baseLine)}`;
}

function figures(app: App, line: BaseLine, setting: ItemSetting) {
  switch (setting.kind) {
    case 'piece':
      return pieceFigures(app, setting.inBlock === undefined ? line : undefined, setting);
    case 'strap': {
      const { row, strap } = setting;
      return html`<dl class="bench-figures">
          <dt>${app.say('bench.strap.size')}</dt>
          <dd>${ruleLength(app, row.widthMm)} × ${ruleLength(app, strap.lengthMm)}</dd>
          <dt>${app.say('bench.strap.across')}</dt>
          <dd>${ruleLength(app, row.acrossMm)}</dd>
          <dt>${app.say('bench.strap.from')}</dt>
          <dd>${ruleLength(app, strap.startMm)}</dd>
          <dt>${app.say('bench.arrow')}</dt>
          <dd>${app.say(strap.isForward ? 'bench.strap.forward' : 'bench.strap.backward')}</dd>
        </dl>
        <p class="soft">${app.say('bench.strap.words')}</p>`;
    }
    case 'lane':
      return marksTable(app, line, [
        ['P', setting.lane.p],
        ['Q', setting.lane.q],
      ]);
    case 'rough cut':
      return marksTable(
        app,
        line,
        setting.roughCut.corners.map((mark, i) => [letterOf(i), mark] as const),
      );
  }
}

function pieceFigures(
  app: App,
  line: BaseLine | undefined,
  { piece, inBlock }: ItemSetting & { kind: 'piece' },
): TemplateResult {
  const marks = [['A', piece.a] as const, ...(piece.b === undefined ? [] : [['B', piece.b] as const])];
  return html`${marksTable(app, line, marks)}
    <p class="bench-by">${byWords(app, piece)}</p>
    <p class="bench-by">${app.say('bench.arrow')}: ${turnWords(app, piece.turnDeg)}</p>
    ${
      inBlock === undefined
        ? nothing
        : html`<p class="soft">
            ${app.say('bench.inBlock', { from: letterOf(inBlock.baseSide[0]), to: letterOf(inBlock.baseSide[1]) })}
          </p>`
    }
    ${piece.flaws.map((flaw) => html`<p class="bench-flaw">${flawWords(app, flaw)}</p>`)}`;
}

function marksTable(
  app: App,
  line: BaseLine | undefined,
  marks: readonly (readonly [string, ChalkMark])[],
): TemplateResult {
  return html`<table class="bench-marks">
    <thead>
      <tr>
        <td></td>
        <th scope="col">${app.say('bench.along')}</th>
        <th scope="col">${app.say('bench.out')}</th>
      </tr>
    </thead>
    <tbody>
      ${marks.map(
        ([name, { measure }]) =>
          html`<tr>
            <th scope="row">${name}</th>
            <td>${ruleLength(app, measure.alongMm)}</td>
            <td>${outWords(app, line, measure)}</td>
          </tr>`,
      )}
    </tbody>
  </table>`;
}

function byWords(app: App, { by, copy }: PieceSetting): string {
  switch (by.kind) {
    case 'card':
      return app.say(copy.mirrored ? 'bench.by.turned' : 'bench.by.card');
    case 'rectangle':
      return app.say('bench.by.size', {
        width: ruleLength(app, by.widthMm),
        length: ruleLength(app, by.lengthMm),
      });
    case 'disc':
      return app.say('bench.by.disc', { across: ruleLength(app, by.diameterMm) });
  }
}

function flawWords(app: App, { kind, distanceMm }: PieceSetting['flaws'][number]): string {
  const flaw = app.say(`marks.kind.${kind ?? 'none'}`);
  return distanceMm === 0
    ? app.say('bench.flawUnder', { flaw })
    : app.say('bench.flawBeside', { flaw, distance: ruleLength(app, distanceMm) });
}

/** How the line is chalked, for whom it is not on the leather yet. */
function lineWords(app: App, line: BaseLine): TemplateResult {
  return html`<details class="bench-line-words">
    <summary>${app.say('bench.line')}</summary>
    <p>${app.say(`bench.line.${line.kind}`)}</p>
    <p>${endWords(app, 'S', line.start)} ${endWords(app, 'E', line.end)}</p>
    <p>${app.say('bench.line.check', { length: ruleLength(app, line.lengthMm) })}</p>
    <p>${app.say('bench.line.words')}</p>
  </details>`;
}

function endWords(app: App, end: 'S' | 'E', { corner, fromCornerMm }: LineEnd): string {
  return fromCornerMm === 0
    ? app.say(`bench.end.at.${corner.kind}`, { end })
    : app.say(`bench.end.from.${corner.kind}`, { end, length: ruleLength(app, fromCornerMm) });
}
