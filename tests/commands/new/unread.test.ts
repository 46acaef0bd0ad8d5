import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { ShopFolder } from '../shop-folder.ts';
import { Typed } from './typed.ts';

const shop = new ShopFolder();
const vehicle = 'content/vehicles/half.yaml';
const part = 'content/parts/half-amp.yaml';
const job = 'content/jobs/of-half.yaml';
const enters = (count: number): readonly string[] => Array.from({ length: count }, () => '');

beforeAll(() => {
  const whole = shop.read('content/vehicles/wagon.yaml').replace('id: wagon', 'id: half');
  shop.write(vehicle, `${whole.replace(/\n?$/, '\n')}colour: red\nroad-wheels: 4\n`);
  shop.write(part, 'rackleaf: 1\nparts:\n  half-amp: { kind: amplifier, title: Half }\n');
});
afterAll(() => shop.remove());

describe('a vehicle that is written and could not be read', () => {
  test.each([
    ['by flags', () => shop.run('new', 'job', 'of-half', '--vehicle', 'half', '--title', 'Half')],
    ['at a terminal', () => shop.answered(new Typed(), 'new', 'job', 'of-half', '--vehicle', 'half')],
  ])('ends a new job with every error of its file, %s', async (_, run) => {
    const { status, out, told } = await run();
    expect([status, out]).toEqual([2, '']);
    expect(told).toContain(`${vehicle} has 2 errors`);
    expect(told.match(/^content\/vehicles\/half\.yaml:\d+:\d+: error: /gm)).toHaveLength(2);
    expect(told).not.toContain('there is no vehicle');
    expect(existsSync(join(shop.root, job))).toBe(false);
  });

  test('may be the one that is meant: no other is taken unasked, and it is told why it is not offered', async () => {
    const person = new Typed('Of half');
    const { told } = await shop.answered(person, 'new', 'job', 'of-half');
    expect(person.said.join('\n')).not.toContain('vehicle: wagon');
    expect(person.said.at(-1)).toContain(`${vehicle} has 2 errors, the first at ${vehicle}:`);
    expect(told).toContain('no job is written');
  });
});

test('a flag that does not hold is asked for at a terminal, where only one answer could be right too', async () => {
  const person = new Typed('Another', ...enters(9));
  await shop.answered(person, 'new', 'job', 'of-another', '--vehicle', 'wagon', '--space', 'wel');
  const said = person.said.join('\n');
  expect(said).toContain('--space "wel": there is no space of wagon "wel"; did you mean "well"?');
  expect(said).toContain('The space that its board goes into');
  expect(said).not.toContain('space: well');
});

describe('a part that is written and could not be read', () => {
  const says =
    /content\/parts\/half-amp\.yaml has \d+ errors, the first at content\/parts\/half-amp\.yaml:3:\d+: /;

  test('is not called unknown where a job names it', async () => {
    const person = new Typed('Half', 'amp, half-amp', 'amp, half-amp', ...enters(9));
    const line = ['new', 'job', 'of-half-amp', '--vehicle', 'wagon'];
    const { status, told } = await shop.answered(person, ...line);
    expect(person.refused[0]).toMatch(says);
    expect(person.refused[0]).not.toContain('there is no part');
    expect(status).toBe(2);
    expect(told).toMatch(/^content\/parts\/half-amp\.yaml:3:\d+: error: /m);
  });

  test('is told as left out where amplifiers are offered, and not among speakers', async () => {
    const person = new Typed('Half', ...enters(9));
    await shop.answered(person, 'new', 'job', 'beside-half-amp', '--vehicle', 'wagon');
    const left = person.said.filter((text) => text.includes('Left out until its file is mended'));
    expect(left).toEqual([
      expect.stringMatching(
        /amplifier half-amp: content\/parts\/half-amp\.yaml has \d+ errors, the first at /,
      ),
    ]);
    expect(left[0]).toContain('Amplifiers, processor and what else');
  });

  test('is told by flags as well', async () => {
    const line = ['--vehicle', 'wagon', '--title', 'Half', '--device', 'amp, half-amp'];
    const { status, told } = await shop.run('new', 'job', 'flags-half-amp', ...line);
    expect(status).toBe(2);
    expect(told).toMatch(/^content\/parts\/half-amp\.yaml:3:\d+: error: /m);
  });
});
