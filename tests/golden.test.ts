import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { expectGolden } from './golden.ts';

describe('expectGolden', () => {
  let folder: string;

  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'golden-'));
    writeFileSync(join(folder, 'a.svg'), 'one');
    vi.stubEnv('CI', '');
    vi.stubEnv('RENEW_GOLDEN', '');
  });

  afterEach(() => {
    vi.unstubAllEnvs();
    rmSync(folder, { recursive: true });
  });

  const compare = (files: Record<string, string>) => () => expectGolden(pathToFileURL(`${folder}/`), files);

  it('passes on the same bytes, and clears an old twin away', () => {
    writeFileSync(join(folder, 'a-changed.svg'), 'old');
    expect(compare({ 'a.svg': 'one' })).not.toThrow();
    expect(readdirSync(folder)).toEqual(['a.svg']);
  });

  it('fails on other bytes and leaves a twin beside the file', () => {
    expect(compare({ 'a.svg': 'two' })).toThrow(/differ/);
    expect(readFileSync(join(folder, 'a.svg'), 'utf8')).toBe('one');
    expect(readFileSync(join(folder, 'a-changed.svg'), 'utf8')).toBe('two');
  });

  it('fails on a file too few and on a file too many', () => {
    expect(compare({})).toThrow();
    expect(compare({ 'a.svg': 'one', 'b.svg': 'new' })).toThrow();
  });

  it('writes the folder anew where asked', () => {
    vi.stubEnv('RENEW_GOLDEN', '1');
    expect(compare({ 'b.svg': 'new' })).not.toThrow();
    expect(readdirSync(folder)).toEqual(['b.svg']);
  });

  it('never writes where CI is set', () => {
    vi.stubEnv('CI', 'true');
    vi.stubEnv('RENEW_GOLDEN', '1');
    expect(compare({ 'a.svg': 'two' })).toThrow();
    expect(readdirSync(folder)).toEqual(['a.svg']);
    expect(readFileSync(join(folder, 'a.svg'), 'utf8')).toBe('one');
  });
});
