import { describe, expect, test } from 'vitest';
import type { SourceFile } from '../../lib/model/content/source-file.ts';
import { placeText } from '../../lib/model/place.ts';
import { readShort, shop, shortText } from './short-shop.ts';

/** What is told of a job, of the shop's files with one text exchanged in the file that has it. */
function told(job: string, from: string, to: string): readonly string[] {
  const files: readonly SourceFile[] = shop.map(({ path, text }) => ({
    path,
    text: text.replace(from, () => to),
  }));
  const text = shortText(job).replace(from, () => to);
  const { problems } = readShort(text, undefined, files);
  return problems.map(({ where, message }) => `${placeText(where)} ${message}`);
}

describe('a job of which nothing is written but what plays what', () => {
  const sound = told('under-seat-five', '', '');

  test('has no problem', () => {
    expect(sound).toEqual([]);
  });

  test('tells an amplifier that can not be read in its own file alone', () => {
    const all = told(
      'under-seat-five',
      '  amp-five:\n    kind: amplifier',
      '  amp-five:\n    kind: amplfier',
    );
    expect(all).toHaveLength(1);
    expect(all[0]).toMatch(/^content\/parts\/amplifiers\.yaml:.* kind can't be "amplfier"/);
  });

  test('tells a part that the catalogue lacks, and nothing that follows from it', () => {
    const all = told('under-seat-five', 'part: amp-five', 'part: amp-fifty');
    expect(all).toEqual([expect.stringMatching(/there is no part "amp-fifty"$/)]);
  });

  test('tells what its vehicle lacks in the file of the vehicle alone', () => {
    const all = told('under-seat-five', '  starter-battery: {', '  battery: {');
    expect(all.length).toBeGreaterThan(0);
    expect(all.filter((one) => !one.startsWith('content/vehicles/'))).toEqual([]);
  });

  test('is still asked for what it leaves undecided', () => {
    const all = told('estate-side-well', ', driven-by: amp-front', '');
    expect(all).toEqual([expect.stringMatching(/tweeter could be driven by amp-front or amp-sub$/)]);
  });
});
