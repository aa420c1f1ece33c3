import { DEFAULT_WORKSHOP, isArticleReference, parseArticle, parseWorkshop } from '@hidebound/leather';
import type { OrderFile, OrderLeather, OrderPiece, Workshop } from '@hidebound/leather';
import type { App } from '../../app/app.js';
import { filesOfKind, freePath, hideAt } from '../../job/job.js';
import type { Edits, FileOf, JobFile } from '../../job/job.js';
import { chooseFiles } from '../../shell/choose-files.js';
import { benchOf, choose, editOrder, nameInOrder, orderOf } from './bench.js';
import { emptyOrder, withArticle, withArticleFile } from './order/articles.js';
import { withPieces } from './order/pieces.js';
import { toldError } from '../../words/told.js';

/** The workshop's own values where the job has them and they can be read. */
export function workshopFor(app: App): Workshop {
  const isWorkshop = ([path]: readonly [string, JobFile]): boolean => /(^|\/)workshop\.ya?ml$/i.test(path);
  const found = filesOfKind(app.job.get(), 'text').find(isWorkshop);
  if (found === undefined) return DEFAULT_WORKSHOP;
  const [path, file] = found;
  const known = workshops.get(file) ?? readWorkshop(path, file);
  workshops.set(file, known);
  return known;
}

const workshops = new WeakMap<JobFile, Workshop>();

function readWorkshop(file: string, { text }: FileOf<'text'>): Workshop {
  try {
    return parseWorkshop(text, { file });
  } catch {
    return DEFAULT_WORKSHOP;
  }
}

/** Leathers that pieces can be of: the order's, or the one that a new order begins with. */
export function leathersFor(app: App): readonly OrderLeather[] {
  const order = orderOf(app);
  if (order !== undefined && order.leathers.length > 0) return order.leathers;
  const path = app.place.get().hide;
  const hide = hideAt(app.job.get(), path);
  return [
    { name: app.say('pieces.firstLeather'), hides: hide === undefined || path === undefined ? [] : [path] },
  ];
}

/** Puts pieces into the article that is chosen, or into a new one; an order is begun where there is none. */
export function takePieces(app: App, pieces: readonly OrderPiece[]): void {
  if (pieces.length === 0) return;
  const bench = benchOf(app);
  const label = app.say('pieces.tookLabel', { n: pieces.length });
  const order = orderOf(app);
  const into = bench.into === undefined ? undefined : order?.articles[bench.into];
  if (order !== undefined && into !== undefined && !isArticleReference(into)) {
    editOrder(app, label, (now) => withPieces(now, bench.into!, pieces));
  } else beginArticle(app, label, pieces);
  choose(app, { kind: 'all' });
}

function beginArticle(app: App, label: string, pieces: readonly OrderPiece[]): void {
  const bench = benchOf(app);
  const article = bench.draft ?? draftFor(app);
  bench.draft = undefined;
  const order = orderOf(app);
  bench.into = order?.articles.length ?? 0;
  if (order === undefined) startOrder(app, label, (empty) => withArticle(empty, article, pieces));
  else {
    const whole = order.leathers.length > 0 ? order : { ...order, leathers: leathersFor(app) };
    editOrder(app, label, () => withArticle(whole, article, pieces));
  }
}

/** What is made, before she says it. */
export function draftFor(app: App) {
  return { name: app.say('pieces.firstArticle'), goods: app.say('pieces.firstArticle'), sets: 1 };
}

function startOrder(
  app: App,
  label: string,
  make: (empty: OrderFile) => OrderFile,
  more: Edits = new Map(),
): void {
  const job = app.job.get();
  const name = job.name.trim() === '' ? app.say('pieces.firstOrder') : job.name.trim();
  const stem = name
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-|-$/g, '');
  const path = freePath(job, stem === '' ? 'order' : stem, '.order.yaml');
  const method = workshopFor(app).cuttingMethods[0]?.method ?? 'hand knife';
  const bench = benchOf(app);
  const empty = emptyOrder({ name, date: today(), method, leathers: leathersFor(app) });
  const order = make({ ...empty, patterns: bench.readings });
  bench.readings = [];
  app.change(label, new Map<string, JobFile | undefined>([...more, [path, { kind: 'order', order }]]));
  app.place.update((place) => ({ ...place, order: path }));
}

function today(): string {
  const now = new Date();
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/** Lets her choose pattern and article files, and brings them in. */
export async function addPatterns(app: App): Promise<void> {
  try {
    await bringFiles(app, await chooseFiles('.svg,.pdf,.dxf,.yaml,.yml', { several: true }));
  } catch (error) {
    app.tellFailure(error);
  }
}

/** Neither the readers nor a table's folder take a larger file. */
const MOST_MB = 64;

/** Files that were dropped or chosen: patterns are looked at, article files are put into the order. */
export async function bringFiles(app: App, files: readonly File[]): Promise<void> {
  const patterns = new Map<string, JobFile>();
  const others: string[] = [];
  for (const file of files) {
    if (file.size > MOST_MB * 1024 * 1024) {
      const size = Math.ceil(file.size / (1024 * 1024));
      app.tell({
        tone: 'warning',
        text: app.say('pieces.tooLarge', { file: file.name, size, limit: MOST_MB }),
      });
    } else if (/\.(svg|pdf|dxf)$/i.test(file.name)) {
      const bytes = new Uint8Array(await file.arrayBuffer());
      patterns.set(patternPath(app, file.name, bytes, patterns), { kind: 'pattern', bytes });
    } else if (/\.article\.(ya?ml|json)$/i.test(file.name)) await bringArticle(app, file);
    else others.push(file.name);
  }
  if (others.length > 0) {
    const text = app.say('pieces.notAPattern', { n: others.length, file: others[0]! });
    app.tell({ tone: 'warning', text });
  }
  if (patterns.size === 0) return;
  const { files: there } = app.job.get();
  const added = new Map([...patterns].filter(([path]) => !there.has(path)));
  app.change(app.say('pieces.broughtLabel', { n: patterns.size }), added);
  choose(app, { kind: 'patterns', paths: [...patterns.keys()] });
}

/** The same content under the same name is the same file. */
function patternPath(
  app: App,
  name: string,
  bytes: Uint8Array,
  others: ReadonlyMap<string, JobFile>,
): string {
  const { files } = app.job.get();
  const [, stem = name, ending = ''] = /^(.*)(\.\w+)$/.exec(name) ?? [];
  const isSame = (file: JobFile | undefined): boolean =>
    file?.kind === 'pattern' &&
    file.bytes.length === bytes.length &&
    file.bytes.every((byte, i) => byte === bytes[i]);
  for (let number = 1; ; number++) {
    const path = `patterns/${stem}${number === 1 ? '' : `-${number}`}${ending}`;
    const taken = files.get(path) ?? others.get(path);
    if (taken === undefined || isSame(taken)) return path;
  }
}

async function bringArticle(app: App, file: File): Promise<void> {
  try {
    const article = parseArticle(await file.text(), { file: file.name });
    const path = freePath(app.job.get(), file.name.replace(/\.article\.\w+$/i, ''), '.article.yaml');
    addArticleFile(app, path, article, new Map([[path, { kind: 'article', article }]]));
  } catch (error) {
    app.tell({ tone: 'error', text: app.sentence(toldError(error)) });
  }
}

/** An article file of the job as one line of the order. */
export function addArticleFile(
  app: App,
  path: string,
  article: Parameters<typeof withArticleFile>[2],
  more: Edits = new Map(),
): void {
  const label = app.say('pieces.articleLabel', { article: article.name });
  if (orderOf(app) === undefined) {
    const begin = (empty: OrderFile) => withArticleFile({ ...empty, leathers: [] }, path, article);
    startOrder(app, label, begin, more);
  } else editOrder(app, label, (order) => withArticleFile(order, nameInOrder(app, path), article), more);
  choose(app, { kind: 'all' });
}
