import { mkdirSync, mkdtempSync, renameSync, rmSync, statSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { codeDigest } from '../../lib/kept/code-digest.ts';

describe('the digest of the code', () => {
  let project: string;
  const write = (path: string, text: string): void => {
    mkdirSync(dirname(join(project, path)), { recursive: true });
    writeFileSync(join(project, path), text);
  };
  const digest = (): string => codeDigest(join(project, 'lib'));

  beforeEach(() => {
    project = mkdtempSync(join(tmpdir(), 'code-'));
    write(
      'package.json',
      JSON.stringify({ dependencies: { solver: '*' }, optionalDependencies: { none: '*' } }),
    );
    write('lib/plan/sizes.ts', 'export const marginA = 10;');
    write('lib/cli.ts', 'run();');
    write(
      'node_modules/solver/package.json',
      JSON.stringify({ version: '1.0.0', dependencies: { matrix: '*' } }),
    );
    write('node_modules/matrix/package.json', JSON.stringify({ version: '3.0.0' }));
  });
  afterEach(() => {
    vi.unstubAllGlobals();
    rmSync(project, { recursive: true, force: true });
  });

  it('is the same for the same code, and that of this project for none named', () => {
    expect(digest()).toBe(digest());
    expect(digest()).toMatch(/^[0-9a-f]{64}$/);
    expect(codeDigest()).toBe(codeDigest());
  });

  it('sees a change of the same length and the same time', () => {
    const before = digest();
    const file = join(project, 'lib/plan/sizes.ts');
    const { atime, mtime } = statSync(file);
    write('lib/plan/sizes.ts', 'export const marginA = 20;');
    utimesSync(file, atime, mtime);
    expect(digest()).not.toBe(before);
    write('lib/plan/sizes.ts', 'export const marginA = 10;');
    expect(digest()).toBe(before);
  });

  it('leaves out what is compiled beside the code and never run, in a package', () => {
    const before = digest();
    write('lib/cli.d.ts', 'export {};');
    write('lib/cli.js.map', '{"version":3}');
    expect(digest()).toBe(before);
    write('lib/cli.js', 'run();');
    expect(digest()).not.toBe(before);
  });

  it.each([
    ['a new file', () => write('lib/plan/more.ts', '')],
    ['a file less', () => rmSync(join(project, 'lib/cli.ts'))],
    ['another name', () => renameSync(join(project, 'lib/cli.ts'), join(project, 'lib/cla.ts'))],
    [
      'text that moves from one file to the next',
      () => {
        write('lib/cli.ts', 'run();export');
        write('lib/plan/sizes.ts', ' const marginA = 10;');
      },
    ],
    ['a package of another version', () => write('node_modules/solver/package.json', '{"version":"1.0.1"}')],
    ['a package below a package', () => write('node_modules/matrix/package.json', '{"version":"3.0.1"}')],
    [
      'a package of its own below a package',
      () => {
        write('node_modules/solver/node_modules/matrix/package.json', '{"version":"2.0.0"}');
      },
    ],
    [
      'an optional package that is there now',
      () => write('node_modules/none/package.json', '{"version":"1.0.0"}'),
    ],
  ])('sees %s', (_, change) => {
    const before = digest();
    change();
    expect(digest()).not.toBe(before);
  });

  it('sees another Node and another platform', () => {
    const seen = new Set([digest()]);
    for (const other of [
      { versions: { ...process.versions, v8: '0.0' } },
      { platform: 'win32' },
      { arch: 'arm' },
    ]) {
      vi.stubGlobal('process', { ...process, ...other });
      seen.add(digest());
      vi.unstubAllGlobals();
    }
    expect(seen.size).toBe(4);
  });
});
