import { describe, expect, it } from 'vitest';
import { openBench } from '../../lib/calculators/bench.ts';
import { isAnswer } from '../../lib/calculators/calculator.ts';
import { answered, asked, exact, figureText, smallBench, smallBenchShop } from './bench-shops.ts';

const made = { from: 'made', insulation: '105 C' };

describe('conductor and drop', () => {
  it('tells the drop that a wire table gives for 4 AWG', () => {
    // NBS Handbook 100: 4 AWG has 0.2485 ohm per 1000 ft at 20 C. Warm at 60 C, and stranded, by hand.
    const answer = answered('conductor', { ...made, size: '4 AWG', current: '60 A', fuse: '80 A' });
    const perM = (0.2485 / 304.8) * 1.02 * (1 + 0.00393 * 40);
    const otherOhm = 6 * 0.0002 + 6 * 0.0002 + 0.001 + 0.1 / 80;
    const dropV = 60 * (perM * 17.5 * 0.3048 + otherOhm);
    expect(exact(answer, 'Drop') / dropV).toBeCloseTo(1, 3);
    expect(figureText(answer, 'Drop')).toBe('0.587 V');
  });

  it('takes a size up to its drop, and not beyond', () => {
    const at = (drop: string) =>
      answered('conductor', { ...made, size: '4 AWG', fuse: '80 A', drop }).says.includes('fits:');
    const share = (100 * 0.587) / 13.8;
    expect(at(`${(share + 0.01).toFixed(3)} %`)).toBe(true);
    expect(at(`${(share - 0.01).toFixed(3)} %`)).toBe(false);
  });

  it('takes a size up to the fuse that it carries, and not beyond', () => {
    // 33 CFR 183.425, Table 5: 160 A for 4 AWG at 105 C, times 0.85 from 50 C up.
    const at = (fuse: string) => answered('conductor', { ...made, size: '4 AWG', fuse, drop: '9 %' });
    expect(figureText(at('136 A'), 'It carries')).toBe('136 A');
    expect(at('136 A').says).toMatch(/^4 AWG fits/);
    expect(at('137 A').says).not.toMatch(/fits:/);
    expect(at('137 A').minds.join()).toContain('Nothing that was asked about fits');
  });

  it('chooses from the shelf, and says what is to be bought', () => {
    expect(answered('conductor', { fuse: '80 A', drop: '5 %' }).says).toMatch(/^4 AWG, wire-4, fits/);
    expect(answered('conductor', { fuse: '80 A', drop: '2.7 %' }).says).toMatch(/^nothing fits/);
    const long = answered('conductor', { fuse: '80 A', drop: '20 %', length: '25 m', return: '' });
    expect(long.minds).toContain('No piece on the shelf is long enough: this one is to be bought.');
  });

  it('finds no reel for a use that the shelf has nothing of', () => {
    expect(answered('conductor', { from: 'speaker' }).says).toBe('nothing fits: no cable is on the shelf');
  });

  it('chooses the fuse as a plan would where none is written', () => {
    expect(figureText(answered('conductor', { current: '60 A' }), 'Fuse')).toBe('80 A');
    expect(figureText(answered('conductor', { current: '64.1 A' }), 'Fuse')).toBe('100 A');
    expect(asked('conductor', { current: '90 A', form: 'mini-blade' })).toMatchObject({
      fault: 'fuse-not-made',
    });
  });

  it('lets nothing be laid near the exhaust', () => {
    const answer = answered('conductor', { ...made, zone: 'near-exhaust' });
    expect(answer.minds[0]).toContain('near the exhaust');
    expect(answer.says).toMatch(/^nothing fits/);
  });
});

describe('fuse', () => {
  it('keeps the margin of the house, from the shelf', () => {
    // Common practice, no source: a quarter above the current.
    expect(answered('fuse', { current: '40 A' }).says).toBe('50 A, maxi blade');
    expect(answered('fuse', { current: '41 A', size: '1/0 AWG' }).says).toBe('80 A, large bolt-in');
  });

  it('never passes what its conductor carries', () => {
    // Unmarked counts as 60 C: 105 A of Table 5, times sqrt(10 / 30) at 50 C, is 60 A.
    const at = (current: string) => answered('fuse', { current, size: '4 AWG' });
    expect(figureText(at('60 A'), 'At most')).toBe('60 A');
    expect(at('60 A').says).toMatch(/^60 A/);
    expect(at('60.1 A').says).toMatch(/^no fuse may stand here/);
  });

  it('says when it does not interrupt what the battery gives', () => {
    // ABYC E-11, from memory: 1.5 kA to 650 A of cranking, 3 kA to 1100 A, 5 kA above.
    const at = (cranking: string) =>
      answered('fuse', { current: '60 A', size: '1/0 AWG', form: 'large-bolt-in', cranking });
    expect(at('650 A').minds.join()).not.toContain('It interrupts');
    expect(at('651 A').minds.join()).toContain('It interrupts 2000 A, and a short may drive 3000 A');
    expect(answered('fuse', {}).minds.join()).toContain('not judged');
  });

  it('minds a conductor that is under loom', () => {
    const minds = answered('fuse', { current: '40 A', covered: 'yes' }).minds.join();
    expect(minds).toContain('carries 48 A: less than this fuse');
  });
});

describe('coil loads', () => {
  it('finds the loads of four equal coils', () => {
    // MacMahon 1892: four equal leaves make 10 networks.
    const four = { coil1: '4 ohm', coil2: '4 ohm', coil3: '4 ohm', coil4: '4 ohm' };
    const answer = answered('coils', { ...four, minimum: '1 ohm', load2: '1 ohm', power2: '800 W' });
    expect(answer.table?.rows).toHaveLength(10);
    expect(answer.table?.rows.map(([, load]) => load)).toContain('16.0 ohm');
    expect(figureText(answer, 'Load')).toBe('1.0 ohm');
  });

  it('holds a load against the minimum on both sides', () => {
    const at = (minimum: string) => answered('coils', { minimum, asked: '2 ohm' }).table?.rows[0]?.[2];
    expect(at('2 ohm')).toBe('yes');
    expect(at('2.01 ohm')).toBe('NO');
  });

  it('tells the loads that can be had where the one that is wanted can not', () => {
    const fault = asked('coils', { asked: '3 ohm' });
    expect(fault).toMatchObject({ fault: 'load-not-possible' });
    expect(JSON.stringify(fault)).toContain('2, 8 ohm');
  });
});

describe('gain', () => {
  it('is the root of power times load, rounded down', () => {
    const at = (entries: Record<string, string>) => figureText(answered('gain', entries), 'The meter reads');
    // sqrt(75 W * 4 ohm) = 17.32 V; at 13.8 V of 14.4 V an unregulated amplifier gives 16.598 V.
    expect(at({ regulated: 'yes', highCorner: '' })).toBe('17.30 V');
    expect(at({ regulated: 'no', highCorner: '' })).toBe('16.50 V');
    expect(at({ regulated: 'yes', highCorner: '', speakers: '50 W' })).toBe('14.10 V');
  });

  it('takes a tone that the path lets through', () => {
    expect(answered('gain', { plays: 'bass', highCorner: '', lowCorner: '80 Hz' }).says).toMatch(/at 50 Hz$/);
    expect(answered('gain', { highCorner: '3 kHz' }).says).not.toMatch(/at 1 kHz$/);
    expect(asked('gain', { highCorner: '80 Hz', lowCorner: '80 Hz' })).toMatchObject({ fault: 'band-empty' });
  });
});

describe('delay', () => {
  it('is the way of the sound over its speed', () => {
    // 68.5 in less 42 in is 0.6731 m, at 343.2 m/s (ISO 9613-1, 20 C): 1.961 ms.
    const answer = answered('delay', {});
    expect(figureText(answer, 'speaker 1')).toBe('1.96 ms');
    expect(figureText(answer, 'speaker 3')).toBe('0.00 ms');
  });

  it('asks for two distances and for a rate that no processor of the shop tells', () => {
    expect(asked('delay', { speaker2: '', speaker3: '' })).toMatchObject({ fault: 'distances-too-few' });
    const { sampleRateHz: _, ...without } = smallBenchShop;
    expect(asked('delay', {}, openBench(without))).toMatchObject({ unread: [{ field: 'rate' }] });
  });
});

describe('filter', () => {
  it('is down as its family is', () => {
    // Linkwitz 1976: 20 log10(1 + 2^4) = 24.6 dB an octave below; 6 dB at the corner.
    const level = (frequency: string) => exact(answered('filter', { frequency, lowCorner: '' }), 'High-pass');
    expect(level('40 Hz')).toBeCloseTo(-20 * Math.log10(17), 9);
    expect(level('80 Hz')).toBeCloseTo(-20 * Math.log10(2), 9);
  });

  it('refuses an order that is not made, in the words of the computation', () => {
    expect(asked('filter', { highOrder: '3' })).toMatchObject({ fault: 'filter-order-not-made' });
    expect(isAnswer(asked('filter', { highType: 'bessel', highOrder: '3' }))).toBe(true);
  });

  it('places a subsonic filter by the tuning of the box', () => {
    const answer = answered('filter', { tuning: '34 Hz' });
    // Common practice, no source: 0.7 to 0.8 of the tuning, 23.8 to 27.2 Hz, told to within.
    expect(figureText(answer, 'Subsonic filter, fourth order, from')).toBe('24 Hz');
    expect(figureText(answer, 'Subsonic filter, fourth order, to')).toBe('27 Hz');
  });
});

describe('fraction to millimetre', () => {
  const inMm = openBench({ ...smallBenchShop, units: 'millimetre' });

  it('is exact both ways', () => {
    // NIST SP 811: 25.4 mm an inch.
    expect(exact(answered('fraction', { length: '13 5/8 in' }), 'Millimetres')).toBeCloseTo(346.075, 9);
    expect(exact(answered('fraction', { length: '254 mm' }), 'Decimal')).toBeCloseTo(10, 12);
  });

  it('errs to the side that is safe for what it is', () => {
    const at = (as: string) => figureText(answered('fraction', { length: '10 mm', as }), 'Fraction');
    expect([at('room-asked'), at('room-free'), at('position')]).toEqual(['7/16 in', '3/8 in', '3/8 in']);
  });

  it('names the bits in the system of the shop first', () => {
    const bit = (bench = smallBench) =>
      figureText(answered('fraction', { length: '6.4 mm' }, bench), 'Bit that lets it pass');
    expect(bit()).toBe('17/64 in or 6.4 mm');
    expect(bit(inMm)).toBe('6.4 mm or 17/64 in');
    expect(figureText(answered('fraction', { length: '26 mm' }), 'Bit that lets it pass')).toBeUndefined();
  });
});
