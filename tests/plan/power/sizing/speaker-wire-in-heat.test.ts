import { expect, test } from 'vitest';
import { awgSize } from '../../../../lib/model/quantity/wire-size.ts';
import { LeastSizes } from '../../../../lib/plan/power/sizing/least-sizes.ts';
import { sizeOthers } from '../../../../lib/plan/power/sizing/size-others.ts';
import { partsFile, vehicleFile } from '../../../read/problem-case.ts';
import type { Change } from '../../../read/small-shop.ts';
import { settledShop, sizedAnew } from '../settled-power.ts';

const inSun: Change = [
  vehicleFile,
  'boot: { title: Boot, zone: cargo',
  'boot: { title: Boot, zone: dash-top',
];
const reels: Change = [
  partsFile,
  '  loom-a:',
  [
    '  hot-18: { kind: wire, title: Hot, size: 18 AWG, insulation: 105 C, colour: RD, for: [speaker] }',
    '  hot-14: { kind: wire, title: Hot, size: 14 AWG, insulation: 105 C, colour: RD, for: [speaker] }',
    '  cool-8: { kind: wire, title: Cool, size: 8 AWG, insulation: 80 C, colour: RD, for: [speaker] }',
    '  loom-a:',
  ].join('\n'),
];

/** The wire of the speaker where its loss asks for 10 AWG. */
function sized(...changes: readonly Change[]) {
  const sizing = sizedAnew(settledShop(...changes).sizing);
  const least = new LeastSizes();
  const [id = ''] = [...sizeOthers({ ...sizing, least }, []).keys()].filter((one) =>
    /speaker.*\+$/.test(one),
  );
  least.raise(id, awgSize('10').areaMm2, 'its loss');
  return sizeOthers({ ...sizing, least }, []).get(id);
}

// 33 CFR 183.425, Table 5: insulation for 80 C carries nothing in the 85 C that the house counts on top of a dash.
test('a speaker wire in the sun is the largest whose insulation lasts, where its loss asks for more', () => {
  expect(sized(inSun, reels)).toMatchObject({
    cable: { part: 'hot-14' },
    reason: expect.stringMatching(
      /^14 AWG: the largest whose insulation lasts on its way, where its loss asks for/,
    ),
    remarks: [expect.objectContaining({ rule: 'conductor-not-on-shelf', level: 'caution' })],
  });
});

test('elsewhere it is as large as its loss asks for', () => {
  expect(sized(reels)?.cable).toMatchObject({ part: 'cool-8' });
});
