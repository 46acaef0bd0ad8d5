import { describe, expect, test } from 'vitest';
import { type FuseSizing, type SizedFuse, sizeFuses } from '../../../../lib/plan/power/sizing/fuse-sizing.ts';
import { usualHouseRules } from '../../../power/usual-rules.ts';
import { one, partIn } from '../../../rules/case.ts';
import type { Written } from '../../../rules/content.ts';
import { settledPower, sizedAnew } from '../settled-power.ts';
import { banked, charged, isolated } from '../two-batteries.ts';

type Change = (content: Written) => void;
/** The fuses of the small job, with what its devices draw and its conductors carry as the test says. */
function fuses(
  change: Change = () => {},
  {
    draws = {},
    mostA = () => 1000,
    bareWarmA = () => 1000,
    flowA = () => 0,
  }: Partial<Pick<FuseSizing, 'mostA' | 'bareWarmA' | 'flowA'>> & {
    readonly draws?: Readonly<Record<string, number>>;
  } = {},
) {
  const { job, circuit, paths, loads, protection, choose } = sizedAnew(settledPower(change));
  const drawing = loads.map((load) => ({ ...load, ratedA: draws[load.item] ?? load.ratedA }));
  return sizeFuses({ job, circuit, paths, loads: drawing, protection, choose, mostA, bareWarmA, flowA });
}
const byId = (all: readonly SizedFuse[], id: string) => one(all, ({ edge }) => edge.id === id);
const draws = { amp: 20, dsp: 1, radio: 3 };
const sharesOf = ({ shares }: SizedFuse) => Object.fromEntries(shares);
const amp = (content: Written) => partIn(content, 'two-channel', 'amplifier');

describe('the current of a fuse', () => {
  test('is the sum of what it feeds, by name, rounded up to a tenth of an ampere', () => {
    const all = fuses(undefined, { draws: { amp: 20.01, dsp: 1, radio: 3 } });
    expect(byId(all, 'block.OUT1')).toMatchObject({ ratedA: 20.1, solvedA: 0, shares: [['amp', 20.01]] });
    expect(byId(all, 'main-fuse').ratedA).toBe(24.1);
    expect(sharesOf(byId(all, 'main-fuse'))).toEqual({ amp: 20.01, dsp: 1, radio: 3 });
    expect(byId(fuses(undefined, { draws }), 'main-fuse').ratedA).toBe(24);
  });

  test('is what flows at the voltages that its devices get, where that is more', () => {
    const flowA = (fuse: string) => (fuse === 'main-fuse' ? 31 : 0);
    const all = fuses(undefined, { draws, flowA });
    expect(byId(all, 'main-fuse')).toMatchObject({ ratedA: 31, solvedA: 31 });
    expect(byId(all, 'block.OUT1')).toMatchObject({ ratedA: 20, solvedA: 0 });
    expect(byId(fuses(undefined, { draws, flowA: () => 10 }), 'main-fuse')).toMatchObject({
      ratedA: 24,
      solvedA: 10,
    });
  });

  test('counts what turn-on wires draw that begin behind it, from a way or through a contact', () => {
    const all = fuses(
      ({ job, parts }) => {
        // Behind the way of the radio: the turn-on inputs of amplifier and processor, 20 mA each.
        for (const id of ['radio-rem', 'amp-rem']) delete job.links[id];
        delete job.links['radio-feed'];
        delete job.links['radio-ground'];
        delete job.devices.radio;
        delete job.links['radio-signal'];
        delete job.runs?.right;
        job.links['amp-rem'] = { from: 'block.OUT3', to: 'amp.REM', length: '1 m' };
        job.links['dsp-rem'] = { from: 'dsp.REM-IN', to: 'block.OUT3', length: '1 m' };
        const { terminals } = partOf(parts.fused);
        Object.assign(terminals, { OUT3: { role: 'feed-out', conductors: 2 } });
      },
      { draws },
    );
    expect(byId(all, 'block.OUT3').shares).toEqual([['turn-on', expect.closeTo(0.04, 9)]]);
    expect(sharesOf(byId(all, 'main-fuse'))).toEqual({
      amp: 20,
      dsp: 1,
      'turn-on': expect.closeTo(0.04, 9),
    });
    expect(sharesOf(byId(all, 'block.OUT1'))).toEqual({ amp: 20 });
  });

  test('counts what a battery behind it takes up: a share of its capacity, at least what a full one takes', () => {
    // House rules, common practice, no source: 0.25 A for each Ah of 70 Ah, at least 15 A.
    const shares = (capacity: '70 Ah' | '40 Ah') =>
      sharesOf(
        byId(
          fuses((content) => {
            isolated(content);
            partIn(content, 'agm', 'battery').capacity = capacity;
          }),
          'main-fuse',
        ),
      );
    expect(shares('70 Ah')['recharge of second']).toBeCloseTo(17.5, 9);
    expect(shares('40 Ah')['recharge of second']).toBe(15);
  });

  test('counts what a charger gives into it', () => {
    const all = fuses(charged);
    expect(sharesOf(byId(all, 'second-fuse'))).toEqual({ 'output of charger': 30 });
    expect(sharesOf(byId(all, 'main-fuse'))).toEqual({ charger: expect.any(Number) });
  });

  test('of a bank alone is what its maker fuses it for; where more hangs there, the others count', () => {
    const all = fuses(banked);
    // 100 A over the margin of 1.25, so that with it they are 100 A again.
    expect(byId(all, 'bank-fuse').shares).toEqual([
      ['what the maker of bank fuses it for', 100 / usualHouseRules['fuse-margin'].value],
    ]);
    expect(sharesOf(byId(all, 'main-fuse'))).not.toHaveProperty('what the maker of bank fuses it for');
  });
});

function partOf(part: Written['parts'][string] | undefined) {
  if (part?.kind !== 'distribution') throw new Error('There is no distribution.');
  return part;
}

describe('the ceiling of a fuse', () => {
  test('is what the maker of the device right behind it states, and the fuse before others has none', () => {
    const all = fuses(undefined, { draws });
    expect(byId(all, 'block.OUT1').ceilingA).toBe(60);
    expect(byId(all, 'block.OUT2').ceilingA).toBe(5);
    expect(byId(all, 'main-fuse').ceilingA).toBeNull();
  });

  test('is none where the device has fuses of its own aboard', () => {
    const all = fuses((content) => Object.assign(amp(content).supply, { 'fuses-fitted': 1 }), { draws });
    expect(byId(all, 'block.OUT1').ceilingA).toBeNull();
    expect(byId(all, 'block.OUT2').ceilingA).toBe(5);
  });

  test('is what the maker states for the fuse before a device, with fuses of its own aboard or without', () => {
    const before = (fitted: number) =>
      fuses(
        (content) => Object.assign(amp(content).supply, { 'fuses-fitted': fitted, 'fuse-before': '45 A' }),
        { draws },
      );
    for (const fitted of [0, 2]) expect(byId(before(fitted), 'block.OUT1').ceilingA).toBe(45);
  });

  test('asks for half of it at least of an amplifier, and for all of it of any other device', () => {
    const all = fuses(undefined, { draws });
    // House rule, common practice, no source: an amplifier draws by what it is loaded with.
    expect(byId(all, 'block.OUT1').duty.makerA).toBe(30);
    expect(byId(all, 'block.OUT2').duty.makerA).toBe(5);
    expect(byId(all, 'main-fuse').duty.makerA).toBe(0);
  });

  /** Two amplifiers on one fused way: the second may be fused for less. */
  const shared: Change = (content) => {
    const { job, parts } = content;
    parts.small = { ...amp(content), supply: { type: 'regulated', fuse: '25 A', 'turn-on-draw': '20 mA' } };
    job.devices.other = { part: 'small', in: 'boot' };
    Object.assign(partOf(parts.fused).terminals, { OUT1: { role: 'feed-out', conductors: 2 } });
    job.links['other-feed'] = { from: 'block.OUT1', to: 'other.B+', length: '1 m' };
    job.links['other-ground'] = { from: 'other.GND', to: 'body.cargo', length: '1 m' };
  };

  test('of a fuse that several devices share is the least of theirs, and none asks for a larger one', () => {
    const fuse = byId(fuses(shared, { draws: { ...draws, other: 2 } }), 'block.OUT1');
    expect(fuse).toMatchObject({ ceilingA: 25, duty: { ceilingFuses: 1, makerA: 0 } });
  });

  test('is shared by fuses side by side before one device', () => {
    const all = fuses(
      (content) => {
        const { job } = content;
        Object.assign(amp(content).terminals, {
          'B+': { role: 'supply-positive', conductors: 2 },
        });
        delete job.links['amp-feed'];
        for (const k of [1, 2]) {
          job.devices[`fuse-${k}`] = { part: 'holder', in: 'bay' };
          job.links[`tail-${k}`] = { from: 'battery.POS', to: `fuse-${k}.IN` };
          job.links[`feed-${k}`] = { from: `fuse-${k}.OUT`, to: 'amp.B+' };
        }
      },
      { draws },
    );
    for (const id of ['fuse-1', 'fuse-2'])
      expect(byId(all, id), id).toMatchObject({ ceilingA: 60, duty: { ceilingFuses: 2, makerA: 15 } });
  });

  test('is that of the charger at its output, and of a bank at its post', () => {
    expect(byId(fuses(charged), 'second-fuse')).toMatchObject({ ceilingA: 50, duty: { makerA: 50 } });
    expect(byId(fuses(banked), 'bank-fuse')).toMatchObject({ ceilingA: 100, duty: { makerA: 100 } });
  });

  test('is none of a fuse behind which a battery hangs, nor of one that leads to a bank with others', () => {
    expect(byId(fuses(isolated), 'main-fuse').ceilingA).toBeNull();
    expect(byId(fuses(isolated), 'second-fuse').ceilingA).toBeNull();
    expect(byId(fuses(banked), 'main-fuse').ceilingA).toBeNull();
  });
});

describe('a fuse over a conductor that only a reducer would bring into its port as thick as it asks', () => {
  // 40 A and a quarter are 50 A, and the shelf has 80 A alone: of the form 50 and 60 A are made too.
  const shelved: Change = ({ shop }) => Object.assign(shop, { stock: { 'large-fuse': { pieces: 3 } } });
  const drawing = { draws: { amp: 36, dsp: 1, radio: 3 } };
  const main = (bareA: number, change: Change = shelved) => {
    const bareWarmA = (id: string) => (id === 'main' ? bareA : 1000);
    return byId(fuses(change, { ...drawing, bareWarmA }), 'main-fuse');
  };

  test('is a smaller one that keeps the margin, on the shelf or not, as large as the conductor takes bare', () => {
    expect(main(1000).ratingA).toBe(80);
    expect(main(80).ratingA).toBe(80);
    expect(main(79).ratingA).toBe(50);
    expect(main(50).ratingA).toBe(50);
  });

  test('stays as it is where none that is made keeps the margin there', () => {
    expect(main(49).ratingA).toBe(80);
  });

  test('that the job writes is not touched', () => {
    const written: Change = (content) => {
      shelved(content);
      Object.assign(content.job.devices['main-fuse'] ?? {}, { fuse: '80 A' });
    };
    expect(main(60, written).ratingA).toBe(80);
  });
});

describe('where a fuse stands', () => {
  test('it is sized where something hangs behind it, and no other is', () => {
    const all = fuses(({ job }) => {
      delete job.links['radio-feed'];
    });
    expect(all.map(({ edge }) => edge.id).toSorted()).toEqual(['block.OUT1', 'block.OUT2', 'main-fuse']);
    // A turn-on wire is no part of the supply, and its way is used all the same.
    const turnOn = fuses(({ job }) => {
      delete job.links['radio-feed'];
      delete job.links['amp-rem'];
      job.links['amp-rem'] = { from: 'block.OUT3', to: 'amp.REM', length: '1 m' };
    });
    expect(turnOn.map(({ edge }) => edge.id)).toContain('block.OUT3');
  });

  test('its form is that of its holder or its way, its holder bounds it', () => {
    const all = fuses();
    expect(byId(all, 'main-fuse')).toMatchObject({ form: 'large-bolt-in', holderA: 250 });
    expect(byId(all, 'block.OUT1')).toMatchObject({ form: 'maxi-blade', holderA: 150 });
    expect(byId(all, 'block.OUT2')).toMatchObject({ form: 'standard-blade', holderA: 150 });
    expect(byId(all, 'main-fuse').duty.holderLargestA).toBe(250);
    const low = fuses(({ parts }) => Object.assign(parts.holder ?? {}, { current: '20 A' }), { draws });
    expect(byId(low, 'main-fuse').ratingA).toBeNull();
  });

  test('the battery that reaches it bare is its source; behind another fuse there is none', () => {
    const all = fuses(isolated);
    expect(byId(all, 'main-fuse').source?.device.id).toBe('battery');
    expect(byId(all, 'second-fuse').source?.device.id).toBe('second');
    expect(byId(all, 'block.OUT1').source).toBeNull();
  });

  /** A second battery at the post of the first. */
  const besideEachOther =
    (more: object): Change =>
    (content) => {
      content.parts.beside = { ...partIn(content, 'agm', 'battery'), ...more };
      content.job.devices.beside = { part: 'beside', in: 'bay' };
      Object.assign(partIn(content, 'agm', 'battery').terminals, {
        POS: { role: 'source-positive', joint: 'stud', stud: 'M8', conductors: 4 },
      });
      content.job.links['beside-lead'] = { from: 'beside.POS', to: 'battery.POS' };
      content.job.links['beside-ground'] = { from: 'beside.NEG', to: 'body.engine' };
    };

  test('of several it is the strongest, and before all the one of which nobody states what it gives', () => {
    const source = (more: object) => byId(fuses(besideEachOther(more)), 'main-fuse').source?.device.id;
    // The first has 2 mohm by its chemistry.
    expect(source({ resistance: '1 mohm' })).toBe('beside');
    expect(source({ resistance: '3 mohm' })).toBe('battery');
    expect(source({ chemistry: 'lithium' })).toBe('beside');
  });

  test('what it must interrupt is first all that its sources may give, before any conductor is known', () => {
    const need = (change: Change) => byId(fuses(change), 'main-fuse').duty.interruptNeedA;
    // By hand: 14.8 V over 2 mohm from the battery, and three times 150 A from the alternator.
    expect(need(() => {})).toBeCloseTo(14.8 / 0.002 + 450, 6);
    expect(need(besideEachOther({ resistance: '4 mohm' }))).toBeCloseTo(14.8 / 0.002 + 14.8 / 0.004 + 450, 6);
    expect(need(besideEachOther({ chemistry: 'lithium' }))).toBe(Number.POSITIVE_INFINITY);
    expect(byId(fuses(), 'block.OUT1').duty.interruptNeedA).toBeNull();
  });
});

describe('the rating of a fuse', () => {
  test('is what the job writes, of a holder or of a way, else what was chosen', () => {
    const all = fuses(
      ({ job }) => {
        job.devices['main-fuse'] = { part: 'holder', in: 'bay', fuse: '125 A' };
        job.devices.block = { part: 'fused', on: 'main', fuses: { OUT1: '50 A' } };
      },
      { draws },
    );
    expect(byId(all, 'main-fuse')).toMatchObject({ givenA: 125, ratingA: 125 });
    expect(byId(all, 'block.OUT1')).toMatchObject({ givenA: 50, ratingA: 50 });
    const open = byId(all, 'block.OUT2');
    expect(open).toMatchObject({ givenA: null, ratingA: open.choice?.chosen?.ratingA });
    expect(open.ratingA).toBe(5);
  });

  test('protects the conductors behind it at their thickest, as far as they can be had', () => {
    const all = fuses(undefined, { draws, mostA: (id) => (id === 'amp-feed' ? 45 : 1000) });
    const way = byId(all, 'block.OUT1');
    expect(way.protects).toEqual(['amp-feed']);
    expect(way.duty.protects).toEqual([{ id: 'amp-feed at its thickest', ampacityA: 45, sideBySide: 1 }]);
    // 20 A times 1.25, at least half of 60 A, at most 45 A: maxi blades are made for 30 and 40 A.
    expect(way.ratingA).toBe(30);
    const thin = fuses(undefined, { draws, mostA: (id) => (id === 'amp-feed' ? 15 : 1000) });
    expect(byId(thin, 'block.OUT1').ratingA).toBeNull();
  });

  // The amplifier draws 40 A: with the margin 50 A.
  const grounded = (groundA: number, change?: Change) =>
    byId(
      fuses(change, { draws: { ...draws, amp: 40 }, mostA: (id) => (id === 'amp-ground' ? groundA : 1000) }),
      'block.OUT1',
    );

  test('is bounded by the ground of its device, which takes back all that it lets through', () => {
    expect(grounded(50).ratingA).toBe(50);
    expect(grounded(50).duty.protects).toHaveLength(1);
    const bounded = grounded(49);
    expect(bounded.ratingA).toBe(40);
    expect(bounded.duty.protects).toContainEqual({ id: 'amp-ground at its thickest', ampacityA: 49 });
  });

  test('is not bounded by a ground that would leave no lawful rating: that is told of the ground', () => {
    const kept = grounded(30);
    expect(kept.ratingA).toBe(50);
    expect(kept.duty.protects).toHaveLength(1);
  });

  test('is not bounded by the ground of a device that other fuses feed too', () => {
    const beside: Change = (content) => {
      const { job } = content;
      Object.assign(amp(content).terminals, {
        'B+': { role: 'supply-positive', conductors: 2 },
      });
      job.devices['fuse-2'] = { part: 'holder', in: 'bay', fuse: '60 A' };
      job.links['tail-2'] = { from: 'battery.POS', to: 'fuse-2.IN' };
      job.links['feed-2'] = { from: 'fuse-2.OUT', to: 'amp.B+' };
    };
    expect(grounded(1, beside).duty.protects.map(({ id }) => id)).not.toContain('amp-ground at its thickest');
  });

  test('is not bounded by the common ground, which belongs to no device alone', () => {
    const fuse = byId(
      fuses(undefined, { draws, mostA: (id) => (id === 'board-ground' ? 1 : 1000) }),
      'main-fuse',
    );
    expect(fuse.duty.protects.map(({ id }) => id)).not.toContain('board-ground at its thickest');
  });

  test('of the vehicle is what was read off, never chosen', () => {
    const fromPanel =
      (fuses?: Record<string, '40 A'>): Change =>
      (content) => {
        const { vehicle, job } = content;
        vehicle.fitted.panel = { part: 'fused', zone: 'cabin', ...(fuses && { fuses }) };
        vehicle.fitted.bolt = {
          part: 'holder',
          zone: 'engine-bay',
          ...(fuses && { fuses: { fuse: '40 A' } }),
        };
        Object.assign(vehicle.links ?? {}, {
          'panel-feed': { from: 'battery.POS', to: 'bolt.IN', size: '4 AWG', length: '1 m' },
          'bolt-feed': { from: 'bolt.OUT', to: 'panel.IN', size: '4 AWG', length: '1 m' },
        });
        job.links['radio-feed'] = { from: 'panel.OUT3', to: 'radio.B+', length: '1 m' };
      };
    const read = fuses(fromPanel({ OUT3: '40 A' }), { draws });
    expect(byId(read, 'panel.OUT3')).toMatchObject({ givenA: 40, ratingA: 40 });
    expect(byId(read, 'bolt')).toMatchObject({ givenA: 40, ratingA: 40 });
    const silent = fuses(fromPanel(), { draws });
    expect(byId(silent, 'panel.OUT3')).toMatchObject({ givenA: null, ratingA: null });
    expect(byId(silent, 'panel.OUT3').choice?.chosen).not.toBeNull();
    expect(byId(silent, 'bolt').ratingA).toBeNull();
  });
});
