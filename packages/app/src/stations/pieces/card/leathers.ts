import { html, nothing } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import type { OrderFile, OrderLeather } from '@hidebound/leather';
import type { App } from '../../../app/app.js';
import {
  checkField,
  listField,
  optionalLengthField,
  textField,
  thicknessSpan,
} from '../../../fields/index.js';
import { filesOfKind } from '../../../job/job.js';
import { editOrder, nameInOrder } from '../bench.js';
import {
  changeCutting,
  changeLeather,
  hideForward,
  isLeatherUsed,
  toggleHide,
  withLeather,
  withMethod,
  withoutLeather,
} from '../order/leathers.js';
import { workshopFor } from '../take.js';
import { tradeWord } from '../../../words/trade.js';

/** Each leather of the order: what it is, and which hides it comes from, in the order of their use. */
export function leathersSection(app: App, order: OrderFile): TemplateResult {
  return html`<details>
    <summary>${app.say('pieces.leathers', { n: order.leathers.length })}</summary>
    ${order.leathers.map((leather, i) => leatherSection(app, order, leather, i))}
    <button
      @click=${() =>
        editOrder(app, app.say('pieces.leatherLabel'), (now) =>
          withLeather(now, { name: app.say('pieces.firstLeather'), hides: [] }),
        )}
    >
      ${app.say('pieces.addLeather')}
    </button>
  </details>`;
}

function leatherSection(app: App, order: OrderFile, leather: OrderLeather, index: number): TemplateResult {
  const { name, colour, thickness, hides } = leather;
  const label = app.say('pieces.leatherChangedLabel', { leather: name });
  const edit = (change: (now: OrderFile) => OrderFile): void => editOrder(app, label, change);
  const change = (patch: Parameters<typeof changeLeather>[2]): void =>
    edit((now) => changeLeather(now, index, patch));
  return html`<fieldset class="leather">
    <legend>${name}</legend>
    ${textField(app, {
      id: `leather-${index}`,
      label: app.say('pieces.leatherName'),
      value: name,
      take: (value) => change({ name: value }),
    })}
    ${textField(app, {
      id: `colour-${index}`,
      label: app.say('pieces.colour'),
      value: colour ?? '',
      isOptional: true,
      take: (value) => change({ colour: value === '' ? undefined : value }),
    })}
    ${thicknessSpan(app, {
      id: `leather-thickness-${index}`,
      range: thickness,
      take: (range) => change({ thickness: range }),
    })}
    <p class="soft">${app.say('pieces.itsHides')}</p>
    <ul class="piece-list">
      ${hidesFor(app, hides).map(
        ({ file, words }) =>
          html`<li class="row">
            ${checkField(words, hides.includes(file), () => edit((now) => toggleHide(now, index, file)))}
            ${
              hides.indexOf(file) > 0
                ? html`<button class="quiet" @click=${() => edit((now) => hideForward(now, index, file))}>
                    ${app.say('pieces.sooner')}
                  </button>`
                : nothing
            }
          </li>`,
      )}
    </ul>
    ${
      isLeatherUsed(order, name)
        ? nothing
        : html`<button class="quiet danger" @click=${() => edit((now) => withoutLeather(now, index))}>
            ${app.say('pieces.removeLeather')}
          </button>`
    }
  </fieldset>`;
}

interface HideChoice {
  readonly file: string;
  readonly words: string;
}

/** Those that are used first, in their order, then the job's others; one that is not there is named by its file. */
function hidesFor(app: App, hides: readonly string[]): readonly HideChoice[] {
  const there = filesOfKind(app.job.get(), 'hide').map(([path, { hide }]): HideChoice => ({
    file: nameInOrder(app, path),
    words: hide.id,
  }));
  const chosen = hides.map(
    (file) =>
      there.find((each) => each.file === file) ?? {
        file,
        words: app.say('pieces.missingHide', { file }),
      },
  );
  return [...chosen, ...there.filter(({ file }) => !hides.includes(file))];
}

const DISTANCES = ['gapMm', 'edgeMm', 'voidMm'] as const;

/** How it is cut; distances come from the workshop's table unless they are said here. */
export function cuttingSection(app: App, order: OrderFile): TemplateResult {
  const { cuttingMethods } = workshopFor(app);
  const { method } = order.cutting;
  const names = cuttingMethods.map((each) => each.method);
  const usual = cuttingMethods.find((each) => each.method === method);
  const label = app.say('pieces.cuttingLabel');
  const words = { gapMm: 'pieces.gap', edgeMm: 'pieces.edge', voidMm: 'pieces.void' } as const;
  return html`<details>
    <summary>${app.say('pieces.cutting')}</summary>
    ${listField(
      'method',
      app.say('pieces.method'),
      (names.includes(method) ? names : [method, ...names]).map(
        (value) => [value, tradeWord(app, 'method', value)] as const,
      ),
      method,
      (value) => editOrder(app, label, (now) => withMethod(now, value)),
    )}
    ${DISTANCES.map((key) =>
      optionalLengthField(app, {
        id: `cutting-${key}`,
        label: app.say(words[key]),
        value: order.cutting[key],
        least: 0,
        ...(usual === undefined ? {} : { placeholder: app.measures().lengthField(usual[key]) }),
        take: (mm) => editOrder(app, label, (now) => changeCutting(now, { [key]: mm })),
      }),
    )}
  </details>`;
}
