import { spawnSync } from 'node:child_process';
import { test } from 'vitest';
import type { TestFunction } from 'vitest';

/** A program outside the project that some tests measure with. */
export interface OutsideProgram {
  readonly name: string;
  /** What is run. */
  readonly path: string;
  readonly isThere: boolean;
  /** Runs it and gives back what it printed. Throws, with its own words, if it fails. */
  run(args: readonly string[], input?: Uint8Array): Buffer;
}

/** Finds a program by name; `probe` are arguments with which it only says its version. */
export function outsideProgram(name: string, probe: readonly string[] = ['-v']): OutsideProgram {
  const isThere = spawnSync(name, [...probe], { stdio: 'ignore' }).error === undefined;
  return {
    name,
    path: name,
    isThere,
    run: (args, input) => {
      const result = spawnSync(name, [...args], {
        maxBuffer: 1 << 30,
        ...(input === undefined ? {} : { input }),
      });
      if (result.error !== undefined) throw result.error;
      if (result.status !== 0)
        throw new Error(`${name} ended with ${result.status}: ${result.stderr.toString()}`);
      return result.stdout;
    },
  };
}

/** Debian's Python, which has Debian's modules; another one may come first on the path. */
const DEBIAN_PYTHON = '/usr/bin/python3';

/** Debian's Python with some of its modules; absent where one of them can't be imported. `debian` names the package. */
export function pythonWith(modules: string, debian: string): OutsideProgram {
  const python = outsideProgram(DEBIAN_PYTHON, ['--version']);
  const imports = spawnSync(DEBIAN_PYTHON, ['-c', `import ${modules}`], { stdio: 'ignore' });
  return { ...python, name: debian, isThere: imports.status === 0 };
}

/** Under this variable a test whose program is absent fails instead of being skipped. */
const NO_SKIP = 'HIDEBOUND_NO_SKIP';

/** What a test can't do without: a program, or something that the system must let it do. */
export type Needed = Pick<OutsideProgram, 'name' | 'isThere'>;

/** A test that needs something outside: skipped by name where it is absent, unless HIDEBOUND_NO_SKIP=1. */
export function testWith(program: Needed, title: string, body: TestFunction): void {
  if (program.isThere) test(title, body);
  else if (process.env[NO_SKIP] === '1') {
    test(title, () => {
      throw new Error(`${program.name} is not installed, and ${NO_SKIP} forbids to skip.`);
    });
  } else test.skip(`${title} (needs ${program.name})`, body);
}
