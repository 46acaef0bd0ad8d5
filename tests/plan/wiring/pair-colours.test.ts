import { describe, expect, test } from 'vitest';
import { inJob, partsFile, vehicleFile } from '../../read/problem-case.ts';
import type { Change } from '../../read/small-shop.ts';
import { byId, smallPlan } from '../plan-small-shop.ts';

const colours = (...changes: readonly Change[]) => {
  const { wires } = smallPlan(...changes).plan;
  return [byId(wires, 'speaker.+').colour, byId(wires, 'speaker.-').colour];
};

describe('colours of a speaker pair', () => {
  test('the negative is striped', () => {
    expect(colours()).toEqual(['WH', 'WH/BK']);
  });

  // 33 CFR 183.425, Table 5: insulation for 80 C is for less than the 85 C that the house counts on top of a dash.
  test('on a way in the sun are those of reels that withstand it', () => {
    const toDash: Change = [
      vehicleFile,
      'boot: { title: Boot, zone: cargo',
      'boot: { title: Boot, zone: dash-top',
    ];
    const hot: Change = [
      partsFile,
      '  loom-a:',
      '  red-12: { kind: wire, title: Red, size: 12 AWG, insulation: 105 C, colour: RD, for: [speaker] }\n  black-12: { kind: wire, title: Black, size: 12 AWG, insulation: 105 C, colour: BK, for: [speaker] }\n  loom-a:',
    ];
    const onShelf: Change = [
      'content/shop.yaml',
      '  large-60:',
      '  red-12: { reels: [30 ft] }\n  black-12: { reels: [30 ft] }\n  large-60:',
    ];
    expect(colours(hot, onShelf, toDash)).toEqual(['RD', 'BK']);
    expect(colours(hot, onShelf)).toEqual(['WH', 'WH/BK']);
  });

  test('a size that the job gives leaves the colours to be chosen', () => {
    expect(colours(inJob('length: 3 ft }', 'length: 3 ft, size: 12 AWG }'))).toEqual(['WH', 'WH/BK']);
  });

  test('a reel or a colour that the job gives stays', () => {
    expect(colours(inJob('length: 3 ft }', 'length: 3 ft, wire: striped-12 }'))).toEqual(['WH/BK', 'WH/BK']);
    expect(colours(inJob('length: 3 ft }', 'length: 3 ft, colour: WH }'))).toEqual(['WH', 'WH']);
  });

  test('neighbouring pairs differ where the shelf has two colours', () => {
    const { wires } = smallPlan(
      [
        partsFile,
        '  loom-a:',
        '  grey-12: { kind: wire, title: Grey, size: 12 AWG, insulation: 80 C, colour: GY, for: [speaker] }\n  grey-black-12: { kind: wire, title: Grey with black, size: 12 AWG, insulation: 80 C, colour: GY/BK, for: [speaker] }\n  loom-a:',
      ],
      [
        'content/shop.yaml',
        '  large-60:',
        '  grey-12: { reels: [30 ft] }\n  grey-black-12: { reels: [30 ft] }\n  large-60:',
      ],
      inJob('  sub: {', '  sub-two: { part: woofer-a, in: boot }\n  sub: {'),
      inJob('  speaker: {', '  speaker-two: { from: amp.CH1, to: sub-two.C1, length: 3 ft }\n  speaker: {'),
    ).plan;
    const pair = (id: string) => [byId(wires, `${id}.+`).colour, byId(wires, `${id}.-`).colour];
    expect([pair('speaker-two'), pair('speaker')].toSorted()).toEqual([
      ['GY', 'GY/BK'],
      ['WH', 'WH/BK'],
    ]);
  });

  /** Reels of 30 ft in a colour and the same with a black stripe, in the catalogue and on the shelf. */
  const reels = (...list: readonly (readonly [awg: number, colour: string])[]): readonly Change[] => {
    const all = list.flatMap(([awg, colour]) =>
      [colour, `${colour}/BK`].map((one) => ({
        id: `${one.toLowerCase().replace('/', '-')}-${awg}`,
        awg,
        one,
      })),
    );
    const parts = all.map(
      ({ id, awg, one }) =>
        `  ${id}: { kind: wire, title: Reel, size: ${awg} AWG, insulation: 80 C, colour: ${one}, for: [speaker] }\n`,
    );
    const stock = all.map(({ id }) => `  ${id}: { reels: [30 ft] }\n`);
    return [
      [partsFile, '  loom-a:', `${parts.join('')}  loom-a:`],
      ['content/shop.yaml', '  large-60:', `${stock.join('')}  large-60:`],
    ];
  };
  const second = (size: string) => [
    inJob('  sub: {', '  sub-two: { part: woofer-a, in: boot }\n  sub: {'),
    inJob(
      'length: 3 ft }\nruns:',
      `length: 3 ft, size: 12 AWG }\n  speaker-two: { from: amp.CH1, to: sub-two.C1, length: 3 ft, size: ${size} }\nruns:`,
    ),
  ];
  const pairs = (...changes: readonly Change[]) => {
    const { wires } = smallPlan(...changes).plan;
    return ['speaker', 'speaker-two'].map((id) => byId(wires, `${id}.+`).colour);
  };

  test('the first leaves its usual colour to one that has no other in its size', () => {
    // 12 AWG: white and grey; 14 AWG: white alone.
    expect(pairs(...reels([12, 'GY'], [14, 'WH']), ...second('14 AWG'))).toEqual(['GY', 'WH']);
    expect(pairs(...reels([12, 'GY'], [14, 'VT']), ...second('14 AWG'))).toEqual(['WH', 'VT']);
  });

  test('with fewer colours than pairs the usual ones are used again', () => {
    expect(pairs(...second('12 AWG'))).toEqual(['WH', 'WH']);
  });
});
