import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect } from 'vitest';

const changed = /-changed(\.[^.]*)?$/;

/** The twin of a file that differs: `board.svg` becomes `board-changed.svg`. */
function twinOf(name: string): string {
  const dot = name.lastIndexOf('.');
  return dot < 0 ? `${name}-changed` : `${name.slice(0, dot)}-changed${name.slice(dot)}`;
}

/** The golden files of a folder by name, twins left out. */
function goldenNames(folder: string): string[] {
  if (!existsSync(folder)) return [];
  return readdirSync(folder)
    .filter((name) => !changed.test(name))
    .sort();
}

/**
 * Compares the output of a case with its golden folder, byte for byte, and the sets of file names both ways.
 * A file that differs, or has no golden copy, leaves a `-changed` twin beside it and fails. With
 * `RENEW_GOLDEN=1` the folder is written anew. Where `CI` is set nothing is ever written.
 */
export function expectGolden(folderUrl: URL, files: Readonly<Record<string, string>>): void {
  const folder = fileURLToPath(folderUrl);
  const mayWrite = !process.env.CI;
  if (mayWrite && process.env.RENEW_GOLDEN === '1') renew(folder, files);
  const known = goldenNames(folder);
  const differing = Object.entries(files).filter(([name, content]) => {
    const same = known.includes(name) && readFileSync(join(folder, name), 'utf8') === content;
    if (mayWrite) leaveTwin(folder, name, same ? null : content);
    return !same;
  });
  expect(
    differing.map(([name]) => name),
    `these differ from ${folder}; compare with their -changed twins, or run with RENEW_GOLDEN=1`,
  ).toEqual([]);
  expect(known, `files of ${folder}`).toEqual(Object.keys(files).sort());
}

function leaveTwin(folder: string, name: string, content: string | null): void {
  const twin = join(folder, twinOf(name));
  if (content === null) rmSync(twin, { force: true });
  else {
    mkdirSync(folder, { recursive: true });
    writeFileSync(twin, content);
  }
}

function renew(folder: string, files: Readonly<Record<string, string>>): void {
  for (const name of goldenNames(folder)) if (!(name in files)) rmSync(join(folder, name));
  mkdirSync(folder, { recursive: true });
  for (const [name, content] of Object.entries(files)) writeFileSync(join(folder, name), content);
}
