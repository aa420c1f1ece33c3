import { html, nothing } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import { isArticleReference } from '@hidebound/leather';
import type { App } from '../../../app/app.js';
import { countField, listField, textField } from '../../../fields/index.js';
import { benchOf, orderOf } from '../bench.js';
import type { Draft } from '../bench.js';
import { draftFor } from '../take.js';
import { goodsField } from './overview.js';

/** Which article new pieces are for: one of the order, or something new, which is named here. */
export function intoSection(app: App): TemplateResult {
  const bench = benchOf(app);
  const articles = (orderOf(app)?.articles ?? []).flatMap((article, i) =>
    isArticleReference(article) ? [] : [[String(i), article.name] as const],
  );
  const isThere = articles.some(([index]) => index === String(bench.into));
  const value = isThere ? String(bench.into) : 'new';
  if (!isThere) bench.into = undefined;
  return html`${
    articles.length === 0
      ? nothing
      : listField(
          'into',
          app.say('pieces.into'),
          [...articles, ['new', app.say('pieces.somethingNew')] as const],
          value,
          (chosen) => {
            bench.into = chosen === 'new' ? undefined : Number(chosen);
            app.redraw();
          },
        )
  }
  ${value === 'new' ? draftFields(app) : nothing}`;
}

function draftFields(app: App): TemplateResult {
  const bench = benchOf(app);
  const draft = bench.draft ?? draftFor(app);
  const set = (patch: Partial<Draft>): void => {
    bench.draft = { ...draft, ...patch };
    app.redraw();
  };
  return html`<fieldset class="leather">
    <legend>${app.say('pieces.whatDoYouMake')}</legend>
    ${textField(app, {
      id: 'draft-name',
      label: app.say('pieces.articleName'),
      value: draft.name,
      take: (name) => set({ name }),
    })}
    ${goodsField(app, 'draft-goods', draft.goods, (goods) => set({ goods }))}
    <div class="counts">
      ${countField(app, {
        id: 'draft-sets',
        label: app.say('pieces.sets'),
        value: draft.sets,
        least: 1,
        most: 10_000,
        take: (sets) => set({ sets }),
      })}
    </div>
  </fieldset>`;
}
