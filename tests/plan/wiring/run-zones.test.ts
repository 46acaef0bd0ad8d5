import { describe, expect, test } from 'vitest';
import { ampacityZones, wireZones } from '../../../lib/plan/wiring/runs/run-zones.ts';
import { inJob } from '../../read/problem-case.ts';
import { type Change, smallShop } from '../../read/small-shop.ts';
import { byId, jobOf } from '../plan-small-shop.ts';
import { inVehicle } from '../shop-changes.ts';

/** The zones of a link of the small shop, so long, and what its ampacity goes by. */
function zonesOf(id: string, lengthM: number, ...changes: readonly Change[]) {
  const job = jobOf(smallShop(...changes));
  const devices = new Map(job.devices.map((device) => [device.id, device]));
  const link = byId(job.links, id);
  const zones = wireZones(job, devices, link, lengthM);
  return {
    zones: zones.map((pass) => [pass.zone, Math.round(pass.lengthM * 1e6) / 1e6]),
    ampacity: ampacityZones(job, link, zones, 3),
  };
}

// The left sill passes 0.5 m of engine bay and 3 m of sill; the fuse stands in the engine bay, the amplifier in the boot.
describe('the zones of a conductor', () => {
  test('are those of its run, then what is left of it where its end stands', () => {
    expect(zonesOf('feed', 5).zones).toEqual([
      ['engine-bay', 0.5],
      ['sill', 3],
      ['cargo', 1.5],
    ]);
  });

  test('name the zone of its end too where its run is longer than it: the worst zone counts, however short', () => {
    expect(zonesOf('feed', 2).zones.at(-1)).toEqual(['cargo', 0]);
  });

  test('share what no run passes between both of its ends, or leave it to the one zone that they share', () => {
    const open = [
      inJob('  power: { route: left-sill, links: [feed], covering: loom-a }\n', ''),
      inJob('to: amp.B+ }', 'to: amp.B+, length: 5 m }'),
    ];
    expect(zonesOf('feed', 5, ...open).zones).toEqual([
      ['engine-bay', 2.5],
      ['cargo', 2.5],
    ]);
    expect(zonesOf('tail', 0.2).zones).toEqual([['engine-bay', 0.2]]);
  });

  test('count a ground point by its own zone, not by that of the body', () => {
    expect(zonesOf('ground', 0.3).zones).toEqual([['cargo', 0.3]]);
    expect(zonesOf('ground', 0.4, inJob('to: body.cargo', 'to: body.engine')).zones).toEqual([
      ['cargo', 0.2],
      ['engine-bay', 0.2],
    ]);
  });
});

describe('what an ampacity goes by', () => {
  const of = (zone: string, ...given: Parameters<typeof zonesOf>) =>
    zonesOf(...given).ampacity.find((one) => one.zone === zone);

  test('is the ambient of each zone, and whether it is an engine space', () => {
    // House rules, common practice, no source.
    expect(of('engine-bay', 'feed', 5)).toMatchObject({ ambientC: 85, engineSpace: true, lengthM: 0.5 });
    expect(of('sill', 'feed', 5)).toMatchObject({ ambientC: 50, engineSpace: false, lengthM: 3 });
    for (const zone of ['bulkhead', 'underbody'])
      expect(
        of(
          zone,
          'feed',
          5,
          inVehicle(
            'passes: [{ zone: engine-bay, length: 500 mm }, {',
            `passes: [{ zone: ${zone}, length: 500 mm }, {`,
          ),
        )?.engineSpace,
        zone,
      ).toBe(true);
  });

  test('is covered where the job covers its run, where its zone asks for it, and under the carpet', () => {
    expect(of('sill', 'feed', 5)?.covered).toBe(true);
    const plain = inJob(', links: [feed], covering: loom-a }', ', links: [feed] }');
    expect(of('sill', 'feed', 5, plain)?.covered).toBe(false);
    expect(of('engine-bay', 'feed', 5, plain)?.covered).toBe(true);
    const carpet = inVehicle(
      '{ zone: sill, length: 3 m }]\n    reaches',
      '{ zone: under-carpet, length: 3 m }]\n    reaches',
    );
    expect(of('under-carpet', 'feed', 5, plain, carpet)?.covered).toBe(true);
    // In no run there is no loom.
    expect(of('engine-bay', 'tail', 0.2)?.covered).toBe(false);
  });

  test('counts the bundle of its run, and alone where it lies in none', () => {
    expect(of('sill', 'feed', 5)?.bundleCount).toBe(3);
    expect(of('engine-bay', 'tail', 0.2)?.bundleCount).toBe(1);
  });
});

describe('the zones of a branch', () => {
  /** A second amplifier whose feed leaves that of the first so far along its run, with a leg of 1 m. */
  const branch = (after: string): readonly Change[] => [
    inJob('  sub: {', '  amp-2: { part: amp-a, in: boot }\n  sub: {'),
    inJob(
      '  speaker: {',
      `  second: { from: main-fuse.OUT, to: amp-2.B+, length: 3 m, branch: { from: feed, after: ${after}, leg: 1 m } }\n  speaker: {`,
    ),
    inJob('links: [feed], covering', 'links: [feed, second], covering'),
  ];

  test('are those that it shares, from the shared end on, then its leg where it ends', () => {
    expect(zonesOf('second', 3, ...branch('2 m')).zones).toEqual([
      ['engine-bay', 0.5],
      ['sill', 1.5],
      ['cargo', 1],
    ]);
    expect(zonesOf('second', 1.3, ...branch('300 mm')).zones).toEqual([
      ['engine-bay', 0.3],
      ['cargo', 1],
    ]);
  });
});
