import { describe, expect, test } from 'vitest';
import { parseArticle } from '../files/article-file.js';
import { withLastYield } from './last-yield.js';

const HEAD = `# Ours, since spring.
format: hidebound/article@1
name: tag
goods: tag
leathers: { body: {} } # any
pieces:
  - { name: tag, leather: body, part: tab, disc: { diameter: 20 } }
`;
const file = { file: 'tag.article.yaml' };

describe('the last yield in an article file', () => {
  test.each([
    [
      'is there',
      `${HEAD}lastYield: 0.58   # of March\nnotes: Good.\n`,
      `${HEAD}lastYield: 0.613   # of March\nnotes: Good.\n`,
    ],
    ['is a quoted key', `${HEAD}"lastYield": 0.5\n`, `${HEAD}"lastYield": 0.613\n`],
    ['is missing', HEAD, `${HEAD}lastYield: 0.613\n`],
    ['is missing, and no line end either', HEAD.trimEnd(), `${HEAD}lastYield: 0.613\n`],
  ])('when it %s, nothing but its value changes, byte for byte', (_, before, after) => {
    expect(withLastYield(before, 0.6128, file)).toBe(after);
    expect(parseArticle(after, file)).toEqual({ ...parseArticle(before, file), lastYield: 0.613 });
  });

  test('when the file is JSON, the key is added within its braces', () => {
    const json = JSON.stringify(
      {
        format: 'hidebound/article@1',
        name: 't',
        goods: 't',
        leathers: { body: {} },
        pieces: [{ name: 'a', leather: 'body', part: 'tab', disc: { diameter: 20 } }],
      },
      null,
      2,
    );
    const after = withLastYield(json, 0.5, file);
    expect(JSON.parse(after)).toEqual({ ...(JSON.parse(json) as object), lastYield: 0.5 });
  });

  test('when the words of a note look like the key, they stay', () => {
    const text = `${HEAD}notes: |\n  lastYield: 0.1\nlastYield: 0.2\n`;
    expect(withLastYield(text, 0.3, file)).toBe(text.replace('0.2', '0.3'));
  });

  test('when the file is not sound, it is refused and nothing is made of it', () => {
    expect(() => withLastYield(HEAD.replace('goods', 'godos'), 0.5, file)).toThrow(/godos/);
  });
});
