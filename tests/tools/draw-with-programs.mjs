// Makes fixtures/patterns/{inkscape,libreoffice}-{mm,in,px}.svg anew: the same small pattern is drawn in each unit
// and saved by each drawing program, so that the reader meets files as these programs really write them.
// Usage: node tests/tools/draw-with-programs.mjs [OUT-FOLDER]
import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { inkscapeInput, officeInput } from './program-drawings.mjs';

const UNITS = ['mm', 'in', 'px'];

/** The name of each program's command, and the words that its files begin with. */
const COMMANDS = { inkscape: 'inkscape', libreoffice: 'soffice' };

export function isInstalled(program) {
  try {
    execFileSync(COMMANDS[program], ['--version'], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
}

/** Draws and saves with one program in all units; gives back the text of the files by unit. */
export function drawWith(program) {
  const folder = mkdtempSync(join(tmpdir(), 'drawing-'));
  try {
    return Object.fromEntries(UNITS.map((unit) => [unit, drawOne(program, unit, folder)]));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function drawOne(program, unit, folder) {
  return program === 'inkscape' ? drawInInkscape(unit, folder) : drawInOffice(unit, folder);
}

function drawInInkscape(unit, folder) {
  const { svg, actions } = inkscapeInput(unit);
  const input = join(folder, `input-${unit}.svg`);
  const output = join(folder, `pattern-${unit}.svg`);
  writeFileSync(input, svg);
  execFileSync(
    'inkscape',
    [`--actions=${[...actions, `export-filename:${output}`, 'export-do'].join(';')}`, input],
    {
      stdio: 'ignore',
      env: { ...process.env, INKSCAPE_PROFILE_DIR: join(folder, 'profile') },
    },
  );
  return withoutPlaces(readFileSync(output, 'utf8'));
}

function drawInOffice(unit, folder) {
  const input = join(folder, `pattern-${unit}.fodg`);
  writeFileSync(input, officeInput(unit));
  const profile = pathToFileURL(join(folder, 'profile')).href;
  execFileSync(
    'soffice',
    [`-env:UserInstallation=${profile}`, '--headless', '--convert-to', 'svg', '--outdir', folder, input],
    { stdio: 'ignore' },
  );
  return withoutPlaces(readFileSync(join(folder, `pattern-${unit}.svg`), 'utf8'));
}

/** Nothing of the machine that drew it stays in the file. */
function withoutPlaces(svg) {
  return svg
    .replace(/\s+sodipodi:docname="[^"]*"/g, '')
    .replace(/\s+inkscape:export-filename="[^"]*"/g, '')
    .replace(/(?:file:\/\/)?\/(?:tmp|home|Users|root)\/[^\s"'<>]*/g, 'pattern.svg');
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const here = dirname(fileURLToPath(import.meta.url));
  const out = process.argv[2] ?? join(here, '..', '..', 'fixtures', 'patterns');
  mkdirSync(out, { recursive: true });
  for (const program of Object.keys(COMMANDS)) {
    if (!isInstalled(program)) {
      console.error(`${program} is not installed; its files stay as they are.`);
      continue;
    }
    for (const [unit, text] of Object.entries(drawWith(program))) {
      writeFileSync(join(out, `${program}-${unit}.svg`), text);
      console.log(`${program}-${unit}.svg`);
    }
  }
}
