import { describe, expect, test } from 'vitest';
import { computeAnew } from '../../../lib/model/keep.ts';
import { planAudio } from '../../../lib/plan/audio/audio.ts';
import { carriedSides } from '../../../lib/plan/audio/carried-sides.ts';
import { lossOf } from '../../../lib/plan/audio/speaker-sizing.ts';
import { turnOnChain } from '../../../lib/plan/audio/turn-on-chain.ts';
import { turnOnSums } from '../../../lib/plan/audio/turn-on-sums.ts';
import { withWireLoss } from '../../../lib/plan/audio/wire-loss.ts';
import { PlanBook } from '../../../lib/plan/plan-book.ts';
import { settleJob } from '../../../lib/plan/settle-job.ts';
import type { SettledJob } from '../../../lib/plan/settle-sizes.ts';
import { byId, entry, jobOf, partIn } from '../../rules/case.ts';
import { withRelay } from '../../rules/changes.ts';
import { type Written, withoutBoard, written } from '../../rules/content.ts';
import { plannedAudio } from './planned-audio.ts';

type Change = (content: Written) => void;

describe('the turn-on', () => {
  const chainOf = (job: SettledJob['job']) => {
    const devices = new Map(job.devices.map((device) => [device.id, device]));
    const book = new PlanBook();
    const chain = turnOnChain(job, devices, book);
    return { chain, sums: turnOnSums(job, devices, chain, book), remarks: book.remarks() };
  };
  const small = (change: Change = () => {}) => chainOf(plannedAudio(change).job);
  const short = ({ chain }: ReturnType<typeof small>) =>
    chain.map(({ terminal, driver, stage }) => `${terminal} by ${driver} at ${stage}`);

  test('comes up from the source, one stage behind another; an output gives what hangs on it', () => {
    const { sums, chain } = small();
    expect(short({ sums, chain, remarks: [] })).toEqual([
      'dsp.REM-IN by radio.REM at 1',
      'amp.REM by dsp.REM-OUT at 2',
    ]);
    expect(sums.map(({ source, sumA, limitA, within }) => [source, sumA, limitA, within])).toEqual([
      ['radio.REM', 0.02, 0.3, true],
      ['dsp.REM-OUT', 0.02, 0.3, true],
    ]);
  });

  test('of what came with the vehicle is its own affair', () => {
    const told = short(
      small(({ vehicle, job }) => {
        vehicle.fitted.booster = { part: 'dsp', zone: 'cabin' };
        job.links.extra = { from: 'radio.REM', to: 'booster.REM-IN' };
      }),
    );
    expect(told.some((one) => one.startsWith('booster'))).toBe(false);
  });

  test('of a device that nothing drives stands last, without a stage; a relay coil that nothing drives is its return', () => {
    const told = short(
      small(({ job }) => {
        delete job.links['radio-rem'];
      }),
    );
    expect(told).toEqual(['amp.REM by dsp.REM-OUT at 1', 'dsp.REM-IN by null at null'].toSorted());
    const { chain, sums } = chainOf(withRelay('diode').job);
    expect(short({ chain, sums, remarks: [] })).toEqual([
      'dsp.REM-IN by radio.REM at 1',
      'relay.86 by dsp.REM-OUT at 2',
      'amp.REM by relay.87 at 3',
    ]);
    // The coil draws 150 mA; the contact carries 30 A, and 20 mA flow over it.
    expect(sums.find(({ source }) => source === 'dsp.REM-OUT')).toMatchObject({ sumA: 0.15, limitA: 0.3 });
    expect(sums.find(({ source }) => source === 'relay.87')).toMatchObject({ sumA: 0.02, limitA: 30 });
  });

  test('goes on over the strip of a distribution, and ends where wires lead round in a ring', () => {
    const strip: Change = (content) => {
      content.parts.strip = {
        kind: 'distribution',
        title: 'Strip',
        size: { width: '50 mm', depth: '20 mm', height: '20 mm' },
        mass: '100 g',
        current: '10 A',
        terminals: { A: { role: 'ground-bar' }, B: { role: 'ground-bar' }, C: { role: 'ground-bar' } },
      };
      content.job.devices.strip = { part: 'strip', in: 'boot' };
    };
    const over = small((content) => {
      strip(content);
      const { job } = content;
      job.links['radio-rem'] = { from: 'radio.REM', to: 'strip.A' };
      job.links['strip-dsp'] = { from: 'strip.B', to: 'dsp.REM-IN' };
    });
    expect(short(over)[0]).toBe('dsp.REM-IN by radio.REM at 1');
    const round = small((content) => {
      strip(content);
      const { job } = content;
      delete job.links['radio-rem'];
      job.links.there = { from: 'dsp.REM-IN', to: 'strip.A' };
      job.links.back = { from: 'strip.B', to: 'dsp.REM-IN' };
    });
    expect(short(round)).toContain('dsp.REM-IN by null at null');
  });
});

describe('the side that a channel is written to play', () => {
  const sides = (change: Change) => {
    const { job, devices } = plannedAudio(change);
    return carriedSides(job, devices, { id: 'amp.1', amplifier: 'amp' });
  };
  const outputs: Change = (content) => {
    const radio = partIn(content, 'radio', 'source-unit');
    radio.terminals.OUT2 = { role: 'signal-out', joint: 'phono', signal: '4 V' };
    radio.outputs = { OUT: { side: 'left' }, OUT2: { side: 'right' } };
  };
  const lead: Change = ({ parts, job }) => {
    parts.lead = {
      kind: 'cable',
      title: 'Lead',
      form: 'coaxial',
      conductors: {
        white: { size: '24 AWG', colour: 'WH', side: 'left' },
        red: { size: '24 AWG', colour: 'RD', side: 'right' },
      },
      for: ['signal'],
    };
    job.cables = { pair: { part: 'lead' } };
  };

  test('is that of the output of the source that feeds it, straight', () => {
    const straight = sides((content) => {
      outputs(content);
      content.job.links['signal-1'] = { from: 'radio.OUT2', to: 'amp.IN1' };
    });
    expect(straight).toEqual([{ side: 'right', by: 'radio.OUT2', at: { device: 'radio' } }]);
  });

  const twoInputs: Change = (content) => {
    outputs(content);
    const { terminals } = partIn(content, 'dsp', 'processor');
    terminals.IN2 = { role: 'signal-in', joint: 'phono', signal: '2 V' };
    content.job.links['radio-signal-2'] = { from: 'radio.OUT2', to: 'dsp.IN2' };
  };

  test('is told through a processor by its one input, or by the input that is said to play there', () => {
    expect(sides(outputs)).toEqual([{ side: 'left', by: 'radio.OUT', at: { device: 'radio' } }]);
    expect(sides(twoInputs)).toEqual([]);
    const mixed = sides((content) => {
      twoInputs(content);
      entry(content.job.devices, 'dsp').mix = { OUT1: ['IN2'] };
    });
    expect(mixed).toEqual([{ side: 'right', by: 'radio.OUT2', at: { device: 'radio' } }]);
  });

  test('is that of the conductor of the lead that ends at its input, or that leaves a source without a side', () => {
    const atInput = sides((content) => {
      lead(content);
      content.job.links['signal-1'] = { from: 'dsp.OUT1', to: 'amp.IN1', cable: 'pair', conductors: ['red'] };
    });
    expect(atInput).toEqual([{ side: 'right', by: 'pair.red', at: { link: 'signal-1' } }]);
    const atSource = sides((content) => {
      lead(content);
      Object.assign(entry(content.job.links, 'radio-signal'), { cable: 'pair', conductors: ['white'] });
    });
    expect(atSource).toEqual([{ side: 'left', by: 'radio.OUT (pair.white)', at: { link: 'radio-signal' } }]);
    expect(sides(() => {})).toEqual([]);
  });
});

describe('delays', () => {
  /** Distances of door and boot; both speakers on one output of the processor where it is asked. */
  const delayed = (
    doorM: number,
    bootM: number,
    shared: boolean,
    rateHz: `${number} kHz` | null = '48 kHz',
  ) =>
    plannedAudio((content) => {
      const { vehicle, job, shop } = content;
      if (rateHz !== null) partIn(content, 'dsp', 'processor')['sample-rate'] = rateHz;
      entry(vehicle.places, 'door').distance = `${doorM} m`;
      entry(vehicle.places, 'boot').distance = `${bootM} m`;
      shop.rules = { 'air-temperature': '20 C' };
      if (!shared) return;
      delete job.links['signal-2'];
      job.links['signal-2'] = { from: 'dsp.OUT1', to: 'amp.IN2' };
    });

  // Sound goes 343.2 m/s at 20 C (ISO 9613-1): 0.6864 m are 2 ms, 96 samples of 48 kHz.
  test('let the nearer speaker wait for the farther', () => {
    const { audio } = delayed(1, 1.6864, false);
    expect(byId(audio.speakers, 'tweeter').delayMs).toBeCloseTo(2, 6);
    expect(byId(audio.speakers, 'tweeter').delaySamples).toBe(96);
    expect(byId(audio.speakers, 'sub').delayMs).toBe(0);
    expect(audio.sharedDelays).toEqual([]);
    expect(byId(delayed(1, 1.6864, false, null).audio.speakers, 'tweeter').delayMs).toBeNull();
  });

  test('of two on one output are half-way between, where they differ by more than the shop lets pass', () => {
    const { audio } = delayed(1, 1.6864, true);
    expect(audio.sharedDelays).toHaveLength(1);
    expect(audio.sharedDelays[0]).toMatchObject({ outputs: ['dsp.OUT1'], delaySamples: 48 });
    expect(audio.sharedDelays[0]?.delayMs).toBeCloseTo(1, 6);
    for (const id of ['tweeter', 'sub']) expect(byId(audio.speakers, id).delayMs).toBeCloseTo(1, 6);
    const { job } = plannedAudio();
    const withinM = job.rules['delay-tolerance'].value * 343.2;
    expect(delayed(1, 1 + 0.99 * withinM, true).audio.sharedDelays).toEqual([]);
    expect(delayed(1, 1 + 1.01 * withinM, true).audio.sharedDelays).toHaveLength(1);
    // Both far away are as near to each other as both close by.
    expect(delayed(6, 6 + 0.99 * withinM, true).audio.sharedDelays).toEqual([]);
  });

  test('of two that are as far away are one, and wait for no farther one that the processor does not feed', () => {
    const { audio } = plannedAudio((content) => {
      const { vehicle, job, shop } = content;
      partIn(content, 'dsp', 'processor')['sample-rate'] = '48 kHz';
      for (const [place, distance] of [
        ['door', '1 m'],
        ['boot', '1 m'],
        ['dash', '3 m'],
      ] as const)
        entry(vehicle.places, place).distance = distance;
      shop.rules = { 'air-temperature': '20 C' };
      job.devices.far = { part: 'tweeter', in: 'dash' };
      delete job.links['signal-2'];
      job.links['signal-2'] = { from: 'dsp.OUT1', to: 'amp.IN2' };
    });
    expect(audio.sharedDelays).toEqual([]);
    for (const id of ['tweeter', 'sub']) expect(byId(audio.speakers, id).delayMs).toBe(0);
    expect(byId(audio.speakers, 'far').delayMs).toBeNull();
  });

  test('leave out a speaker that is not measured, and name the place that lacks it', () => {
    const { remarks } = plannedAudio((content) => {
      partIn(content, 'dsp', 'processor')['sample-rate'] = '48 kHz';
      entry(content.vehicle.places, 'door').distance = '1 m';
    });
    const told = remarks.filter(({ rule }) => rule === 'speaker-not-measured');
    expect(told.map(({ of, remedy }) => [of, remedy])).toEqual([
      [['sub'], "write distance: of the place boot in the vehicle's file"],
    ]);
  });
});

describe('the loss in the wires of a channel', () => {
  // By hand: 2 * 5 m of 10 mohm/m are 0.1 ohm before 4 ohm: 20 log10(4.1 / 4) = 0.2145 dB. Copper has 1 + 0.00393 * 40 of
  // its resistance at 20 C at the 60 C that the house reckons with (IEC 60028).
  test('is that of both conductors, warm; an amplifier of factor 100 at 4 ohm stands behind 0.04 ohm', () => {
    const { job } = plannedAudio();
    const run = { id: 'amp.1', loadOhm: 4, wayM: 5 };
    const warm = 1 + 0.00393 * 40;
    const plain = lossOf(job, run, 3.31, 'copper', 0.01 / warm);
    expect(plain?.wireOhm.value).toBeCloseTo(0.1, 2);
    expect(plain?.lossDb.value).toBeCloseTo(20 * Math.log10(4.1 / 4), 2);
    const wireOhm = plain?.wireOhm.value ?? 0;
    const damped = (bridged?: boolean) =>
      lossOf(
        job,
        { ...run, amplifierDamping: { factor: 100, atOhm: 4 }, ...(bridged !== undefined && { bridged }) },
        3.31,
        'copper',
        0.01 / warm,
      )?.damping?.value;
    expect(damped()).toBeCloseTo(4 / (0.04 + wireOhm), 9);
    expect(damped(false)).toBeCloseTo(4 / (0.04 + wireOhm), 9);
    // Two outputs in series stand behind twice the resistance of one.
    expect(damped(true)).toBeCloseTo(4 / (0.08 + wireOhm), 9);
    expect(lossOf(job, run, 0, 'copper', undefined)).toBeNull();
  });

  test('without a measured figure is that of the table: 14 AWG has 2.525 ohm per 1,000 ft at 20 C', () => {
    const { job } = plannedAudio();
    // NBS Handbook 100, solid; stranded about 2 % more, and 16 % more at 60 C.
    const loss = lossOf(job, { id: 'amp.1', loadOhm: 4, wayM: 152.4 }, 2.08, 'copper', undefined);
    expect((loss?.wireOhm.value ?? 0) / (2.525 * 1.0 * 1.1572)).toBeGreaterThan(1);
    expect((loss?.wireOhm.value ?? 0) / (2.525 * 1.0 * 1.1572)).toBeLessThan(1.03);
  });

  let settled: SettledJob | null = null;
  /** The small job with two doors on a channel each, one twice as far as the other, once its sizes stand. */
  const doors = (): SettledJob => {
    if (settled) return settled;
    const content = written();
    withoutBoard(content);
    const { job, parts } = content;
    for (const id of ['sub', 'box']) delete job.devices[id];
    job.devices.other = { part: 'tweeter', in: 'door' };
    job.links['speaker-1'] = { from: 'amp.CH1', to: 'tweeter.T', length: '2 m' };
    job.links['speaker-2'] = { from: 'amp.CH2', to: 'other.T', length: '4 m' };
    partIn(content, 'two-channel', 'amplifier').damping = { factor: 100, at: '4 ohm' };
    parts['speaker-wire'] = {
      kind: 'wire',
      title: 'Speaker wire',
      size: '14 AWG',
      insulation: '105 C',
      colour: 'WH',
      for: ['speaker'],
      measured: '10 mohm/m',
    };
    content.shop.stock = { 'speaker-wire': { reels: ['50 m'] } };
    settled = settleJob(jobOf(content), new PlanBook(), computeAnew);
    return settled;
  };

  test('tells each channel, and how far it is below the best of its band', () => {
    const { job, devices, circuit, channels, settled: sizes } = doors();
    const book = new PlanBook();
    const { audio } = planAudio(job, devices, circuit, book);
    const heard = withWireLoss(job, audio, channels, sizes, book);
    const [near, far] = ['amp.1', 'amp.2'].map((id) => byId(heard.channels, id));
    const loss = (wayM: number, ohmPerM: number) => 20 * Math.log10((4 + 2 * wayM * ohmPerM) / 4);
    const perM = (4 * (10 ** ((near?.wireLossDb ?? 0) / 20) - 1)) / (2 * 2);
    // 10 mohm/m, warmer than 20 C by at most the 60 C of the house.
    expect(perM).toBeGreaterThanOrEqual(0.01);
    expect(perM).toBeLessThan(0.0125);
    expect(far?.wireLossDb).toBeCloseTo(loss(4, perM), 9);
    expect(near?.belowDb).toBe(0);
    expect(far?.belowDb).toBeCloseTo(loss(4, perM) - loss(2, perM), 9);
    expect(near?.damping).toBeCloseTo(4 / (0.04 + 4 * perM), 6);
    expect(far?.damping).toBeCloseTo(4 / (0.04 + 8 * perM), 6);
    expect(book.traces()['audio.channels.amp.2.belowDb']?.value).toBe(far?.belowDb);
  });

  test('is none for a channel without a load', () => {
    const { job, devices, circuit, channels, settled: sizes } = doors();
    const { audio } = planAudio(job, devices, circuit, new PlanBook());
    const silent = { ...audio, channels: audio.channels.map((one) => ({ ...one, loadOhm: null })) };
    const heard = withWireLoss(job, silent, channels, sizes, new PlanBook());
    for (const { wireLossDb, belowDb } of heard.channels) expect([wireLossDb, belowDb]).toEqual([null, null]);
  });
});
