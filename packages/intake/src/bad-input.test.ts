import { describe, expect, test } from 'vitest';
import { IntakeError } from './error.js';
import { readPatternSvg } from './pattern-svg.js';

const HEAD = '<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm" viewBox="0 0 100 100">';
const bytes = (text: string) => Uint8Array.from(Buffer.from(text));

/** Ten entities, each ten times the one before: a billion characters of a few hundred bytes. */
const BOMB = `<!DOCTYPE svg [<!ENTITY e0 "0123456789">${Array.from(
  { length: 9 },
  (_, i) => `<!ENTITY e${i + 1} "${`&e${i};`.repeat(10)}">`,
).join('')}]>`;

/** Twelve clones, each of ten clones of the one before. */
const CLONES = Array.from(
  { length: 12 },
  (_, i) =>
    `<g id="u${i}">${i === 0 ? '<rect width="3" height="3"/>' : `<use href="#u${i - 1}"/>`.repeat(10)}</g>`,
).join('');

const CASES: readonly (readonly [string, string | Uint8Array, string, RegExp])[] = [
  ['is empty', new Uint8Array(0), 'empty-file', /empty/],
  ['holds only spaces', ' \n ', 'empty-file', /empty/],
  ['is cut off within a tag', `${HEAD}<path d="M0 0`, 'truncated-file', /line 1.*stops in the middle/],
  ['is cut off between tags', `${HEAD}<g>`, 'truncated-file', /stops in the middle/],
  ['is binary', Uint8Array.of(1, 2, 0, 3, 0, 9), 'binary-file', /no drawing.*SVG.*PDF or DXF/],
  ['is a PDF', bytes('%PDF-1.7 ...'), 'binary-file', /a PDF/],
  ['is compressed', Uint8Array.of(0x1f, 0x8b, 8, 0), 'compressed-file', /svgz/],
  ['is far too large', new Uint8Array(200_000_000), 'too-large', /200|191/],
  ['is not valid UTF-8', Uint8Array.of(...bytes(HEAD), 0xff, 0xfe, 0x3c), 'bad-encoding', /UTF-8/],
  ['is another kind of XML', '<html><body/></html>', 'not-svg', /<html>/],
  ['is plain text', 'hello', 'not-svg', /no drawing.*SVG.*PDF or DXF/],
  ['has tags that do not match', `${HEAD}<g></h></svg>`, 'not-well-formed', /broken here/],
  [
    'has an entity that would fill the memory',
    `<!DOCTYPE svg [<!ENTITY a "${'x'.repeat(1000)}"><!ENTITY b "${'&a;'.repeat(1000)}"><!ENTITY c "${'&b;'.repeat(1000)}">]>${HEAD}</svg>`,
    'entity-bomb',
    /grows/,
  ],
  ['has an entity bomb', `${BOMB}${HEAD}<text>&e9;</text></svg>`, 'entity-bomb', /grows/],
  [
    'has entities that contain each other',
    `<!DOCTYPE svg [<!ENTITY a "&b;"><!ENTITY b "&a;">]>${HEAD}</svg>`,
    'entity-bomb',
    /without end/,
  ],
  [
    'uses one long entity very often',
    `<!DOCTYPE svg [<!ENTITY a "${'x'.repeat(60_000)}">]>${HEAD}<text>${'&a;'.repeat(100)}</text></svg>`,
    'entity-bomb',
    /too large/,
  ],
  [
    'names an external entity',
    `<!DOCTYPE svg [<!ENTITY a SYSTEM "file:///secret">]>${HEAD}<text>&a;</text></svg>`,
    'external-entity',
    /nothing is ever fetched/,
  ],
  [
    'names a parameter entity',
    `<!DOCTYPE svg [<!ENTITY % a SYSTEM "http://example.invalid/"> %a;]>${HEAD}</svg>`,
    'external-entity',
    /nothing is ever fetched/,
  ],
  ['nests 200,000 tags', `${HEAD}${'<g>'.repeat(200_000)}`, 'too-deep', /nested/],
  [
    'has a path of a million segments',
    `${HEAD}<path id="long" d="M0 0${'l1 1'.repeat(1_000_000)}"/></svg>`,
    'path-too-long',
    /#long.*simplify/,
  ],
  [
    'has a million pairs after one command',
    `${HEAD}<path d="M0 0l${'1 1 '.repeat(1_000_000)}"/></svg>`,
    'path-too-long',
    /simplify/,
  ],
  [
    'has NaN in a path',
    `${HEAD}<path id="p" d="M0 0L NaN 4"/></svg>`,
    'bad-number',
    /line 1, #p.*not a finite/,
  ],
  ['has an infinite number in a path', `${HEAD}<path id="p" d="M0 0L1e999 4"/></svg>`, 'bad-number', /#p/],
  ['has NaN in a circle', `${HEAD}<circle cx="NaN" r="3"/></svg>`, 'bad-number', /cx/],
  [
    'has an infinite number in a transform',
    `${HEAD}<g transform="matrix(1 0 0 1e999 0 0)"><rect width="3" height="3"/></g></svg>`,
    'bad-number',
    /transform/,
  ],
  [
    'has a point 100 km away',
    `${HEAD}<path id="q" d="M0 0L1e8 4L3 3z"/></svg>`,
    'absurd-coordinate',
    /#q.*100000 m/,
  ],
  [
    'has clones in a circle',
    `${HEAD}<g id="a"><use href="#b"/></g><g id="b"><use href="#a"/></g></svg>`,
    'use-cycle',
    /contains itself/,
  ],
  ['has a clone of what it lies in', `${HEAD}<g id="a"><use href="#a"/></g></svg>`, 'use-cycle', /#a/],
  [
    'has clones of clones without end',
    `${HEAD}<defs>${CLONES}</defs><use href="#u11"/></svg>`,
    'too-many-clones',
    /unlink/,
  ],
];

describe('a file that can not be read', () => {
  test.each(CASES)('when it %s, one sentence says so', (_title, input, code, words) => {
    const error = errorOf(() => readPatternSvg(input, { file: 'bad.svg' }));
    expect(error.code).toBe(code);
    expect(error.message).toMatch(/^bad\.svg/);
    expect(error.message).toMatch(words);
    expect(error.message).not.toMatch(/\n/);
  });
});

function errorOf(run: () => unknown): IntakeError {
  try {
    run();
  } catch (error) {
    if (error instanceof IntakeError) return error;
    throw error;
  }
  throw new Error('It was read.');
}
