import type { Report, ReportBlock, ReportTable } from '@hidebound/render';
import { html } from 'lit-html';
import type { TemplateResult } from 'lit-html';

/** A report in words, for small screens and for those who listen. */
export function reportText(report: Report): TemplateResult {
  return html`<article class="make-text" lang="en">
    <h3>${report.title}</h3>
    <p class="soft">${report.subtitle}</p>
    ${report.blocks.map(blockText)}
  </article>`;
}

function blockText(block: ReportBlock): TemplateResult {
  switch (block.kind) {
    case 'section':
      return html`<h4>${block.title}</h4>`;
    case 'text':
      return html`<p class="make-tone-${block.tone}">${block.text}</p>`;
    case 'facts':
      return html`<dl class="figures">
        ${block.rows.map(
          ({ name, value }) =>
            html`<dt>${name}</dt>
              <dd>${value}</dd>`,
        )}
      </dl>`;
    case 'table':
      return tableText(block);
    case 'checklist':
      return html`<ul class="make-steps">
        ${block.items.map(
          ({ text, detail, aside }) =>
            html`<li>
              ${text}${aside === undefined ? '' : html` <strong>${aside}</strong>`}
              ${detail === undefined ? '' : html`<small class="soft">${detail}</small>`}
            </li>`,
        )}
      </ul>`;
    case 'bars':
      return html`<dl class="figures">
        ${block.rows.map(
          ({ name, text }) =>
            html`<dt>${name}</dt>
              <dd>${text}</dd>`,
        )}
      </dl>`;
    case 'picture':
      return html`<p class="soft">${block.caption}</p>`;
  }
}

function tableText({ columns, rows, totals }: ReportTable): TemplateResult {
  const cells = (row: readonly string[]): TemplateResult[] =>
    row.map((text, i) => html`<td class=${columns[i]?.align ?? 'left'}>${text}</td>`);
  return html`<div class="make-scroll" tabindex="0" role="group">
    <table>
      <thead>
        <tr>
          ${columns.map(({ head, align }) => html`<th scope="col" class=${align}>${head}</th>`)}
        </tr>
      </thead>
      <tbody>
        ${rows.map(
          (row) =>
            html`<tr>
              ${cells(row)}
            </tr>`,
        )}
        ${
          totals === undefined
            ? ''
            : html`<tr class="total">
                ${cells(totals)}
              </tr>`
        }
      </tbody>
    </table>
  </div>`;
}
