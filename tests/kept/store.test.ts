import {
  chmodSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openStore } from '../../lib/kept/store.ts';

const keyOf = (digit: string): string => digit.repeat(64);

/** Whether a folder and all below it may be written, or read alone. */
function setWritable(folder: string, may: boolean): void {
  chmodSync(folder, may ? 0o755 : 0o555);
  for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true }))
    chmodSync(join(entry.parentPath, entry.name), (may ? 0o644 : 0o444) | (entry.isDirectory() ? 0o111 : 0));
}

/** Does something without the rights of a system's owner, who may write everywhere: as the user `nobody`. */
function asAnyone(work: () => void): void {
  const isOwner = process.geteuid?.() === 0;
  if (isOwner) process.seteuid?.(65534);
  try {
    work();
  } finally {
    if (isOwner) process.seteuid?.(0);
  }
}

describe('a store of kept results', () => {
  let folder: string;
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'kept-'));
  });
  afterEach(() => rmSync(folder, { recursive: true, force: true }));

  const files = (): string[] =>
    readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map(({ parentPath, name }) => join(parentPath, name))
      .sort();
  const only = (): string => {
    const [file = '', ...more] = files();
    expect(more).toEqual([]);
    return file;
  };

  it('gives back every kind of plain value as it was', () => {
    const store = openStore(folder);
    const value = {
      numbers: [0, -0, 1.5, Number.NaN, Number.NEGATIVE_INFINITY],
      left: undefined,
      none: null,
      map: new Map([[1, new Set(['a'])]]),
      text: 'Ω \u0000 \ud83d\ude97',
    };
    store.write('plan', keyOf('a'), value);
    expect(store.read('plan', keyOf('a'))).toStrictEqual({ value });
    store.write('none', keyOf('a'), null);
    expect(store.read('none', keyOf('a'))).toEqual({ value: null });
    expect(store.fault()).toBeNull();
  });

  it('knows nothing of another step, of another key, or of a folder that is not there', () => {
    const store = openStore(folder);
    store.write('plan', keyOf('a'), 1);
    expect(store.read('page', keyOf('a'))).toBeNull();
    expect(store.read('plan', keyOf('b'))).toBeNull();
    expect(openStore(join(folder, 'none')).read('plan', keyOf('a'))).toBeNull();
  });

  it('believes no entry that is cut short, at whatever byte', () => {
    const store = openStore(folder);
    store.write('plan', keyOf('a'), { fuse: 80 });
    const file = only();
    const whole = readFileSync(file);
    for (let length = 0; length < whole.length; length += 1) {
      writeFileSync(file, whole.subarray(0, length));
      expect(store.read('plan', keyOf('a'))).toBeNull();
    }
    writeFileSync(file, Buffer.concat([whole, Buffer.from([0])]));
    expect(store.read('plan', keyOf('a'))).toBeNull();
    writeFileSync(file, whole);
    expect(store.read('plan', keyOf('a'))).toEqual({ value: { fuse: 80 } });
  });

  it('believes no entry in which a single bit was altered, in whatever byte', () => {
    const store = openStore(folder);
    store.write('plan', keyOf('a'), { fuse: 80 });
    const file = only();
    const whole = readFileSync(file);
    for (let byte = 0; byte < whole.length; byte += 1) {
      const altered = Buffer.from(whole);
      altered[byte] = (altered[byte] ?? 0) ^ (1 << (byte % 8));
      writeFileSync(file, altered);
      expect(store.read('plan', keyOf('a'))).toBeNull();
    }
  });

  it('believes no whole entry that stands under the name of another', () => {
    const store = openStore(folder);
    store.write('plan', keyOf('a'), { fuse: 80 });
    const first = only();
    store.write('plan', keyOf('b'), { fuse: 100 });
    const other = files().find((file) => file !== first) ?? '';
    writeFileSync(other, readFileSync(first));
    expect(store.read('plan', keyOf('b'))).toBeNull();
  });

  it('writes an entry anew over one that it did not believe', () => {
    const store = openStore(folder);
    store.write('plan', keyOf('a'), 1);
    writeFileSync(only(), 'another version');
    store.write('plan', keyOf('a'), 1);
    expect(store.read('plan', keyOf('a'))).toEqual({ value: 1 });
  });

  it('says why it keeps nothing on a full disk, and leaves no half-written file', () => {
    const store = openStore(folder, {
      writeFile: (path, bytes) => {
        writeFileSync(path, bytes.subarray(0, bytes.length / 2));
        throw new Error('ENOSPC: no space left on device, write');
      },
    });
    store.write('plan', keyOf('a'), { fuse: 80 });
    expect(store.fault()).toContain('no space left');
    expect(store.read('plan', keyOf('a'))).toBeNull();
    expect(files()).toEqual([]);
  });

  it('says why it keeps nothing where its folder can not be made', () => {
    writeFileSync(join(folder, 'file'), '');
    const store = openStore(join(folder, 'file'));
    store.write('plan', keyOf('a'), 1);
    expect(store.fault()).toMatch(/EEXIST|ENOTDIR/);
    expect(store.read('plan', keyOf('a'))).toBeNull();
  });

  it('is read where it may not be written, says why it keeps nothing there, and removes nothing', () => {
    openStore(folder).write('plan', keyOf('a'), { fuse: 80 });
    utimesSync(only(), 10, 10);
    setWritable(folder, false);
    try {
      asAnyone(() => {
        const store = openStore(folder, { limitBytes: 0 });
        expect(store.read('plan', keyOf('a'))).toEqual({ value: { fuse: 80 } });
        store.write('plan', keyOf('b'), { fuse: 100 });
        expect(store.fault()).toMatch(/EACCES|EPERM|EROFS/);
        store.trim();
        expect(store.read('plan', keyOf('a'))).toEqual({ value: { fuse: 80 } });
        expect(store.read('plan', keyOf('b'))).toBeNull();
      });
    } finally {
      setWritable(folder, true);
    }
  });

  it('removes what was used longest ago once it holds more than its limit', () => {
    const store = openStore(folder);
    for (const digit of ['a', 'b', 'c']) store.write('plan', keyOf(digit), digit);
    const each = statSync(files()[0] ?? '').size;
    for (const [digit, second] of [
      ['a', 20],
      ['b', 10],
      ['c', 30],
    ] as const) {
      const file = files().find((path) => path.includes(digit.repeat(62))) ?? '';
      utimesSync(file, second, second);
    }
    openStore(folder, { limitBytes: 2 * each }).trim();
    expect(['a', 'b', 'c'].map((digit) => store.read('plan', keyOf(digit)))).toEqual([
      { value: 'a' },
      null,
      { value: 'c' },
    ]);
  });

  it('counts a use: what is read again is not what is removed', () => {
    const store = openStore(folder);
    for (const digit of ['a', 'b']) store.write('plan', keyOf(digit), digit);
    for (const file of files()) utimesSync(file, 10, file.includes('a'.repeat(62)) ? 10 : 20);
    expect(store.read('plan', keyOf('a'))).toEqual({ value: 'a' });
    openStore(folder, { limitBytes: statSync(files()[0] ?? '').size }).trim();
    expect(store.read('plan', keyOf('a'))).toEqual({ value: 'a' });
    expect(store.read('plan', keyOf('b'))).toBeNull();
  });

  it('clears away what another run left half written, once that is old', () => {
    const store = openStore(folder);
    store.write('plan', keyOf('a'), 1);
    const half = `${only()}.77-0-1.part`;
    writeFileSync(half, 'half');
    store.trim();
    expect(files()).toContain(half);
    utimesSync(half, 10, 10);
    store.trim();
    expect(files()).not.toContain(half);
    expect(store.read('plan', keyOf('a'))).toEqual({ value: 1 });
  });
});
