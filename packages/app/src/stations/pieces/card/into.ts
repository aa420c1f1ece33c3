import { html, nothing } from 'lit-html';
import type { TemplateResult } from 'lit-html';
import { isArticleReference } from '@hidebound/leather';
import type { App } from '../../../app/app.js';
import { benchOf, orderOf } from '../bench.js';
import type { Draft } from '../bench.js';
import { draftFor } from '../take.js';
import { selectField, stepper, textField } from './fields.js';
import { goodsField } from './overview.js';

/** Which article new pieces are for: one of the order, or something new, which is named here. */
export function intoSection(app: App): TemplateResult {
  const bench = benchOf(app);
  const articles = (orderOf(app)?.articles ?? []).flatMap((article, i) =>
    isArticleReference(article) ? [] : [{ value: String(i), words: article.name }],
  );
  const isThere = articles.some(({ value }) => value === String(bench.into));
  const value = isThere ? String(bench.into) : 'new';
  if (!isThere) bench.into = undefined;
  return html`${
    articles.length === 0
      ? nothing
      : selectField(
          'into',
          app.say('pieces.into'),
          value,
          [...articles, { value: 'new', words: app.say('pieces.somethingNew') }],
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
    ${textField({
      id: 'draft-name',
      label: app.say('pieces.articleName'),
      value: draft.name,
      set: (name) => set({ name }),
    })}
    ${goodsField(app, 'draft-goods', draft.goods, (goods) => set({ goods }))}
    <div class="counts">
      <span>${app.say('pieces.sets')}</span>
      ${stepper(app, {
        id: 'draft-sets',
        label: app.say('pieces.sets'),
        value: draft.sets,
        least: 1,
        most: 10_000,
        set: (sets) => set({ sets }),
      })}
    </div>
  </fieldset>`;
}
