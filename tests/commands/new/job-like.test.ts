import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { textsBelow } from '../../../lib/commands/effects.ts';
import { takenOver } from '../../../lib/commands/new/like/taken-over.ts';
import { audiencesOf } from '../../../lib/model/audience.ts';
import { jobSchema } from '../../../lib/model/content/job.ts';
import { hasFields } from '../../../lib/model/content/proposal.ts';
import { innerSchemas } from '../../../lib/model/writing/schema-shape.ts';
import { readContent } from '../../../lib/read/read-content.ts';
import { boardsFolder } from '../../boards/boards-folder.ts';
import { fixedRoot } from '../../boards/fixed-jobs.ts';
import type { EmptyFolder } from '../shop-folder.ts';

const canary = 'CANARY-77';

describe('what a job like another takes over', () => {
  test('is no leaf that the bench may not see, wherever it stands', () => {
    const hidden = (schema: Parameters<typeof audiencesOf>[0], way: string): string[] => {
      const declared = audiencesOf(schema);
      if (declared.length > 0) return declared.includes('bench') ? [] : [way];
      return innerSchemas(schema).flatMap((inner, at) => hidden(inner, `${way}/${at}`));
    };
    // There are private leaves: name, contact, plate, VIN, key, price, and serial numbers.
    expect(hidden(jobSchema, '').length).toBeGreaterThanOrEqual(7);
    const { value, left } = takenOver(jobSchema, {
      ...{
        id: 'a',
        title: 'A',
        vehicle: 'van',
        revision: 'C',
        status: 'installed',
        'issued-on': '2026-01-01',
      },
      customer: { name: canary, contact: canary, plate: canary, vin: canary, price: canary },
      devices: {
        amp: { part: 'amp-four', on: 'board', 'serial-number': canary, settings: { GAIN: 'down' } },
      },
      'as-built': { 'battery-rest': '12.7 V' },
      photos: { one: { file: `${canary}.jpg`, shows: canary } },
      accepted: [{ finding: 'x', of: 'y', reason: canary, by: canary }],
      'hand-over': { 'highest-volume': canary },
      notes: [canary],
      ...{ 'drawn-by': canary, 'approved-by': canary, fabricator: canary },
    });
    expect(JSON.stringify(value)).not.toContain(canary);
    expect(value).toEqual({
      ...{ title: 'A', vehicle: 'van' },
      devices: { amp: { part: 'amp-four', on: 'board', settings: { GAIN: 'down' } } },
    });
    expect(left).toEqual(
      expect.arrayContaining(['customer', 'as-built', 'devices.amp.serial-number', 'notes']),
    );
  });
});

describe('rackleaf new job --like', () => {
  let shop: EmptyFolder;
  let shared: readonly string[];
  beforeAll(async () => {
    const all = await textsBelow(fixedRoot, join(fixedRoot, 'content'));
    shared = all.map(({ path }) => path).filter((path) => !path.startsWith('content/jobs/'));
    shop = await boardsFolder('under-seat-five', 'van-three-amps');
  });
  afterAll(() => shop.remove());

  /** A job of the shop as it is read, with what is wrong in its file. */
  const read = (id: string) => {
    const path = `content/jobs/${id}.yaml`;
    const files = [...shared, path];
    const content = readContent(files.map((file) => ({ path: file, text: shop.read(file) })));
    return {
      job: content.jobs.find((one) => one.id === id)?.file,
      problems: content.problems.filter(({ where }) => where.file === path),
    };
  };

  test('writes one in the same space that has all of it but what is of the other alone, and reads at once', async () => {
    const { status, out, told } = await shop.run('new', 'job', 'again', '--like', 'under-seat-five');
    expect([status, out]).toEqual([0, 'content/jobs/again.yaml']);
    expect(told).toContain('Of under-seat-five alone, and to be told anew:');
    const [own, other] = [read('again'), read('under-seat-five')];
    expect(own.problems).toEqual([]);
    expect([own.job?.devices, own.job?.links, own.job?.boards, own.job?.runs]).toEqual([
      ...[other.job?.devices, other.job?.links, other.job?.boards, other.job?.runs],
    ]);
    expect([own.job?.status, own.job?.customer, own.job?.['as-built'], own.job?.accepted]).toEqual([
      ...['draft', {}, {}, []],
    ]);
    const again = await shop.run('new', 'job', 'again', '--like', 'under-seat-five');
    expect([again.status, again.told]).toEqual([2, expect.stringContaining('is there already')]);
  }, 600_000);

  test('writes one for another vehicle that reads at once, and tells what this does not have', async () => {
    const line = ['--vehicle', 'hatchback', '--space', 'under-left-seat', '--title', 'As in the van'];
    const { status, told } = await shop.run('new', 'job', '--like', 'van-three-amps', ...line);
    expect(status).toBe(0);
    expect(told).toMatch(/Left out: devices\..*: there is no place/);
    expect(told).toContain('To change here: board: cut another outline');
    const { job, problems } = read('as-in-the-van');
    expect(problems).toEqual([]);
    expect([job?.vehicle, job?.space, job?.boards.board?.at]).toEqual([
      'hatchback',
      'under-left-seat',
      undefined,
    ]);
    const other = read('van-three-amps').job;
    expect(job?.devices.dsp).toEqual(other?.devices.dsp);
    expect(job?.devices['amp-front']?.at).toEqual(other?.devices['amp-front']?.at);
    expect(hasFields(job?.customer) && Object.keys(job.customer)).toEqual([]);
    expect(shop.read('content/jobs/as-in-the-van.yaml')).not.toMatch(/Specimen|555 0122|SPC 003|P\. T\./);
  }, 600_000);

  test('refuses names that are not there, and flags that it has no use for', async () => {
    for (const [line, words] of [
      [['--like', 'ghost'], 'there is no job "ghost"'],
      [['--like', 'van-three-amps', '--vehicle', 'vann'], 'there is no vehicle "vann"'],
      [['--like', 'van-three-amps', '--space', 'roof'], 'there is no space "roof" in van'],
      [['--like', 'van-three-amps', '--issued-on', 'today'], 'is no date'],
      [['--like', 'van-three-amps', '--device', 'amp, amp-five'], '--device does not go with --like'],
    ] as const) {
      const { status, told } = await shop.run('new', 'job', 'other', ...line);
      expect([status, told]).toEqual([2, expect.stringContaining(words)]);
    }
  });
});
