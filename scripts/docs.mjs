/**
 * Writes the documentation that follows from schemas and tables: docs/files.md, docs/choosing.md, docs/schemas/*.schema.json.
 * With --check it writes nothing and fails if a copy is stale. Needs packages/leather to be built.
 */
import { existsSync, mkdirSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const ROOT = dirname(dirname(fileURLToPath(import.meta.url)));
const SCHEMAS = 'docs/schemas';
const built = join(ROOT, 'packages/leather/dist/index.js');

if (!existsSync(built)) {
  console.error('packages/leather is not built; run "pnpm build" first.');
  process.exit(2);
}
const { DEFAULT_WORKSHOP, SUIT, describeFormats, describeParts, publishedSchemas } = await import(built);

function allFiles() {
  const files = new Map([
    ['docs/files.md', filesPage()],
    ['docs/choosing.md', choosingPage()],
  ]);
  for (const [name, schema] of Object.entries(publishedSchemas())) {
    files.set(`${SCHEMAS}/${name}`, `${JSON.stringify(schema, null, 2)}\n`);
  }
  return files;
}

function filesPage() {
  return [
    '<!-- Made by scripts/docs.mjs from the schemas and from docs/parts; edit those. -->',
    part('files-intro.md'),
    ...describeFormats().map(formatSection),
    '## Shared parts',
    'Parts that several formats hold; the tables above name them.',
    ...describeParts().map(partSection),
    ...optionalPart('hide-svg.md'),
    '',
  ].join('\n\n');
}

/** The page on choosing leather, with the built-in tables as they are. */
function choosingPage() {
  const text = part('choosing.md')
    .replace('{{goods}}', goodsTable())
    .replace('{{tannages}}', tannageTable())
    .replace('{{figures}}', figureTable());
  return `<!-- Made by scripts/docs.mjs from docs/parts/choosing.md and the built-in tables; edit those. -->\n\n${text}\n`;
}

function plainTable(head, rows) {
  const line = (cells) => `| ${cells.map(cell).join(' | ')} |`;
  return [line(head), `|${head.map(() => '---').join('|')}|`, ...rows.map(line)].join('\n');
}

function goodsTable() {
  const head = ['goods', 'also called', 'mm', 'tannage', 'temper', 'usually from', 'asked of it', 'source'];
  const rows = DEFAULT_WORKSHOP.goods.map((row) => [
    row.goods,
    row.alsoCalled.join(', '),
    spanWords({ min: row.thickness.minMm, max: row.thickness.maxMm }, 1),
    row.tannages.join(', '),
    row.tempers.join(', '),
    (row.zones ?? ['any']).join(', '),
    row.needs.join(', '),
    row.source,
  ]);
  return plainTable(head, rows);
}

function tannageTable() {
  const named = (row, how) =>
    Object.entries(row.meets)
      .filter(([, says]) => says === how)
      .map(([need]) => need)
      .join(', ');
  const rows = DEFAULT_WORKSHOP.tannages.map((row) => [
    row.tannage,
    row.alsoCalled.join(', '),
    named(row, 'no'),
    named(row, 'with care'),
    row.source,
  ]);
  return plainTable(['tannage', 'also called', 'not fit for', 'with care', 'source'], rows);
}

function figureTable() {
  const names = Object.values(SUIT);
  const rows = DEFAULT_WORKSHOP.figures
    .filter(({ name }) => names.includes(name))
    .map(({ name, words, value, unit, source }) => [name, words, `${spanWords(value)} ${unit}`, source]);
  return plainTable(['figure', 'what it is', 'value', 'source'], rows);
}

function spanWords({ min, max }, decimals) {
  const words = (value) => (decimals === undefined ? String(value) : value.toFixed(decimals));
  return min === max ? words(min) : `${words(min)}–${words(max)}`;
}

function part(name) {
  return readFileSync(join(ROOT, 'docs/parts', name), 'utf8').trim();
}

/** A page that another part of the project writes: how a hide is traced in a drawing program. */
function optionalPart(name) {
  if (!existsSync(join(ROOT, 'docs/parts', name))) return [];
  return [`<!-- docs/parts/${name} begins -->`, part(name), `<!-- docs/parts/${name} ends -->`];
}

function formatSection(format) {
  const example = `fixtures/formats/every-field.${format.kind}.${format.writtenBy === 'people' ? 'yaml' : 'json'}`;
  return [
    `## ${format.title}: \`${format.fileName}\``,
    `${format.purpose} Written by ${format.writtenBy}. Schema: [\`${format.kind}.schema.json\`](schemas/${format.kind}.schema.json); a file that uses every key: [\`${example}\`](../${example}).`,
    table(format.fields),
  ].join('\n\n');
}

function partSection({ name, value, fields }) {
  const heading = `### ${name}`;
  return [heading, `It is ${value}.`, ...(fields.length === 0 ? [] : [table(fields)])].join('\n\n');
}

function table(fields) {
  const rows = fields.map(
    (field) =>
      `| \`${field.path}\` | ${field.required ? 'yes' : ''} | ${cell(valueText(field))} | ${cell(field.meaning)} |`,
  );
  return ['| key | must be there | value | meaning |', '|---|---|---|---|', ...rows].join('\n');
}

function valueText({ value, part: shared, isListOfPart }) {
  if (shared === undefined) return value;
  const link = `[${shared}](#${shared.toLowerCase()})`;
  return isListOfPart ? `list of ${link}` : link;
}

function cell(text) {
  return text.replaceAll('|', '\\|').replaceAll('<', '&lt;');
}

function staleFiles(files) {
  const changed = [...files].filter(([name, text]) => {
    const path = join(ROOT, name);
    return !existsSync(path) || readFileSync(path, 'utf8') !== text;
  });
  return [...changed.map(([name]) => name), ...leftOver(files)];
}

function leftOver(files) {
  const folder = join(ROOT, SCHEMAS);
  if (!existsSync(folder)) return [];
  return readdirSync(folder)
    .map((name) => `${SCHEMAS}/${name}`)
    .filter((name) => !files.has(name));
}

const files = allFiles();
if (process.argv.includes('--check')) {
  const stale = staleFiles(files);
  if (stale.length > 0) {
    console.error(`Stale: ${stale.join(', ')}; run "node scripts/docs.mjs".`);
    process.exit(1);
  }
} else {
  mkdirSync(join(ROOT, SCHEMAS), { recursive: true });
  for (const name of leftOver(files)) rmSync(join(ROOT, name));
  for (const [name, text] of files) writeFileSync(join(ROOT, name), text);
}
