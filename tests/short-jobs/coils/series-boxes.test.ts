import { describe, expect, test } from 'vitest';
import { changed, linksOf, shopWith } from '../links-of.ts';

const between =
  '\nroutes:\n  between-boxes: { title: "From box to box", side: middle, ends: [box-left, box-right], passes: [cargo 30 in] }\n';
const joined = shopWith('van.yaml', '\nroutes:\n', between);
const highOhm = changed('van-three-way', ['part: amp-mono-1000', 'part: amp-mono-8-ohm']);

describe('subwoofers in two boxes on an amplifier for a high load', () => {
  // Coils of 2 ohm, two a speaker: in series 4 ohm a speaker; both speakers in parallel 2 ohm, one after the other 8 ohm.
  test('hang one after the other, over a route from box to box', () => {
    const { links, problems, proposed, job } = linksOf(highOhm, joined);
    expect(problems).toEqual([]);
    expect(links).toMatchObject({
      'to-sub-left-plus': 'amp-sub.CH1+ sub-left.C1+',
      'sub-left-series': 'sub-left.C1- sub-left.C2+',
      'to-sub-right-series': 'sub-left.C2- sub-right.C1+',
      'sub-right-series': 'sub-right.C1- sub-right.C2+',
      'to-sub-right-minus': 'amp-sub.CH1- sub-right.C2-',
    });
    expect(proposed('to-sub-right-series')?.reason).toMatch(/^8 ohm take 300 W.*the speakers in series/);
    expect(job?.file.runs['between-boxes']).toMatchObject({ links: ['to-sub-right-series'] });
  });

  test('are asked for where no route leads from box to box', () => {
    const { job, problems } = linksOf(highOhm);
    expect(job).toBeNull();
    expect(problems.join('\n')).toMatch(/sub can't be wired for amp-sub: .* 8 ohm is its least/);
  });

  test('hang in parallel where the amplifier drives that: one that fails leaves the other', () => {
    const { links, proposed } = linksOf(changed('van-three-way'), joined);
    expect(links['to-sub-right-series']).toBeUndefined();
    expect(links['to-sub-right-plus']).toBe('amp-sub.CH1+ sub-right.C1+');
    expect(proposed('to-sub-right-plus')?.reason).toMatch(/the speakers in parallel at the amplifier/);
  });
});
