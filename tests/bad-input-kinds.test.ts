import { closeSync, copyFileSync, ftruncateSync, openSync, readFileSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import {
  DEMO,
  OLD_LAYOUT,
  ROOT,
  SMALL_HIDE,
  SMALL_ORDER,
  expectRefused,
  hideboundHere,
  smallJob,
  testFolder,
} from './cli-support.js';
import type { SmallJob } from './cli-support.js';

const folder = testFolder();
const FORMATS = join(ROOT, 'fixtures', 'formats');
const GOOD_LAYOUT = join(ROOT, 'fixtures', 'layouts', 'hand-written.layout.json');

/** A kind of file that is read, and a command that reads one and would write over an old file. */
interface Kind {
  readonly name: string;
  readonly file: string;
  readonly good: string;
  readonly args: (job: SmallJob, bad: string) => readonly string[];
}

const lay = (job: SmallJob, ...more: readonly string[]): readonly string[] => [
  'lay',
  job.order,
  '--effort',
  '0',
  '--out',
  job.layout,
  ...more,
];

const KINDS: readonly Kind[] = [
  {
    name: 'pattern',
    file: 'plate.svg',
    good: join(DEMO, 'patterns', 'saddlebag-front.svg'),
    args: (job, bad) => {
      const order = SMALL_ORDER.replace(/rectangle: .*/, `pattern: ${basename(bad)}\n        piece: plate`);
      writeFileSync(job.order, order);
      return lay(job);
    },
  },
  {
    name: 'traced hide',
    file: 'traced.svg',
    good: join(DEMO, 'shoulder-traced.svg'),
    args: (job, bad) => ['hide', bad, '--out', job.layout],
  },
  {
    name: 'hide',
    file: 'panel.hide.json',
    good: join(DEMO, 'side.hide.json'),
    args: (job) => lay(job),
  },
  {
    name: 'order',
    file: 'test.order.yaml',
    good: join(DEMO, 'bicycle-goods.order.yaml'),
    args: (job) => lay(job),
  },
  {
    name: 'article',
    file: 'tag.article.yaml',
    good: join(DEMO, 'pump-strap.article.yaml'),
    args: (job, bad) => {
      writeFileSync(job.order, `${SMALL_ORDER}  - { file: ${basename(bad)}, sets: 1 }\n`);
      return lay(job);
    },
  },
  {
    name: 'workshop',
    file: 'workshop.yaml',
    good: join(FORMATS, 'every-field.workshop.yaml'),
    args: (job) => lay(job),
  },
  {
    name: 'layout to keep',
    file: 'kept.layout.json',
    good: GOOD_LAYOUT,
    args: (job, bad) => lay(job, '--keep', bad),
  },
  {
    name: 'layout',
    file: 'bad.layout.json',
    good: GOOD_LAYOUT,
    args: (job, bad) => ['sheet', bad, '--svg', job.layout],
  },
];

type Spoil = (path: string, good: string) => void;

const FAULTS: readonly (readonly [string, Spoil, RegExp])[] = [
  ['is empty', (path) => writeFileSync(path, ''), /The file is empty/],
  [
    'is cut short',
    (path, good) => {
      const text = readFileSync(good, 'utf8');
      writeFileSync(path, text.slice(0, cutIn(text)));
    },
    /stops in the middle|breaks off|can't be read as YAML|broken here|missing/,
  ],
  [
    'is binary',
    (path) =>
      writeFileSync(
        path,
        Uint8Array.from({ length: 4096 }, (_, i) => (i * 167 + (i >> 3) * 31) & 255),
      ),
    /not a text file|binary/i,
  ],
  [
    'has 200 MB',
    (path) => {
      const handle = openSync(path, 'w');
      ftruncateSync(handle, 200_000_000);
      closeSync(handle);
    },
    /200 MB, and at most 50 MB are read/,
  ],
];

/** Within a bracket where the text has one in its second half, so that YAML is cut short too and not just shorter. */
function cutIn(text: string): number {
  const bracket = text.indexOf('{', Math.floor(text.length / 2));
  return bracket < 0 ? Math.floor(text.length / 2) : bracket + 3;
}

describe.each(KINDS)('a $name that can not be used', ({ file, good, args }) => {
  it.each(FAULTS)('when it %s, it is refused by name and nothing is touched', async (_, spoil, words) => {
    const job = smallJob(folder);
    const bad = join(job.at, file);
    const command = args(job, bad);
    spoil(bad, good);
    const before = readFileSync(job.layout, 'utf8');
    expectRefused(await hideboundHere(command), bad, words);
    expect(readFileSync(job.layout, 'utf8')).toBe(before);
    expect(before).toBe(OLD_LAYOUT);
  });
});

describe('a file of another kind', () => {
  it.each([
    ['lay', 'panel.hide.json', /an order \(\.order\.yaml\) is wanted, but this is a hide file/],
    ['check', 'test.order.yaml', /a layout \(\.layout\.json\) is wanted, but this is an order/],
    ['hide', 'test.order.yaml', /a hide file \(\.hide\.json\) is wanted, but this is an order/],
    [
      'pieces',
      'test.order.yaml',
      /a drawing \(SVG, PDF or DXF\) is wanted, but this is an order; "hidebound lay" lays it/,
    ],
    ['lay', 'plate.svg', /an order \(\.order\.yaml\) is wanted, but this is a drawing/],
  ])(
    'when %s is given %s, it says what is wanted and what that file is for',
    async (command, file, words) => {
      const job = smallJob(folder);
      copyFileSync(join(DEMO, 'patterns', 'saddlebag-front.svg'), join(job.at, 'plate.svg'));
      const path = join(job.at, file);
      const out = command === 'lay' ? ['--out', job.layout] : [];
      expectRefused(await hideboundHere([command, path, ...out]), path, words);
      expect(readFileSync(job.layout, 'utf8')).toBe(OLD_LAYOUT);
    },
  );
});

describe('an outline of a million segments in a hide file', () => {
  it('when it is read, it is refused within seconds, and the limit is named', async () => {
    const corners = Array.from({ length: 1_000_000 }, (_, i) => {
      const turn = (2 * Math.PI * i) / 1_000_000;
      return `{"to":[${(500 * Math.cos(turn)).toFixed(3)},${(500 * Math.sin(turn)).toFixed(3)}]}`;
    });
    const outline = `{"start":[500,0],"segments":[${corners.join(',')},{"to":[500,0]}],"closed":true}`;
    const { outline: _, ...rest } = SMALL_HIDE;
    const job = smallJob(folder, { hideText: `${JSON.stringify(rest).slice(0, -1)},"outline":${outline}}` });
    expectRefused(
      await hideboundHere(lay(job)),
      job.hide,
      /100000\d segments in its lines, and at most 50000 are read/,
    );
    expect(readFileSync(job.layout, 'utf8')).toBe(OLD_LAYOUT);
  });
});

describe('a YAML file whose anchors multiply without end', () => {
  const levels = Array.from(
    { length: 9 },
    (_, i) => `a${i + 1}: &a${i + 1} [${Array(9).fill(`*a${i}`).join(', ')}]`,
  );
  const bomb = `a0: &a0 [lol]\n${levels.join('\n')}\n`;

  it.each(['article', 'workshop'])('when it is a %s, it is refused', async (name) => {
    const { file, good, args } = KINDS.find((kind) => kind.name === name)!;
    const job = smallJob(folder);
    const bad = join(job.at, file);
    const command = args(job, bad);
    writeFileSync(bad, readFileSync(good, 'utf8') + bomb);
    expectRefused(await hideboundHere(command), bad, /alias/);
    expect(readFileSync(job.layout, 'utf8')).toBe(OLD_LAYOUT);
  });
});

describe('a traced hide whose XML is hostile', () => {
  const drawn = '<path id="outline" d="M0 0H500V300H0Z"/>';
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="500mm" height="300mm" viewBox="0 0 500 300">${drawn}<text>&x;</text></svg>`;

  it.each([
    [
      'expands without end',
      `<!ENTITY a "${'a'.repeat(1000)}"><!ENTITY b "${'&a;'.repeat(100)}"><!ENTITY x "${'&b;'.repeat(100)}">`,
    ],
    ['asks for another file', '<!ENTITY x SYSTEM "file:///etc/hostname">'],
  ])('when its entity %s, it is refused', async (_, entities) => {
    const job = smallJob(folder);
    const path = join(job.at, 'hostile.svg');
    writeFileSync(path, `<!DOCTYPE svg [${entities}]>${svg}`);
    expectRefused(await hideboundHere(['hide', path, '--out', job.layout]), path, /entity/);
    expect(readFileSync(job.layout, 'utf8')).toBe(OLD_LAYOUT);
  });
});

describe('a layout with numbers that can not be', () => {
  it.each([
    ['not a number', 'NaN'],
    ['infinite', '1e999'],
    ['absurd', '6e12'],
  ])('when a place is %s, it is refused', async (_, number) => {
    const job = smallJob(folder);
    const path = join(job.at, 'odd.layout.json');
    const text = readFileSync(GOOD_LAYOUT, 'utf8');
    const at = text.indexOf('"placements"');
    writeFileSync(path, text.slice(0, at) + text.slice(at).replace(/"x": [-\d.]+/, `"x": ${number}`));
    expectRefused(await hideboundHere(['check', path]), path, /coordinate|JSON|number/);
  });
});

describe('an output that is also read', () => {
  it('when a picture or layout would be written over what it is made of, it ends with 2 and nothing is touched', async () => {
    const job = smallJob(folder);
    const svg = join(job.at, 'plate.svg');
    copyFileSync(join(DEMO, 'patterns', 'saddlebag-front.svg'), svg);
    for (const [args, path] of [
      [['pieces', svg, '--picture', svg], svg],
      [['hide', job.hide, '--out', job.hide], job.hide],
      [['lay', job.order, '--out', job.order], job.order],
    ] as const) {
      const before = readFileSync(path, 'utf8');
      const run = await hideboundHere(args);
      expect(run.status, run.stderr).toBe(2);
      expect(run.stderr).toMatch(/is being read and would be written over; give another name/);
      expect(readFileSync(path, 'utf8')).toBe(before);
    }
  });
});
