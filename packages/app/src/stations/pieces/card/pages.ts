import { html, nothing } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import { PAGE_JOINTS, PAGE_ORDERS, readPageNumbers, writePageNumbers } from '@hidebound/leather';
import type { PagesReading } from '@hidebound/leather';
import type { App } from '../../../app/app.js';
import { countField, listField, oneOf, optionalLengthField, readField } from '../../../fields/index.js';
import type { PatternShown, ShownPage } from '../../../work/patterns-tasks.js';
import { benchOf, readingFor } from '../bench.js';
import type { Patch } from '../order/patch.js';
import { changePages, togglePage } from '../order/readings.js';
import { changeReadingOf } from './patterns.js';

/** More than these are told by their numbers only: no one taps through hundreds. */
const MOST_BUTTONS = 40;
const MOST_COLUMNS = 100;

/** Of a PDF: which pages hold the pattern, and how they lie together. */
export function pagesSection(
  app: App,
  path: string,
  { read }: PatternShown,
): TemplateResult | typeof nothing {
  const said = readingFor(app, path).pages;
  const pages = read?.pages ?? [];
  if (!/\.pdf$/i.test(path) || (pages.length < 2 && said === undefined)) return nothing;
  const change = (patch: Patch<PagesReading>): void =>
    changeReadingOf(app, path, { pages: changePages(said, patch) });
  // Only pages that are taken are read; what else the file has is known from before they were chosen.
  const { allPages } = benchOf(app);
  const numbers = pages.map(({ number }) => number);
  if (read !== undefined && said?.take === undefined) allPages.set(path, numbers);
  const whole = allPages.get(path);
  const all = whole ?? [...new Set([...numbers, ...(said?.take ?? [])])].sort((a, b) => a - b);
  return html`<details ?open=${read === undefined}>
    <summary>${app.say('pieces.pages', { n: all.length })}</summary>
    ${howJoined(app, pages, all)}
    ${pageButtons(app, all, said, (page) => change({ take: togglePage(said?.take, all, page, whole !== undefined) }))}
    ${pageNumbers(app, path, said, change)}
    ${listField(
      `join-${path}`,
      app.say('pieces.pagesJoin'),
      [
        ['', app.say('pieces.pagesJoin.found')] as const,
        ...PAGE_JOINTS.map((join) => [join, app.say(`pieces.pagesJoin.${join}`)] as const),
      ],
      said?.join ?? '',
      (join) =>
        change(
          join === 'grid'
            ? { join, columns: said?.columns ?? usualColumns(said?.take?.length ?? pages.length) }
            : { join: join === '' ? undefined : join },
        ),
    )}
    ${said?.join === 'grid' ? gridFields(app, path, said, change) : nothing}
  </details>`;
}

/** Most patterns lie about as wide as high. */
function usualColumns(pages: number): number {
  return Math.max(1, Math.ceil(Math.sqrt(pages)));
}

/** "By marks that they share: 2-7". */
function howJoined(app: App, pages: readonly ShownPage[], all: readonly number[]): TemplateResult {
  const ways = ['marks', 'lines', 'grid', 'alone', 'left out'] as const;
  return html`<ul>
    ${ways.flatMap((way) => {
      const numbers = all.filter(
        (page) => (pages.find(({ number }) => number === page)?.joinedBy ?? 'left out') === way,
      );
      return numbers.length === 0
        ? []
        : [html`<li>${app.say(`pieces.joinedBy.${way}`, { pages: writePageNumbers(numbers) })}</li>`];
    })}
  </ul>`;
}

function pageButtons(
  app: App,
  all: readonly number[],
  said: PagesReading | undefined,
  toggle: (page: number) => void,
): TemplateResult | typeof nothing {
  if (all.length < 2 || all.length > MOST_BUTTONS) return nothing;
  const now = said?.take ?? all;
  return html`<fieldset class="press-row">
    <legend>${app.say('pieces.pagesWhich')}</legend>
    ${all.map(
      (page) =>
        html`<button
          type="button"
          aria-pressed=${String(now.includes(page))}
          aria-label=${app.say('pieces.page', { n: page })}
          ?disabled=${now.length === 1 && now[0] === page}
          @click=${() => toggle(page)}
        >
          ${page}
        </button>`,
    )}
  </fieldset>`;
}

function pageNumbers(
  app: App,
  path: string,
  said: PagesReading | undefined,
  change: (patch: Patch<PagesReading>) => void,
): TemplateResult {
  return readField<readonly number[] | undefined>(app, {
    id: `pages-${path}`,
    label: app.say('pieces.pagesByNumber'),
    hint: app.say('pieces.pagesHint'),
    shown: said?.take === undefined ? '' : writePageNumbers(said.take),
    read: (text) => {
      if (text === '') return { value: undefined };
      try {
        return { value: readPageNumbers(text) };
      } catch {
        return { slip: app.say('pieces.noPages', { text }) };
      }
    },
    take: (take) => change({ take }),
  });
}

function gridFields(
  app: App,
  path: string,
  { columns = 1, order = 'rows', overlapMm }: PagesReading,
  change: (patch: Patch<PagesReading>) => void,
): TemplateResult {
  const lap = (which: 0 | 1) =>
    optionalLengthField(app, {
      id: `lap-${which}-${path}`,
      label: app.say(which === 0 ? 'pieces.lapAcross' : 'pieces.lapDown'),
      value: overlapMm?.[which],
      least: 0,
      take: (mm) => change({ overlapMm: lapsWith(overlapMm, which, mm) }),
    });
  return html`${countField(app, {
      id: `columns-${path}`,
      label: app.say('pieces.columns'),
      value: columns,
      least: 1,
      most: MOST_COLUMNS,
      take: (value) => change({ columns: value }),
    })}
    ${oneOf(
      `page-order-${path}`,
      app.say('pieces.pageOrder'),
      PAGE_ORDERS.map((each) => [each, app.say(`pieces.pageOrder.${each}`)] as const),
      order,
      (next) => change({ order: next }),
      { isColumn: true },
    )}
    <div class="pair">${lap(0)} ${lap(1)}</div>
    <p class="soft">${app.say('pieces.lapHow')}</p>`;
}

/** One overlap alone counts both ways, as most printers lay pages. */
function lapsWith(
  now: readonly [number, number] | undefined,
  which: 0 | 1,
  mm: number | undefined,
): readonly [number, number] | undefined {
  if (mm === undefined) return undefined;
  const [across, down] = now ?? [mm, mm];
  return which === 0 ? [mm, down] : [across, mm];
}
