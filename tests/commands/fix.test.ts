import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { ShopFolder } from './shop-folder.ts';

const job = 'content/jobs/demo.yaml';
const vehicle = 'content/vehicles/wagon.yaml';

let shop: ShopFolder;
beforeEach(() => {
  shop = new ShopFolder();
});
afterEach(() => shop.remove());

describe('check --fix', () => {
  test('mends a decimal comma and a unit spelled out in one go, shown first', async () => {
    shop.change(job, 'length: 12 in }', 'length: "12,5 in" } # measured');
    shop.change(job, 'length: 3 ft', 'length: 3 feet');
    const before = shop.read(job);
    const shown = await shop.run('check', '--fix');
    expect(shown.status).toBe(0);
    expect(shown.out).toContain('+   ground: { from: amp.GND, to: body.cargo, length: 12.5 in } # measured');
    expect(shown.told).toBe('nothing is written; --yes writes it');
    expect(shop.read(job)).toBe(before);
    expect((await shop.run('check', '--fix', '--yes')).told).toBe(`${job} written`);
    expect(shop.read(job)).toBe(before.replace('"12,5 in"', '12.5 in').replace('3 feet', '3 ft'));
  });

  test('gives a wire whose label another bears the next free one, and sets a control to its safe state', async () => {
    shop.change(job, 'to: amp.B+ }', 'to: amp.B+, label: X1 }');
    shop.change(job, 'length: 6 in }', 'length: 6 in, label: X1 }');
    shop.change(job, 'GAIN: fully down', 'GAIN: half way');
    await shop.run('check', 'demo', '--fix', '--yes');
    const after = shop.read(job);
    expect(after.match(/label: X\d/g)?.toSorted()).toEqual(['label: X1', 'label: X2']);
    expect(after).toContain('GAIN: fully down');
    expect((await shop.run('check', 'demo')).status).toBe(0);
    expect((await shop.run('check', '--fix')).told).toMatch(/^nothing is found that can be mended/);
  });

  test('never writes what a person alone knows: the vehicle, readings, what may stand', async () => {
    shop.change(vehicle, 'length: 300 mm }\n  case', 'length: "300,5 mm" }\n  case');
    shop.write(job, `${shop.read(job)}as-built:\n  battery-rest: "12,6 V"\n`);
    const before = [shop.read(vehicle), shop.read(job)];
    const { told, out } = await shop.run('check', '--fix', '--yes');
    expect([out, told]).toEqual(['', expect.stringMatching(/^nothing is found that can be mended/)]);
    expect([shop.read(vehicle), shop.read(job)]).toEqual(before);
  });

  test('does not guess: a comma that may part thousands, two values in one', async () => {
    shop.change(job, 'length: 12 in }', 'length: "1,200 mm" }');
    shop.change(job, 'length: 3 ft', 'length: 2 x 3 ft');
    expect((await shop.run('check', '--fix', '--yes')).told).toMatch(/^nothing is found/);
  });
});
