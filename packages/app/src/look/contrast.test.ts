import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

/**
 * Source: WCAG 2.2, "relative luminance" and "contrast ratio"; success criteria 1.4.3 (text: 4.5 to 1) and 1.4.11 (lines
 * and edges that are needed to understand: 3 to 1).
 */
const TEXT = 4.5;
const GRAPHICS = 3;

/** What stands on what, by the names of colours.css. */
const PAIRS: readonly (readonly [string, string, number])[] = [
  ...['paper', 'paper-high', 'paper-low'].flatMap((ground) => [
    ...['ink', 'ink-soft', 'leather-deep', 'warn', 'bad', 'good', 'brass'].map(
      (text) => [text, ground, TEXT] as const,
    ),
    ...['line', 'leather', 'chosen', 'brass'].map((edge) => [edge, ground, GRAPHICS] as const),
  ]),
  ['on-leather', 'leather', TEXT],
  ['on-chosen', 'chosen', TEXT],
  ['on-bad', 'bad', TEXT],
  ['hide-edge', 'hide', GRAPHICS],
  ['hide-edge', 'floor', GRAPHICS],
  ['piece-edge', 'piece', GRAPHICS],
  ['piece-edge', 'hide', GRAPHICS],
  ['ink', 'floor', TEXT],
  ['ink-soft', 'piece', GRAPHICS],
];

type Colours = Readonly<Record<string, string>>;

const css = readFileSync(join(import.meta.dirname, 'colours.css'), 'utf8');

function coloursOf(selector: string): Colours {
  const start = css.indexOf(`${selector} {`);
  expect(start).toBeGreaterThanOrEqual(0);
  const block = css.slice(start, css.indexOf('}', start));
  return Object.fromEntries(
    [...block.matchAll(/--([\w-]+):\s*(#[0-9a-f]{6});/g)].map(([, name, value]) => [name!, value!]),
  );
}

function luminance(colour: string): number {
  const [r, g, b] = [1, 3, 5].map((at) => {
    const share = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r! + 0.7152 * g! + 0.0722 * b!;
}

function contrast(one: string, other: string): number {
  const [light, dark] = [luminance(one), luminance(other)].sort((a, b) => b - a);
  return (light! + 0.05) / (dark! + 0.05);
}

describe('the colours of the app', () => {
  it('when the formula meets the examples of its source, it gives their ratios', () => {
    // WCAG 2.2: black on white is 21 to 1; #767676 on white is known as the lightest grey that text may have.
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 9);
    expect(contrast('#767676', '#ffffff')).toBeCloseTo(4.54, 2);
  });

  for (const [name, selector] of [
    ['light', ':root'],
    ['dark', ":root[data-light='dark']"],
  ] as const) {
    it(`when the light is ${name}, every pair keeps its contrast`, () => {
      const colours = coloursOf(selector);
      const tooWeak = PAIRS.map(([top, ground, least]) => {
        const ratio = contrast(colours[top]!, colours[ground]!);
        return ratio >= least ? '' : `${top} on ${ground}: ${ratio.toFixed(2)} of ${least}`;
      }).filter((words) => words !== '');
      expect(tooWeak).toEqual([]);
    });
  }

  it('when the device is dark and nothing was chosen, the colours are those of the chosen dark', () => {
    expect(coloursOf(":root:not([data-light='light'])")).toEqual(coloursOf(":root[data-light='dark']"));
  });
});
