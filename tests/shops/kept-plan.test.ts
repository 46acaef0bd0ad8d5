import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { BuildPlan } from '../../lib/model/plan/index.ts';
import { samplePlan } from '../publish/sample-plan.ts';
import { keptPath, keptPlan } from './kept-plan.ts';

describe('a kept plan', () => {
  const shopOf = (text: string) => [{ path: 'content/shop.yaml', text: `${text} ${process.pid}` }];
  const shop = shopOf('a shop of this test');
  const other = shopOf('the same shop with another fuse');
  const make = vi.fn((): BuildPlan => ({ ...samplePlan(), passes: 3 }));
  const clear = () => {
    for (const one of [shop, other]) rmSync(dirname(keptPath(one, 'job')), { recursive: true, force: true });
  };
  beforeEach(() => {
    clear();
    make.mockClear();
    vi.stubEnv('FRESH_PLANS', '');
  });
  afterEach(() => {
    vi.unstubAllEnvs();
    clear();
  });

  it('is made once, and is the same when it is read', () => {
    const made = keptPlan(shop, 'job', make);
    expect(keptPlan(shop, 'job', make)).toEqual(made);
    expect(make).toHaveBeenCalledTimes(1);
  });

  it('is made anew of other files, of another job, and where the kept one is cut short', () => {
    keptPlan(shop, 'job', make);
    keptPlan(other, 'job', make);
    keptPlan(shop, 'job-b', make);
    expect(make).toHaveBeenCalledTimes(3);
    const path = keptPath(shop, 'job');
    writeFileSync(path, readFileSync(path).subarray(0, 400));
    expect(keptPlan(shop, 'job', make).passes).toBe(3);
    expect(make).toHaveBeenCalledTimes(4);
  });

  it('is neither read nor written where fresh ones are asked for', () => {
    vi.stubEnv('FRESH_PLANS', '1');
    keptPlan(shop, 'job', make);
    keptPlan(shop, 'job', make);
    expect(make).toHaveBeenCalledTimes(2);
    expect(existsSync(keptPath(shop, 'job'))).toBe(false);
  });
});
