import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { askedWords, indexWords, normalWord } from '../../../lib/publish/search/search-words.ts';

const asked = (text: string): readonly string[] => askedWords(text).map(({ word }) => word);

describe('what is asked for is found in what is written, however each is spelled', () => {
  it.each([
    ['1/0', 'Power wire, 1/0 AWG, red'],
    ['0 gauge', 'Power wire, 1/0 AWG, red'],
    ['zero gauge', 'Power wire, 1/0 AWG, red'],
    ['1 / 0 ga', '1/0 AWG'],
    ['one aught', '1/0 AWG'],
    ['AWG 1/0', '1/0 AWG'],
    ['2/0', '2/0 AWG'],
    ['00 awg', '2/0 AWG'],
    ['four gauge', '4 AWG'],
    ['4ga', '4 AWG'],
    ['awg4', '4 AWG'],
    ['16 sq mm', 'Ferrule, 16 mm2, for 6 AWG'],
    ['2,5 mm²', 'Ferrule, 2.5 mm2'],
    ['3/4', 'Medium-density fibreboard, 3/4 in'],
    ['0.75"', 'Medium-density fibreboard, 3/4 in'],
    ['¾ inch', 'Medium-density fibreboard, 3/4 in'],
    ['6 1/2', 'Coaxial speaker, 6.5 in'],
    ['6-1/2"', 'Coaxial speaker, 6 1/2 in'],
    ['6½', 'Coaxial speaker, 6 1/2 in'],
    ['12" sub', 'Subwoofer, 12 in, two coils of 4 ohm'],
    ['75w', 'Four-channel amplifier, 4 x 75 W'],
    ['4x75', 'Four-channel amplifier, 4 x 75 W'],
    ['5ch amp', 'Five-channel amplifier'],
    ['five channels', 'Five-channel amplifier'],
    ['150 amp', 'Large bolt-in fuse, 150 A'],
    ['4Ω', 'Tweeter, 25 mm dome, 4 ohm'],
    ['l1+', 'Labels: L1+, L1-'],
    ['CH2-', 'amp-front.CH2-'],
    ['L1', 'L1+'],
    ['B+', 'amp-front.B+'],
    ['amp front', 'amp-front.B+'],
    ['sidewell', 'Side-well board'],
    ['fuses', 'Mini blade fuse'],
    ['batteries', 'Second battery'],
    ['boxes', 'Subwoofer box'],
    ['coupe', 'Coupé, two doors'],
    ['mdf', 'Medium-density fibreboard'],
    ['fiberboard', 'Medium-density fibreboard'],
    ['P.T.', 'P. T.'],
    ['heatshrink', 'Heat-shrink with adhesive'],
    ['2026', '2026-03-14'],
  ])('%s in %s', (question, text) => {
    const known = indexWords(text);
    expect(asked(question).filter((word) => !known.some((one) => one === word))).toEqual([]);
  });

  it.each([
    ['1/0', '10 AWG'],
    ['1/0', '1 AWG'],
    ['2/0', '1/0 AWG'],
    ['4 gauge', '14 AWG'],
    ['4 gauge', '4/0 AWG'],
    ['3/4', '13 3/4 in'],
    ['3/4', '34 in'],
    ['1/2', '6 1/2 in'],
    ['15 a', '150 A'],
    ['L1+', 'L1-'],
    ['L1+', 'L11+'],
    ['2.5 mm2', '25 mm2'],
    ['6.5 in', '65 in'],
    ['7.5 a', '75 A'],
    ['75w', '75 A'],
  ])('and %s is not found in %s', (question, text) => {
    // The search library takes what begins a word for the word.
    const known = indexWords(text);
    expect(asked(question).every((word) => known.some((one) => one.startsWith(word)))).toBe(false);
  });

  it('every text is found by its own words: nothing that is asked in them is missing', () => {
    const piece = fc.oneof(
      fc.constantFrom(
        '1/0 AWG',
        '3/4 in',
        '6 1/2',
        'amp-front.B+',
        'L1+',
        '4 x 75 W',
        'P. T.',
        '2.5 mm2',
        '#8',
        '½',
      ),
      fc.constantFrom(
        'side-well',
        'amps',
        'fuses',
        'coupé',
        'the',
        '150 A',
        '12 V to 12 V',
        'ten out',
        'CH1..2',
      ),
      fc.string({ maxLength: 8 }),
      fc.nat(300).map(String),
    );
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 8 }), (pieces) => {
        const text = pieces.join(' ');
        const known = new Set(indexWords(text));
        for (const { word } of askedWords(text)) expect(known).toContain(word);
      }),
    );
  });

  it('a word that was put into its plain form stays as it is, and holds nothing that a search library takes apart', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 30 }), (text) => {
        for (const word of indexWords(text)) {
          expect(normalWord(word)).toBe(word);
          expect(word).toMatch(/^[a-z0-9]+$/);
        }
      }),
    );
  });
});

describe('a question', () => {
  it('is asked without its idle words, unless it has no others', () => {
    expect(asked('the board with the van')).toEqual(['van']);
    expect(asked('the board')).toEqual(['the', 'board']);
  });

  it('tells what else may be meant where the trade says two things alike', () => {
    expect(askedWords('3 amps')).toEqual([
      { typed: '3 amps', word: '3a', isPlain: false, touchesNext: false, or: ['3', 'amplifier'] },
    ]);
    expect(askedWords('3 A')[0]?.or).toBeUndefined();
  });
});
