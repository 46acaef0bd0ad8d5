import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { keeperOf } from '../../lib/kept/keeper.ts';
import { openStore } from '../../lib/kept/store.ts';
import { computeAnew, type Step } from '../../lib/model/keep.ts';

describe('a keeper', () => {
  let folder: string;
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'kept-'));
  });
  afterEach(() => rmSync(folder, { recursive: true, force: true }));
  const keeper = (code = 'code') => keeperOf(openStore(folder), code);
  const doubled = () => vi.fn(({ value }: { readonly value: number }) => ({ twice: 2 * value }));

  it('computes once for an input, a step and a state of the code, whichever process asks', () => {
    const compute = doubled();
    const step = { id: 'double', compute };
    const ask = (id: string, value: number, code?: string) => keeper(code).keep({ ...step, id }, { value });
    expect(ask('double', 4)).toEqual({ twice: 8 });
    expect(ask('double', 4)).toEqual({ twice: 8 });
    expect(compute).toHaveBeenCalledTimes(1);
    ask('double', 5);
    ask('double-again', 4);
    ask('double', 4, 'code, changed');
    expect(compute).toHaveBeenCalledTimes(4);
  });

  it('hands itself on to the steps inside a step', () => {
    const compute = doubled();
    const inner: Step<{ readonly value: number }, { readonly twice: number }> = { id: 'inner', compute };
    const outer: Step<number, number> = {
      id: 'outer',
      compute: (shift, keep) => keep(inner, { value: 7 }).twice + shift,
    };
    expect([1, 2, 3].map((shift) => keeper().keep(outer, shift))).toEqual([15, 16, 17]);
    expect(compute).toHaveBeenCalledTimes(1);
    expect(computeAnew(outer, 1)).toBe(15);
  });

  it('knows what it keeps without computing it, null too', () => {
    const step = { id: 'none', compute: () => null };
    expect(keeper().known(step, 1)).toBeNull();
    keeper().keep(step, 1);
    expect(keeper().known(step, 1)).toEqual({ value: null });
  });

  it('refuses an input or a result that is more than plain data: a fault of the step', () => {
    class Body {
      readonly massKg = 1;
    }
    expect(() => keeper().keep({ id: 'body', compute: () => new Body() }, 1)).toThrow('Body');
    expect(() => keeper().keep({ id: 'bare', compute: () => Object.create(null) }, 1)).toThrow('prototype');
    expect(() => keeper().keep({ id: 'function', compute: () => 1 }, () => 1)).toThrow('function');
  });
});
