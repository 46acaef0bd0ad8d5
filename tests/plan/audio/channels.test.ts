import { describe, expect, it } from 'vitest';
import { byId, entry, partIn } from '../../rules/case.ts';
import { joinCoils, planned, plannedOnBoard, remarksOf, withTwoCoils } from '../planned.ts';
import { knownOutput } from './planned-audio.ts';

describe('a channel in the plan', () => {
  it('lists every way of wiring two coils of 4 ohm: 2 ohm in parallel, 8 in series (Kirchhoff)', () => {
    const { plan } = planned((content) => {
      withTwoCoils(content);
      joinCoils(content, 'parallel');
      entry(partIn(content, 'two-channel', 'amplifier').channels, '2').powers = [
        { load: '4 ohm', power: '75 W' },
        { load: '2 ohm', power: '120 W' },
      ];
    });
    const channel = byId(plan.audio.channels, 'amp.2');
    expect(channel.loadOhm).toBe(2);
    expect(channel.mayDrive).toBe(true);
    expect(channel.wiringsInAll).toBe(2);
    expect(channel.wirings.map(({ loadOhm, chosen }) => [loadOhm, chosen])).toEqual([
      [2, true],
      [8, false],
    ]);
    const [a, b] = channel.coils;
    expect(a?.powerW).toBeCloseTo(b?.powerW ?? 0, 9);
    expect((a?.powerW ?? 0) + (b?.powerW ?? 0)).toBeCloseTo(channel.powerW ?? 0, 9);
  });

  it('names the way out where the coils are wired below the minimum', () => {
    const low = planned((content) => {
      withTwoCoils(content);
      joinCoils(content, 'parallel');
      entry(partIn(content, 'two-channel', 'amplifier').channels, '2').minimum = '4 ohm';
    });
    const [remark] = remarksOf(low, 'load-below-minimum');
    expect(remark?.level).toBe('stop');
    expect(remark?.remedy).toMatch(/series\(sub\.C, sub\.D\): 8 ohm/);
    expect(byId(low.plan.audio.channels, 'amp.2').mayDrive).toBe(false);
  });

  it('refuses a load that the coils can not be wired to, and tells those that can be had', () => {
    const asked = planned((content) => {
      withTwoCoils(content);
      joinCoils(content, 'series');
      entry(content.job.devices, 'amp').loads = { '2': '4 ohm' };
    });
    const [remark] = remarksOf(asked, 'load-not-possible');
    expect(remark?.message).toMatch(/can't be wired to 4 ohm; what can be had is 2, 8 ohm/);
  });

  it('stops where the coils are wired otherwise than asked, and tells how', () => {
    const change = (loads: Record<string, string>) =>
      planned((content) => {
        withTwoCoils(content);
        joinCoils(content, 'series');
        entry(content.job.devices, 'amp').loads = loads;
      });
    expect(remarksOf(change({ '2': '2 ohm' }), 'load-not-as-asked')[0]?.remedy).toMatch(
      /parallel\(sub\.C, sub\.D\)/,
    );
    expect(remarksOf(change({ '2': '8 ohm' }), 'load-not-as-asked')).toEqual([]);
  });

  it('is told where it has no speaker, and a speaker where it has no channel', () => {
    const without = planned((content) => {
      delete content.job.links['speaker-2'];
      content.job.links['to-nowhere'] = { from: 'amp.CH2+', to: 'amp.CH1+' };
      content.job.links['only-one'] = { from: 'sub.C+', to: 'sub.C-' };
    });
    expect(remarksOf(without, 'channels-joined').length).toBeGreaterThan(0);
    const alone = remarksOf(without, 'speaker-without-channel').find(({ of }) => of.includes('sub'));
    expect(alone?.remedy).toMatch(/link it to an amplifier/);
  });

  it('counts the wire between amplifier and coils into the resistance that a meter reads', () => {
    // Measured at 0.1 ohm/m; the pair is 0.3 m long, and the house reckons with 60 C: copper has 1 + 0.00393 * 40 of
    // its resistance at 20 C (IEC 60028) or more, so that both conductors have between 0.06 and 0.08 ohm.
    const { plan } = planned(({ parts, shop }) => {
      for (const colour of ['WH', 'GY'] as const)
        parts[`speaker-wire-${colour}`] = {
          kind: 'wire',
          title: 'Speaker wire',
          size: '14 AWG',
          insulation: '105 C',
          colour,
          for: ['speaker'],
          measured: '100 mohm/m',
        };
      shop.stock = { 'speaker-wire-WH': { reels: ['50 m'] }, 'speaker-wire-GY': { reels: ['50 m'] } };
    });
    const { dcResistanceOhm, wireLossDb } = byId(plan.audio.channels, 'amp.1');
    // loss = 20 log10((R + Rw) / R), so Rw = R (10^(loss / 20) - 1); 0.75 of 4 ohm is the least of the coil alone.
    const wireOhm = 4 * (10 ** ((wireLossDb ?? 0) / 20) - 1);
    expect(wireOhm).toBeGreaterThanOrEqual(0.06 - 1e-9);
    expect(wireOhm).toBeLessThan(0.08);
    expect(dcResistanceOhm?.fromOhm).toBeCloseTo(3 + wireOhm, 9);
    expect(dcResistanceOhm?.toOhm).toBeCloseTo(3.4 + wireOhm, 9);
  });
});

describe('ways that hand over to each other', () => {
  const filters = (type: 'butterworth' | 'linkwitz-riley', order: number, more: object = {}) =>
    planned(({ job }) => {
      const corner = '2500 Hz';
      entry(job.devices, 'dsp').filters = {
        OUT1: [{ pass: 'high-pass', type, order, corner }],
        OUT2: [{ pass: 'low-pass', type, order, corner }],
      };
      Object.assign(entry(job.devices, 'tweeter'), more);
    }).plan.audio;

  it('add to 0 dB at the corner with fourth-order Linkwitz-Riley filters, each 6.02 dB down', () => {
    const [sum] = filters('linkwitz-riley', 4).curves.sums;
    expect(sum?.channels).toEqual(['amp.1', 'amp.2']);
    expect(sum?.handovers[0]?.sumDb).toBeCloseTo(0, 2);
    expect(sum?.handovers[0]?.louderDb).toBeCloseTo(-6.02, 2);
    for (const level of sum?.levelsDb ?? []) expect(level).toBeCloseTo(0, 2);
  });

  it('cancel with second-order filters in one polarity, and add to 3.01 dB with one cone turned round', () => {
    expect(filters('butterworth', 2).curves.sums[0]?.handovers[0]?.sumDb).toBeLessThan(-90);
    const turned = filters('butterworth', 2, { mounted: 'reversed' });
    expect(turned.curves.sums[0]?.handovers[0]?.sumDb).toBeCloseTo(3.01, 2);
  });

  it('are sampled six times an octave, one level for each frequency', () => {
    const { channels, curves } = filters('butterworth', 4);
    expect(curves.frequenciesHz).toHaveLength(61);
    expect(curves.frequenciesHz.at(0)).toBe(20);
    expect(curves.frequenciesHz.at(-1)).toBe(20_000);
    for (const { levelsDb } of channels) expect(levelsDb).toHaveLength(61);
  });
});

describe('delays', () => {
  const withDistances = (distances: Readonly<Record<string, string>>, airTemperature = '20 C') =>
    planned((content) => {
      const { shop, vehicle } = content;
      Object.assign(partIn(content, 'dsp', 'processor'), { 'sample-rate': '48 kHz' });
      for (const [place, distance] of Object.entries(distances))
        Object.assign(entry(vehicle.places, place), { distance });
      shop.rules = { ...shop.rules, 'air-temperature': airTemperature };
    });

  it('let the nearer speaker wait for the farther: 0.6864 m at 343.2 m/s are 2 ms, 96 samples of 48 kHz', () => {
    const { plan, remarks } = withDistances({ door: '1 m', boot: '1.6864 m' });
    expect(byId(plan.audio.speakers, 'tweeter').delayMs).toBeCloseTo(2, 9);
    expect(byId(plan.audio.speakers, 'tweeter').delaySamples).toBe(96);
    expect(byId(plan.audio.speakers, 'sub').delayMs).toBe(0);
    expect(remarks.filter(({ remark }) => remark.rule === 'speaker-not-measured')).toEqual([]);
  });

  it('tell of a speaker that is not measured, and give it none', () => {
    const found = withDistances({ door: '1 m' });
    expect(byId(found.plan.audio.speakers, 'sub').delayMs).toBeNull();
    expect(remarksOf(found, 'speaker-not-measured').map(({ of, level }) => [of, level])).toEqual([
      [['sub'], 'note'],
    ]);
  });

  it('are refused with a reason at an air temperature that no cabin is tuned at', () => {
    const found = withDistances({ door: '1 m', boot: '2 m' }, '200 C');
    expect(byId(found.plan.audio.speakers, 'sub').delayMs).toBeNull();
    expect(remarksOf(found, 'air-temperature-unlikely')[0]).toMatchObject({ level: 'stop', of: ['dsp'] });
  });
});

describe('inputs and outputs on the way of the signal', () => {
  it('hold what arrives against the range of the input: 4 V into 0.5 V to 2 V is 6.02 dB too much', () => {
    const { plan } = planned((content) => {
      const input = entry(partIn(content, 'dsp', 'processor').terminals, 'IN');
      input['signal-range'] = { from: '0.5 V', to: '2 V' };
    });
    const found = plan.audio.inputs.find(({ input }) => input === 'dsp.IN');
    expect(found?.verdict).toBe('too-high');
    expect(found?.headroomDb).toBeCloseTo(-6.02, 2);
    expect(found?.reserveDb).toBeCloseTo(18.06, 2);
  });

  it('say what has to be found out of a source that came with the vehicle, and put it on the survey', () => {
    const fitted = (outputs: object) =>
      planned(({ job, vehicle }) => {
        vehicle.fitted.head = { part: 'radio', zone: 'cabin', outputs: { OUT: outputs } };
        job.links['radio-signal'] = { from: 'head.OUT', to: 'dsp.IN' };
        job['left-open'] = { 'radio.OUT': 'not used' };
      }).plan;
    const unknown = fitted({});
    expect(unknown.audio.outputs[0]?.missing).toContain('chimes');
    expect(
      unknown.measurements.filter(({ id }) => id.startsWith('head.')).map(({ id, when }) => [id, when]),
    ).toEqual([
      ['head.OUT.clean-voltage', 'survey'],
      ['head.OUT.offset', 'survey'],
      ['head.OUT.lowest', 'survey'],
      ['head.OUT.highest', 'survey'],
    ]);
    const known = fitted(knownOutput);
    expect(known.audio.outputs[0]?.missing).toEqual([]);
    expect(known.audio.inputs.find(({ input }) => input === 'dsp.IN')?.sourceV).toBe(3.5);
    expect(known.measurements.some(({ id }) => id.startsWith('head.'))).toBe(false);
  });
});

describe('wires that part ways', () => {
  it('have a length for each leg: 1 m together of a run of 3 m, then 2 m on and a leg of 0.5 m', () => {
    const { plan } = planned(({ job }) => {
      job.devices['sub-2'] = { part: 'woofer', in: 'boot' };
      job.links['speaker-3'] = {
        from: 'amp.CH2',
        to: 'sub-2.C',
        branch: { from: 'speaker-2', after: '1 m', leg: '0.5 m' },
      };
      entry(job.runs, 'right').links = ['radio-signal', 'speaker-2', 'speaker-3'];
    });
    const branch = byId(plan.branches, 'speaker-3.+');
    const [trunk, leg] = branch.legs;
    // The loop at a speaker is 6 in, common practice.
    expect(trunk?.ownM).toBeCloseTo(2 + 0.1524, 9);
    expect(leg?.ownM).toBeCloseTo(0.5 + 0.1524, 9);
    expect(branch.terminal).toBe('amp.CH2+');
    expect(branch.facing).toMatch(/can't be turned over later/);
    for (const { wire, sharedM, ownM } of branch.legs)
      expect(sharedM + ownM).toBeCloseTo(byId(plan.wires, wire).lengthM, 9);
    expect(plan.branches.map(({ id }) => id)).toEqual(['speaker-3.+', 'speaker-3.-']);
  });

  it('are tied together on the board too, so that both are as long up to where they part', () => {
    const { plan } = plannedOnBoard((content) => {
      const { job } = content;
      const { terminals } = partIn(content, 'two-channel', 'amplifier');
      for (const name of ['CH2+', 'CH2-']) Object.assign(entry(terminals, name), { panel: 'right' });
      job.devices['sub-2'] = { part: 'woofer', in: 'boot' };
      job.links['speaker-3'] = {
        from: 'amp.CH2',
        to: 'sub-2.C',
        branch: { from: 'speaker-2', after: '1 m', leg: '0.5 m' },
      };
      entry(job.runs, 'right').links = ['radio-signal', 'speaker-2', 'speaker-3'];
    });
    for (const { legs } of plan.branches) expect(legs[1]?.sharedM).toBeCloseTo(legs[0]?.sharedM ?? 0, 9);
    const routes = plan.boards
      .flatMap((board) => board.routes)
      .filter(({ along }) => along.includes('speaker-3.+'));
    expect(routes.map(({ along }) => along.includes('speaker-2.+'))).toEqual([true]);
  });

  it('lie only in the zones that they pass: the leg leaves the run before the cabin and the engine bay', () => {
    const { plan } = planned(({ job, vehicle }) => {
      vehicle.routes.long = {
        title: 'Boot to engine bay',
        side: 'right',
        passes: [
          { zone: 'cargo', length: '1 m' },
          { zone: 'sill', length: '2 m' },
          { zone: 'engine-bay', length: '1 m' },
        ],
      };
      job.devices['sub-2'] = { part: 'woofer', in: 'door' };
      job.links['speaker-3'] = {
        from: 'amp.CH2',
        to: 'sub-2.C',
        branch: { from: 'speaker-2', after: '1.5 m', leg: '0.5 m' },
      };
      entry(job.runs, 'right').links = ['radio-signal'];
      Object.assign(job.runs ?? {}, { long: { route: 'long', links: ['speaker-2', 'speaker-3'] } });
    });
    const zones = (id: string) => byId(plan.wires, id).zones.map(({ zone, lengthM }) => [zone, lengthM]);
    expect(zones('speaker-3.+')).toEqual([
      ['cargo', 1],
      ['sill', 0.5],
      ['cabin', 0.5],
    ]);
    expect(zones('speaker-2.+').map(([zone]) => zone)).toEqual(['cargo', 'sill', 'engine-bay']);
  });
});
