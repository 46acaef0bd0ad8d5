import { expect, test } from 'vitest';
import { linksOf, shopWith } from './links-of.ts';
import { shortText } from './short-shop.ts';

/** The job of one four-channel amplifier, whose maker states another fuse. */
const withFuse = (supply: string) =>
  linksOf(
    shortText('open-boat'),
    shopWith(
      'parts/amplifiers.yaml',
      'fuse: 50 A, fuses-fitted: 2, cut-out: 10.5 V, idle: 1 A',
      `${supply}, cut-out: 10.5 V, idle: 1 A`,
    ),
  );

test('a maker who allows less than the amplifier draws is told with the field that says whose fuse it is', () => {
  const { job, problems } = withFuse('fuse: 10 A, fuses-fitted: 0');
  expect(job).toBeNull();
  const [told = ''] = problems;
  expect(told).toMatch(
    /^no fuse holder of the catalogue suffices at .* for .* A at .* V: with the margin of 1\.25 its fuse is .* A or more, and the maker of amp allows 10 A; where the 10 A are fuses in amp itself, write how many .*fuses-fitted: 1:/,
  );
});

test('fuses in the amplifier itself set no ceiling to the one at the source', () => {
  expect(withFuse('fuse: 10 A, fuses-fitted: 1').problems).toEqual([]);
});
