import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { Device, Job } from '../../lib/model/content/resolved-job.ts';
import { settledStep } from '../../lib/plan/settle-job.ts';
import { sizedFrom, soundRules, spokenNames } from '../../lib/plan/sized-from.ts';
import { libModules, root } from '../architecture/modules.ts';
import { fixedJob, fixedJobs } from '../boards/fixed-jobs.ts';
import { smallShop } from '../read/small-shop.ts';
import { testCrew } from '../shops/test-crew.ts';
import { demoJob, demoJobs } from './demo.ts';
import { jobOf } from './plan-small-shop.ts';
import { inShop } from './shop-changes.ts';

/** What stands in the way of whoever reads one of some names of a value. */
function unreadable<T extends object>(value: T, names: readonly string[]): T {
  return new Proxy(value, {
    get: (of, name, receiver) => {
      if (typeof name === 'string' && names.includes(name)) throw new Error(`What is settled reads ${name}.`);
      return Reflect.get(of, name, receiver);
    },
  });
}

const dumb = (device: Device): Device =>
  unreadable({ ...device, given: device.given && unreadable(device.given, spokenNames) }, ['title']);

describe.each([
  ...fixedJobs.map((id) => [`the fixed ${id}`, () => fixedJob(id)] as const),
  ...demoJobs.map((id) => [id, () => demoJob(id)] as const),
])('%s', (_, written) => {
  test('is settled without a look at its titles or at what is heard, the same by any rule of sound', () => {
    const job: Job = sizedFrom(written());
    const { keep } = testCrew();
    const mute: Job = {
      ...job,
      rules: {
        ...job.rules,
        ...Object.fromEntries(soundRules.map((name) => [name, { value: 7, given: true }])),
      },
      devices: job.devices.map(dumb),
      releasedLabels: unreadable({}, Object.keys(job.releasedLabels)),
    };
    expect(settledStep.compute(mute, keep)).toEqual(settledStep.compute(job, keep));
  });
});

describe('what a job is settled from', () => {
  const job = () =>
    jobOf(smallShop(inShop('# House rules', 'rules: { gain-overlap: 4 dB, layout-step: 12 mm }\n# House')));

  test('has no filter, no title and no reading, and of these no measure either', () => {
    const sized = sizedFrom(job());
    const amp = sized.devices.find(({ id }) => id === 'amp');
    expect(amp).toMatchObject({ title: '', part: 'amp-a', given: { filters: {}, settings: {}, in: 'boot' } });
    expect(amp?.given).not.toHaveProperty('title');
    const measures = (file: 'job' | 'shop') =>
      Object.values(sized.measures[file]).flatMap((all) => all.map(({ text }) => text));
    expect(measures('job')).toContain('12 in');
    expect(measures('job')).not.toContain('80 Hz');
    expect(measures('shop')).toContain('12 mm');
    expect(measures('shop')).not.toContain('4 dB');
    expect(Object.keys(sized.shop.rules)).toEqual(['layout-step']);
    expect(sized.rules['gain-overlap']).toEqual({ value: Number.NaN, given: false });
    expect(sized.rules['layout-step'].value).toBe(0.012);
  });

  test('has links, boards, parts, vehicle and stock as they are read', () => {
    const read = job();
    const sized = sizedFrom(read);
    for (const name of ['links', 'boards', 'runs', 'parts', 'vehicle', 'proposals', 'held'] as const)
      expect(sized[name]).toBe(read[name]);
    expect(sized.shop.stock).toBe(read.shop.stock);
  });
});

test('no module that settles a job names a house rule that it is not handed', () => {
  const modules = new Map(libModules().map((one) => [one.path, one]));
  const seen = new Set<string>();
  const waiting = ['lib/plan/settle-job.ts'];
  for (let path = waiting.pop(); path !== undefined; path = waiting.pop()) {
    if (seen.has(path)) continue;
    seen.add(path);
    for (const { module, typesOnly } of modules.get(path)?.takes ?? [])
      if (module !== null && !typesOnly) waiting.push(module);
  }
  expect(seen).toContain('lib/plan/power/sizing/size-for-drop.ts');
  expect(seen).toContain('lib/plan/audio/speaker-sizing.ts');
  const own = ['lib/plan/sized-from.ts', 'lib/model/house-rules/audio.ts'];
  const naming = [...seen].flatMap((path) => {
    const text = own.includes(path) ? '' : readFileSync(join(root, path), 'utf8');
    return soundRules.filter((name) => text.includes(`'${name}'`)).map((name) => `${path}: ${name}`);
  });
  expect(naming).toEqual([]);
});
