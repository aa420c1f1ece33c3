import { existsSync, mkdirSync, readFileSync, readdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { connect } from 'node:net';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { beforeAll, describe, expect, it } from 'vitest';
import { testFolder } from './cli-support.js';
import { KEY, askAt, contentsOf, jobFolder, smallSite, sum, testTable } from './table-support.js';
import type { TestTable } from './table-support.js';

const at = testFolder();
const SIDE = '{ "side": 1 }';
let table: TestTable;
let site: string;

beforeAll(async () => {
  site = smallSite(at);
  const folder = jobFolder(at, {
    'side.hide.json': SIDE,
    'patterns/front.svg': '<svg/>',
    'workshop.yaml': 'parts: {}',
    'letter.doc': 'private',
    '.secret/a.svg': 'private',
    'node_modules/b.svg': 'private',
  });
  writeFileSync(join(at, 'outside.svg'), 'outside');
  mkdirSync(join(at, 'away'));
  symlinkSync(join(at, 'outside.svg'), join(folder, 'out.svg'));
  symlinkSync(join(at, 'away'), join(folder, 'away'));
  symlinkSync(join(at, 'nowhere.svg'), join(folder, 'dangling.svg'));
  symlinkSync(join(folder, 'letter.doc'), join(folder, 'letter.svg'));
  symlinkSync(join(folder, 'patterns', 'front.svg'), join(folder, 'same.svg'));
  table = await testTable(folder, site);
});

describe('who is answered', () => {
  // Fetch standard ("Origin" header), W3C Fetch Metadata, OWASP's sheets on cross-site request forgery and, for names
  // of hosts that come to lead here, on server-side request forgery.
  const FOREIGN: readonly (readonly [string, Readonly<Record<string, string | undefined>>])[] = [
    ['a name of another host that leads here', { Host: 'leather.example' }],
    ['such a name with the right port', { Host: 'leather.example:PORT' }],
    ['a name that only begins as ours', { Host: '127.0.0.1.leather.example:PORT' }],
    ['another port', { Host: '127.0.0.1:1' }],
    ['an address of any computer', { Host: '0.0.0.0:PORT' }],
    ['a page of another host', { Origin: 'https://leather.example' }],
    ['a page of another port', { Origin: 'http://127.0.0.1:1' }],
    ['a page of our other name', { Origin: 'http://localhost:PORT' }],
    ['a page over another protocol', { Origin: 'https://127.0.0.1:PORT' }],
    ['a page that hides where it is from', { Origin: 'null' }],
    ['what the browser calls another site', { 'Sec-Fetch-Site': 'cross-site' }],
    ['what the browser calls the same site', { 'Sec-Fetch-Site': 'same-site' }],
  ];
  it.each(FOREIGN)(
    'when the request comes from %s, it is refused, with the key or without',
    async (_, given) => {
      const headers = Object.fromEntries(
        Object.entries(given).map(([name, value]) => [name, value?.replace('PORT', String(table.port))]),
      );
      for (const path of ['/', '/api/files', '/nothing']) {
        const answer = await table.ask(path, { headers });
        expect(answer.status, path).toBe(403);
        expect(answer.headers['access-control-allow-origin']).toBeUndefined();
      }
    },
  );

  it('when a page of its own asks, by either name, it is answered', async () => {
    for (const name of ['127.0.0.1', 'localhost']) {
      const host = `${name}:${table.port}`;
      const headers = { Host: host, Origin: `http://${host}`, 'Sec-Fetch-Site': 'same-origin' };
      expect((await table.ask('/api/files', { headers })).status).toBe(200);
    }
    expect((await table.ask('/', { headers: { 'Sec-Fetch-Site': 'none' } })).status).toBe(200);
  });

  it.each([
    ['no key', undefined],
    ['an empty key', ''],
    ['another key', 'b-key-of-twenty-two-le'],
    ['a part of the key', KEY.slice(0, -1)],
    ['more than the key', `${KEY}x`],
  ])('when there is %s, nothing of the folder is told and nothing is written', async (_, key) => {
    const headers = { 'X-Hidebound-Key': key, 'Content-Type': 'application/json' };
    const body = JSON.stringify({ writes: [{ path: 'keyless.svg', base: null, text: 'x' }] });
    for (const path of ['/api/files', '/api/file?path=side.hide.json', '/api/changes?after=', '/api/none']) {
      const answer = await table.ask(path, { headers });
      expect(answer.status, path).toBe(401);
      expect(answer.json()['code']).toBe('key-needed');
    }
    expect((await table.ask('/api/save', { method: 'POST', headers, body })).status).toBe(401);
    expect(existsSync(join(table.folder, 'keyless.svg'))).toBe(false);
  });

  it('when a page asks first whether it may, it may not', async () => {
    const headers = { 'Access-Control-Request-Method': 'POST', 'X-Hidebound-Key': undefined };
    const answer = await table.ask('/', { method: 'OPTIONS', headers });
    expect(answer.status).toBe(405);
    expect(answer.headers['access-control-allow-origin']).toBeUndefined();
  });

  it('when a save is sent as a form can send it, it is refused', async () => {
    for (const type of ['text/plain', 'application/x-www-form-urlencoded', undefined]) {
      const answer = await table.ask('/api/save', {
        method: 'POST',
        headers: { 'Content-Type': type },
        body: JSON.stringify({ writes: [] }),
      });
      expect(answer.status, type).toBe(415);
    }
  });

  it('when bytes come that are no request, the connection ends and the table goes on', async () => {
    for (const bytes of [
      '\0\x01\x02\r\n\r\n',
      'GET / HTTP/9.9\r\n\r\n',
      `GET /${'a'.repeat(40_000)} HTTP/1.1\r\n\r\n`,
    ]) {
      await new Promise<void>((resolve) => {
        const socket = connect(table.port, '127.0.0.1', () => socket.write(bytes));
        socket.on('error', () => undefined);
        socket.on('close', () => resolve());
        socket.resume();
      });
    }
    expect((await table.ask('/')).status).toBe(200);
  });
});

describe('the built app', () => {
  it('when the page is asked for, it comes with a policy that runs nothing but its own files', async () => {
    const { status, headers } = await table.ask('/');
    expect(status).toBe(200);
    expect(headers['content-type']).toBe('text/html; charset=utf-8');
    expect(headers['cache-control']).toBe('no-cache');
    const policy = String(headers['content-security-policy']);
    for (const part of [
      "default-src 'none'",
      "object-src 'none'",
      "base-uri 'none'",
      "frame-ancestors 'none'",
    ])
      expect(policy).toContain(part);
    expect(policy).not.toMatch(/unsafe-inline|'unsafe-eval'|\*/);
    // Both are what shared memory asks for (HTML standard, cross-origin isolation).
    expect(headers['cross-origin-opener-policy']).toBe('same-origin');
    expect(headers['cross-origin-embedder-policy']).toBe('require-corp');
    expect(headers['x-content-type-options']).toBe('nosniff');
    expect(headers['referrer-policy']).toBe('no-referrer');
  });

  it('when the script of the vision worker is asked for, only that may make functions of text', async () => {
    const worker = await table.ask('/assets/photo-worker-a1B2c3D4.js');
    expect(worker.headers['content-security-policy']).toContain("'unsafe-eval'");
    const other = await table.ask('/assets/index-a1B2c3D4.js');
    expect(other.headers['content-security-policy']).not.toContain("'unsafe-eval'");
  });

  it('when packing is asked for, it unpacks to the same bytes, and a known file is not sent again', async () => {
    const path = '/assets/index-a1B2c3D4.js';
    const plain = await table.ask(path);
    const packed = await table.ask(path, { headers: { 'Accept-Encoding': 'br, gzip' } });
    expect(packed.headers['content-encoding']).toBe('gzip');
    expect(packed.bytes.length).toBeLessThan(plain.bytes.length);
    expect(gunzipSync(packed.bytes)).toEqual(plain.bytes);
    expect(packed.headers['cache-control']).toContain('immutable');
    // RFC 9110, 12.4.2: a quality of 0 means "not acceptable".
    const refused = await table.ask(path, { headers: { 'Accept-Encoding': 'gzip;q=0' } });
    expect(refused.headers['content-encoding']).toBeUndefined();
    const known = await table.ask(path, { headers: { 'If-None-Match': String(plain.headers.etag) } });
    expect([known.status, known.bytes.length]).toEqual([304, 0]);
  });

  it.each([
    '/../side.hide.json',
    '/assets/../../outside.svg',
    '/%2e%2e/outside.svg',
    '/assets/%2e%2e%2findex.html',
    '/..%5c..%5coutside.svg',
    '//index.html',
    '/index.html%00.svg',
    '/side.hide.json',
    '/.hidebound/table-key',
    'http://leather.example/',
  ])('when %s is asked for, it is nothing that is served', async (path) => {
    expect((await table.ask(path)).status).toBe(404);
  });
});

/** Paths that lead out, are hidden, of no known kind, or can't be a name everywhere (Win32 naming rules; OWASP on path traversal). */
const BAD_PATHS = [
  '../outside.svg',
  'patterns/../../outside.svg',
  'patterns/./a.svg',
  '/etc/a.svg',
  '//host/a.svg',
  'C:a.svg',
  'C:\\a.svg',
  '..\\outside.svg',
  'patterns\\a.svg',
  'a\0.svg',
  'a.svg\0',
  'a\n.svg',
  'a\u202egvs.svg',
  '.hidden.svg',
  '.hidebound/a.svg',
  '.git/a.svg',
  'node_modules/a.svg',
  'NODE_MODULES/a.svg',
  'a/b/c/d/e/f.svg',
  'patterns//a.svg',
  'letter.doc',
  'package.json',
  'table-key',
  'a.svg/b.svg',
  `${'a'.repeat(300)}.svg`,
  'con.svg',
  'patterns/LPT1.hide.json',
  'a.svg:stream.svg',
  'what?.svg',
  'a ./b.svg',
  'out.svg',
  'away/a.svg',
  'dangling.svg',
  'letter.svg',
];

describe('paths', () => {
  it.each(BAD_PATHS)('when %j is to be written, it is refused and nothing is', async (path) => {
    const before = contentsOf(table.folder);
    const good = { path: 'good.svg', base: null, text: 'good' };
    for (const base of [null, sum('outside'), sum('private')]) {
      const answer = await table.save([good, { path, base, text: 'bad' }]);
      expect(answer.status, answer.bytes.toString()).toBe(422);
      const removed = await table.save([{ path, base, remove: true }]);
      expect(removed.status).toBe(422);
    }
    expect(contentsOf(table.folder)).toEqual(before);
    expect(readFileSync(join(at, 'outside.svg'), 'utf8')).toBe('outside');
    expect(existsSync(join(at, 'nowhere.svg'))).toBe(false);
    expect(readdirSync(join(at, 'away'))).toEqual([]);
  });

  it.each(BAD_PATHS)('when %j is to be read, nothing is told of it', async (path) => {
    const answer = await table.ask(`/api/file?path=${encodeURIComponent(path)}`);
    expect([404, 422]).toContain(answer.status);
    expect(answer.bytes.toString()).not.toMatch(/^(outside|private)/);
    expect(answer.bytes.toString()).not.toContain(at);
  });

  it('when a path is encoded twice or in overlong bytes, it does not become another one', async () => {
    for (const path of ['%252e%252e%252foutside.svg', '%c0%ae%c0%ae/outside.svg', '..%2foutside.svg']) {
      expect([404, 422]).toContain((await table.ask(`/api/file?path=${path}`)).status);
    }
    expect((await table.ask('/api/file?path=side.hide.json&path=../outside.svg')).status).toBe(400);
    expect((await table.ask('/api/file')).status).toBe(400);
  });

  it('when a link stays within the folder, it is read, and the file behind it is written', async () => {
    const own = await testTable(jobFolder(at, { 'patterns/front.svg': 'old' }), site);
    symlinkSync(join(own.folder, 'patterns', 'front.svg'), join(own.folder, 'link.svg'));
    expect((await own.ask('/api/file?path=link.svg')).bytes.toString()).toBe('old');
    expect((await own.save([{ path: 'link.svg', base: sum('old'), text: 'new' }])).status).toBe(200);
    expect(readFileSync(join(own.folder, 'patterns', 'front.svg'), 'utf8')).toBe('new');
    const both = [
      { path: 'link.svg', base: sum('new'), text: 'one' },
      { path: 'patterns/front.svg', base: sum('new'), text: 'other' },
    ];
    expect((await own.save(both)).status).toBe(422);
  });

  it('when a folder brings links in the place of what the table keeps, nothing is written through them', async () => {
    const elsewhere = jobFolder(at, { 'old.svg': 'theirs' });
    const own = await testTable(jobFolder(at, { 'a.svg': 'old' }), site);
    mkdirSync(join(own.folder, '.hidebound'));
    symlinkSync(elsewhere, join(own.folder, '.hidebound', 'before'));
    const answer = await own.save([{ path: 'a.svg', base: sum('old'), text: 'new' }]);
    expect(answer.status).toBe(507);
    expect(contentsOf(own.folder)).toEqual({ 'a.svg': 'old' });
    expect(contentsOf(elsewhere)).toEqual({ 'old.svg': 'theirs' });
  });

  it('when a folder brings a record of a save that leads out, it is thrown away', async () => {
    const own = await testTable(jobFolder(at, { 'a.svg': 'old' }), site);
    mkdirSync(join(own.folder, '.hidebound'));
    const changes = [{ path: '../outside.svg', before: sum('outside'), after: null }];
    writeFileSync(join(own.folder, '.hidebound', 'saving.json'), JSON.stringify({ pid: 1, changes }));
    expect((await own.save([{ path: 'a.svg', base: sum('old'), text: 'new' }])).status).toBe(200);
    expect(readFileSync(join(at, 'outside.svg'), 'utf8')).toBe('outside');
    expect(existsSync(join(own.folder, '.hidebound', 'saving.json'))).toBe(false);
  });
});

describe('files', () => {
  it('when the folder is listed, it has the files of the job with their sums, sorted, and nothing else', async () => {
    const { json } = await table.ask('/api/files');
    const { files } = json() as { files: { path: string; size: number; revision: string }[] };
    expect(files.map(({ path }) => path)).toEqual([
      'patterns/front.svg',
      'same.svg',
      'side.hide.json',
      'workshop.yaml',
    ]);
    const side = files.find(({ path }) => path === 'side.hide.json');
    expect(side).toEqual({ path: 'side.hide.json', size: SIDE.length, revision: sum(SIDE) });
    expect(JSON.stringify(json())).not.toContain(at);
  });

  it('when a file is read, it comes as bytes that no browser shows, with its sum', async () => {
    const { status, headers, bytes } = await table.ask('/api/file?path=patterns/front.svg');
    expect([status, bytes.toString()]).toEqual([200, '<svg/>']);
    expect(headers['content-type']).toBe('application/octet-stream');
    expect(headers.etag).toBe(`"${sum('<svg/>')}"`);
    expect(headers['content-security-policy']).toContain('sandbox');
  });

  it('when files are written, changed and taken away, what was there is kept', async () => {
    const own = await testTable(jobFolder(at, { 'a.svg': 'one' }), site);
    const bytes = Buffer.from([0xff, 0xd8, 0x00, 0x80]);
    const first = await own.save([
      { path: 'a.svg', base: sum('one'), text: 'two' },
      { path: 'new/b.jpg', base: null, base64: bytes.toString('base64') },
    ]);
    expect(first.json()).toEqual({
      files: [
        { path: 'a.svg', size: 3, revision: sum('two') },
        { path: 'new/b.jpg', size: 4, revision: sum(bytes) },
      ],
    });
    expect(readFileSync(join(own.folder, 'new', 'b.jpg'))).toEqual(bytes);
    expect((await own.save([{ path: 'a.svg', base: sum('two'), text: 'three' }])).status).toBe(200);
    const removed = await own.save([{ path: 'a.svg', base: sum('three'), remove: true }]);
    expect([removed.status, removed.json()]).toEqual([200, { files: [] }]);
    expect(existsSync(join(own.folder, 'a.svg'))).toBe(false);
    const kept = join(own.folder, '.hidebound', 'kept', 'a.svg');
    expect(readdirSync(kept).map((name) => readFileSync(join(kept, name), 'utf8'))).toEqual(['one']);
    expect(readFileSync(join(own.folder, '.hidebound', 'before', 'a.svg'), 'utf8')).toBe('three');
    expect(own.unforeseen).toEqual([]);
  });

  it('when many versions are kept, the oldest go', async () => {
    const folder = jobFolder(at, { 'a.svg': 'x' });
    const kept = join(folder, '.hidebound', 'kept', 'a.svg');
    mkdirSync(kept, { recursive: true });
    for (let day = 1; day <= 25; day++)
      writeFileSync(join(kept, `2020-01-${String(day).padStart(2, '0')} 10.00.00`), String(day));
    const own = await testTable(folder, site);
    expect((await own.save([{ path: 'a.svg', base: sum('x'), text: 'y' }])).status).toBe(200);
    const names = readdirSync(kept).sort();
    expect(names).toHaveLength(20);
    expect(names[0]).toBe('2020-01-07 10.00.00');
    expect(readFileSync(join(kept, names.at(-1)!), 'utf8')).toBe('x');
  });

  it('when one of several files was changed meanwhile, none is written', async () => {
    const own = await testTable(jobFolder(at, { 'a.svg': 'a', 'b.svg': 'b' }), site);
    const answer = await own.save([
      { path: 'a.svg', base: sum('a'), text: 'new' },
      { path: 'b.svg', base: sum('older'), text: 'new' },
      { path: 'c.svg', base: sum('gone'), text: 'new' },
    ]);
    expect(answer.status).toBe(409);
    expect(answer.json()['conflicts']).toEqual([
      { path: 'b.svg', revision: sum('b') },
      { path: 'c.svg', revision: null },
    ]);
    expect((await own.save([{ path: 'a.svg', base: null, text: 'new' }])).status).toBe(409);
    expect(contentsOf(own.folder)).toEqual({ 'a.svg': 'a', 'b.svg': 'b' });
  });

  it('when two write at once from the same revision, one does and the other is told', async () => {
    const own = await testTable(jobFolder(at, { 'a.svg': '0' }), site);
    let now = '0';
    for (let round = 1; round <= 10; round++) {
      const texts = [`${round} left`, `${round} right`];
      const answers = await Promise.all(
        texts.map((text) => own.save([{ path: 'a.svg', base: sum(now), text }])),
      );
      expect(answers.map(({ status }) => status).sort()).toEqual([200, 409]);
      now = texts[answers.findIndex(({ status }) => status === 200)]!;
      expect(readFileSync(join(own.folder, 'a.svg'), 'utf8')).toBe(now);
    }
  });

  it.each([
    ['no JSON', '{'],
    ['no writes', '{}'],
    ['bytes that are no UTF-8', Buffer.from([0x7b, 0xff, 0x7d])],
    ['no path', '{"writes":[{"base":null,"text":"x"}]}'],
    ['no base', '{"writes":[{"path":"x.svg","text":"x"}]}'],
    ['a base that is no sum', '{"writes":[{"path":"x.svg","base":"1","text":"x"}]}'],
    ['two contents', '{"writes":[{"path":"x.svg","base":null,"text":"x","base64":"eA=="}]}'],
    ['bad base64', '{"writes":[{"path":"x.svg","base":null,"base64":"e!A="}]}'],
    ['half a letter', '{"writes":[{"path":"x.svg","base":null,"text":"\\ud800"}]}'],
    ['an unknown key', '{"writes":[{"path":"x.svg","base":null,"text":"x","mode":511}]}'],
  ])('when a save holds %s, it is refused with one sentence', async (_, body) => {
    const headers = { 'Content-Type': 'application/json' };
    const answer = await table.ask('/api/save', { method: 'POST', headers, body });
    expect(answer.status).toBe(400);
    expect(Object.keys(answer.json())).toEqual(['code', 'sentence']);
    expect(existsSync(join(table.folder, 'x.svg'))).toBe(false);
  });

  it('when too much is sent, it is refused: files, bytes of one, bytes of all, by what it says and by what comes', async () => {
    const many = Array.from({ length: 201 }, (_, i) => ({ path: `m${i}.svg`, base: null, text: '' }));
    expect((await table.save(many)).status).toBe(413);
    expect((await table.save([{ path: 'big.svg', base: null, text: 'x'.repeat(64_000_001) }])).status).toBe(
      413,
    );
    const headers = { 'Content-Type': 'application/json' };
    const body = Buffer.alloc(96_000_001, 0x20);
    expect((await table.ask('/api/save', { method: 'POST', headers, body })).status).toBe(413);
    const chunked = { ...headers, 'Transfer-Encoding': 'chunked' };
    expect((await table.ask('/api/save', { method: 'POST', headers: chunked, body })).status).toBe(413);
    const said = { ...headers, 'Content-Length': '99999999999' };
    expect((await askSaying(table.port, said)).status).toBe(413);
    expect(Object.keys(contentsOf(table.folder))).not.toContain('big.svg');
  });
});

/** Says how long its body is, and sends none of it. */
function askSaying(port: number, headers: Readonly<Record<string, string>>) {
  return askAt(port, '/api/save', { method: 'POST', headers: { ...headers, Expect: undefined } });
}

describe('changes', () => {
  it('when another program writes, takes away or adds a file, whoever waits hears of it', async () => {
    const own = await testTable(jobFolder(at, { 'a.svg': 'a' }), site);
    let stamp = (await own.ask('/api/changes?after=')).json()['stamp'] as string;
    const next = async (change: () => unknown): Promise<string[]> => {
      const waiting = own.ask(`/api/changes?after=${stamp}`);
      await change();
      const answer = (await waiting).json() as { stamp: string; files: { path: string; revision: string }[] };
      expect(answer.stamp).not.toBe(stamp);
      stamp = answer.stamp;
      return answer.files.map(({ path, revision }) => `${path} ${revision}`);
    };
    // Of the same length, so that only the content tells.
    expect(await next(() => writeFileSync(join(own.folder, 'a.svg'), 'b'))).toEqual([`a.svg ${sum('b')}`]);
    expect(await next(() => own.save([{ path: 'new/c.svg', base: null, text: 'c' }]))).toEqual([
      `a.svg ${sum('b')}`,
      `new/c.svg ${sum('c')}`,
    ]);
    expect(await next(() => own.save([{ path: 'a.svg', base: sum('b'), remove: true }]))).toEqual([
      `new/c.svg ${sum('c')}`,
    ]);
  });

  it('when the table is closed, whoever waits is answered and nobody is any more', async () => {
    const own = await testTable(jobFolder(at, { 'a.svg': 'a' }), site);
    const { stamp } = (await own.ask('/api/changes?after=')).json();
    const waiting = own.ask(`/api/changes?after=${String(stamp)}`);
    await own.ask('/');
    await own.close();
    expect((await waiting).status).toBe(200);
    await expect(own.ask('/')).rejects.toThrow(/ECONNREFUSED/);
  });
});
