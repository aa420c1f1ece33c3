import { closeSync, ftruncateSync, openSync, readFileSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import {
  DEMO,
  expectOneSentence,
  expectRefused,
  hidebound,
  hideboundHere,
  startHidebound,
  testFolder,
} from './cli-support.js';

const folder = testFolder();
const GOOD = readFileSync(join(DEMO, 'patterns', 'saddlebag-front.svg'), 'utf8');
const PICTURE_BEFORE = '<svg xmlns="http://www.w3.org/2000/svg"/>';

function fileWith(name: string, content: string | Uint8Array): string {
  const path = join(folder, name);
  writeFileSync(path, content);
  return path;
}

/** The file is refused, and a picture that was there before is as it was. */
async function expectPatternRefused(
  name: string,
  content: string | Uint8Array,
  words: RegExp,
): Promise<void> {
  const path = fileWith(name, content);
  const picture = fileWith(`${name}.picture.svg`, PICTURE_BEFORE);
  expectRefused(await hideboundHere(['pieces', path, '--picture', picture]), path, words);
  expect(readFileSync(picture, 'utf8')).toBe(PICTURE_BEFORE);
}

const svg = (body: string, attributes = 'width="100mm" height="100mm" viewBox="0 0 100 100"'): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" ${attributes}>${body}</svg>`;

describe('a pattern file that can not be used', () => {
  it('when there is no such file, it says so', async () => {
    const path = join(folder, 'missing.svg');
    expectRefused(await hideboundHere(['pieces', path]), path, /no such file/);
  });

  it('when it is a folder, it says so', async () => {
    expectRefused(await hideboundHere(['pieces', folder]), folder, /is a folder; give a file/);
  });

  it('when it is empty, it says so', async () => {
    await expectPatternRefused('empty.svg', '', /empty/i);
  });

  it('when it is cut short, it says so and where', async () => {
    await expectPatternRefused('truncated.svg', GOOD.slice(0, GOOD.length / 2), /truncated\.svg:\d+/);
  });

  it('when it is binary, it says so', async () => {
    const bytes = Uint8Array.from({ length: 4096 }, (_, i) => (i * 167 + (i >> 3) * 31) & 255);
    await expectPatternRefused('binary.svg', bytes, /binary|not text|no text/i);
  });

  it('when it has 200 MB, it is refused by its size, and the limit is named', async () => {
    const path = join(folder, 'huge.svg');
    const handle = openSync(path, 'w');
    ftruncateSync(handle, 200_000_000);
    closeSync(handle);
    expectRefused(await hideboundHere(['pieces', path]), path, /200 MB, and at most 50 MB are read/);
  });

  it('when its entities expand without end, it is refused', async () => {
    const levels = Array.from({ length: 12 }, (_, i) => `<!ENTITY e${i + 1} "${`&e${i};`.repeat(10)}">`).join(
      '',
    );
    const bomb = `<!DOCTYPE svg [<!ENTITY e0 "aaaaaaaaaa">${levels}]>${svg('<text>&e12;</text>')}`;
    await expectPatternRefused('bomb.svg', bomb, /entit/i);
  });

  it('when it refers to a file outside, it is refused and nothing is read', async () => {
    const secret = fileWith('secret.txt', 'top secret');
    const content = `<!DOCTYPE svg [<!ENTITY x SYSTEM "file://${secret}">]>${svg('<text>&x;</text>')}`;
    const path = fileWith('external.svg', content);
    const run = await hideboundHere(['pieces', path]);
    expectRefused(run, path, /entit/i);
    expect(run.stdout + run.stderr).not.toContain('top secret');
  });

  it('when it refers to another machine, nothing is fetched', async () => {
    let asked = 0;
    const server = createServer((_, response) => {
      asked++;
      response.end(svg('<rect id="r" width="10" height="10"/>'));
    });
    await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
    const url = `http://127.0.0.1:${(server.address() as AddressInfo).port}/a.svg`;
    const content =
      `<?xml-stylesheet href="${url}" type="text/css"?>` +
      `<!DOCTYPE svg PUBLIC "x" "${url}">` +
      svg(
        `<style>@import url("${url}");</style><image href="${url}" width="10" height="10"/>` +
          `<use href="${url}#r"/><path id="tab" d="M10 10H60V60H10Z"/>`,
      );
    const path = fileWith('fetching.svg', content);
    const child = startHidebound(['pieces', path], folder);
    await new Promise((resolve) => child.once('exit', resolve));
    server.close();
    expect(asked).toBe(0);
  });

  it('when a path has a million segments, it is refused and the limit is named', async () => {
    const steps = Array.from({ length: 1_000_000 }, (_, i) => `l1 ${i % 2}`).join('');
    await expectPatternRefused('long-path.svg', svg(`<path d="M0 0${steps}z"/>`), /segments/);
  });

  it.each([
    ['not a number', 'M0 0H50VNaNH0Z'],
    ['infinite', 'M0 0H1e400V50H0Z'],
    ['absurd', 'M0 0H1e30V50H0Z'],
  ])('when a coordinate is %s, it says so and where', async (_, d) => {
    const path = fileWith(`coordinate-${d.length}.svg`, svg(`<path id="odd" d="${d}"/>`));
    const run = await hideboundHere(['pieces', path]);
    expect(run.status).toBe(3);
    expect(expectOneSentence(run)).toMatch(/#odd/);
  });

  it('when tags are nested without end, it is refused', async () => {
    await expectPatternRefused('deep.svg', svg('<g>'.repeat(100_000) + '</g>'.repeat(100_000)), /deep|nest/i);
  });

  it('when it is no SVG, it says so', async () => {
    await expectPatternRefused('page.svg', '<html><body>hello</body></html>', /SVG/);
  });

  it('when --json is asked for, the refusal is on standard output as data', () => {
    const path = fileWith('empty-json.svg', '');
    const run = hidebound(['pieces', path, '--json']);
    expect(run.status).toBe(3);
    expect(JSON.parse(run.stdout)).toMatchObject({
      command: 'pieces',
      ok: false,
      exitStatus: 3,
      error: { code: 'empty-file', place: { file: path } },
    });
  });
});
