import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { splice } from '../../../lib/read/yaml/splice.ts';
import { readYaml } from '../../../lib/read/yaml/yaml.ts';

const source = 'title: Two amps # as ordered\nfuse: 60 A   # the maker says 60\nsize: 4 AWG\n';

describe('splice', () => {
  test('changes the value at a place of a file and leaves its comments', () => {
    const document = readYaml('job.yaml', source).value;
    const fuse = document?.span('/fuse');
    const size = document?.span('/size');
    if (!fuse || !size) throw new Error('The source of the test has both.');
    const done = splice(source, [
      { ...size, text: '1/0 AWG' },
      { ...fuse, text: '80 A' },
    ]);
    expect(done).toBe('title: Two amps # as ordered\nfuse: 80 A   # the maker says 60\nsize: 1/0 AWG\n');
  });

  test('inserts where start and end are equal, before a replacement that begins there', () => {
    expect(
      splice('abc', [
        { start: 1, end: 2, text: 'X' },
        { start: 1, end: 1, text: '-' },
      ]),
    ).toBe('a-Xc');
    expect(splice('abc', [{ start: 3, end: 3, text: '!' }])).toBe('abc!');
    expect(splice('abc', [])).toBe('abc');
  });

  test('edits that touch do not overlap', () => {
    expect(
      splice('abcd', [
        { start: 0, end: 2, text: 'x' },
        { start: 2, end: 4, text: 'y' },
      ]),
    ).toBe('xy');
  });

  test.each([
    [
      [
        { start: 0, end: 2, text: 'x' },
        { start: 1, end: 3, text: 'y' },
      ],
      'an edit from 1 to 3 overlaps one from 0 to 2',
    ],
    [
      [
        { start: 1, end: 1, text: 'x' },
        { start: 1, end: 1, text: 'y' },
      ],
      'an edit from 1 to 1 overlaps one from 1 to 1',
    ],
    [
      [
        { start: 0, end: 3, text: 'x' },
        { start: 1, end: 1, text: 'y' },
      ],
      'an edit from 1 to 1 overlaps one from 0 to 3',
    ],
    [[{ start: 2, end: 9, text: 'x' }], 'an edit from 2 to 9 is not within the text, which ends at 4'],
    [[{ start: -1, end: 1, text: 'x' }], 'an edit from -1 to 1 is not within the text, which ends at 4'],
    [[{ start: 2, end: 1, text: 'x' }], 'an edit from 2 to 1 is not within the text, which ends at 4'],
    [
      [{ start: Number.NaN, end: 1, text: 'x' }],
      'an edit from NaN to 1 is not within the text, which ends at 4',
    ],
  ])('%j is a fault', (edits, fault) => {
    expect(splice('abcd', edits)).toEqual({ fault });
  });

  test('edits in any order do the same as one after the other from the end', () => {
    const cuts = fc.uniqueArray(fc.nat(30), { minLength: 2, maxLength: 8 });
    fc.assert(
      fc.property(fc.string({ minLength: 30, maxLength: 40 }), cuts, fc.string(), (text, offsets, put) => {
        const sorted = [...offsets].sort((a, b) => a - b);
        const edits = sorted.flatMap((start, index) => {
          const end = sorted[index + 1];
          return index % 2 === 0 && end !== undefined ? [{ start, end, text: put }] : [];
        });
        const byHand = edits.reduceRight((so, one) => so.slice(0, one.start) + put + so.slice(one.end), text);
        expect(splice(text, edits)).toBe(byHand);
        expect(splice(text, [...edits].reverse())).toBe(byHand);
      }),
    );
  });
});
