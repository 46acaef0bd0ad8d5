import { describe, expect, it } from 'vitest';
import { lookFor, type Searcher } from '../../../lib/publish/search/look-for.ts';
import { markedLines } from '../../../lib/publish/search/marked-lines.ts';
import { indexWords } from '../../../lib/publish/search/search-words.ts';

const pages = [
  'Board with three amplifiers in a panel van, 1/0 AWG, subwoofer',
  'Board with one amplifier in a hatchback, 4 AWG, side-well',
  'Mini blade fuse, 3 A',
];

/** A library that has a page where all words of it begin so, as the real one does. */
const library: Searcher<string> = {
  search: async (words) =>
    pages.filter((page) =>
      (words ?? '').split(' ').every((word) => indexWords(page).some((one) => one.startsWith(word))),
    ),
};
const known = new Map(pages.flatMap(indexWords).map((word) => [word, 1]));
const ask = (typed: string) => lookFor(typed, {}, known, library);

describe('lookFor', () => {
  it('finds what has all words, with slips put right and told', async () => {
    const { hits, looked, leftOut } = await ask('amplifer van 1/0');
    expect(hits).toEqual([pages[0]]);
    expect(looked.filter(({ isMended }) => isMended).map(({ typed, words }) => [typed, ...words])).toEqual([
      ['amplifer', 'amplifier'],
    ]);
    expect(leftOut).toEqual([]);
  });

  it('takes two words that were typed apart for one, and one for two', async () => {
    expect((await ask('sub woofer')).hits).toEqual([pages[0]]);
    expect((await ask('panelvan')).hits).toEqual([pages[0]]);
    expect((await ask('sidewell')).hits).toEqual([pages[1]]);
  });

  it('takes amps for amperes, and for amplifiers where no page has so many amperes beside the rest', async () => {
    expect((await ask('3 amps')).hits).toEqual([pages[2]]);
    expect((await ask('3 amps van')).hits).toEqual([pages[0]]);
  });

  it('leaves out what no page has, and says so', async () => {
    const { hits, leftOut } = await ask('hatchback zeppelin');
    expect(hits).toEqual([pages[1]]);
    expect(leftOut).toEqual(['zeppelin']);
  });

  it('leaves out the one word without which the fewest pages are left', async () => {
    const { hits, leftOut } = await ask('hatchback amplifier subwoofer');
    expect(hits).toHaveLength(1);
    expect(leftOut).toHaveLength(1);
  });

  it('finds nothing where nothing is meant', async () => {
    expect((await ask('zeppelin')).hits).toEqual([]);
  });
});

describe('markedLines', () => {
  const texts = {
    title: 'Board with three amplifiers',
    lines: [
      'Panel van, long body',
      'Wire: 1/0 AWG, 16 AWG',
      `${'Far off. '.repeat(40)}The ramp stays clear.`,
    ],
    names: ['P1', 'P11', 'van-007'],
  };
  const said = (asked: readonly string[]): string[] =>
    markedLines(asked, texts).map((line) =>
      line.map(({ text, isHit }) => (isHit ? `[${text}]` : text)).join(''),
    );

  it('shows of a page the lines that answer, and marks what does', () => {
    expect(said(['van', '1over0awg'])).toEqual(['Panel [van], long body', 'Wire: [1/0] AWG, 16 AWG']);
  });

  it('shows no line for what stands in the title, and of the labels those that were asked for', () => {
    expect(said(['amplifier'])).toEqual([]);
    expect(said(['p11'])).toEqual(['P11']);
  });

  it('shows of a long line what is round the answer', () => {
    const [line = ''] = said(['ramp']);
    expect(line).toContain('The [ramp] stays clear.');
    expect(line.length).toBeLessThan(200);
  });
});
