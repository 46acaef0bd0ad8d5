import { describe, expect, test } from 'vitest';
import { judge } from '../../lib/rules/index.ts';
import { planKept } from '../plan/plan-kept.ts';
import { changed, linksOf } from './links-of.ts';

const sub = 'part: subwoofer-10-single-4,';
const declared = (words: string) => changed('under-seat-five', [sub, `${sub} ${words},`]);

describe('a speaker that is meant to be wired with reversed polarity', () => {
  const swapped = { 'to-sub-plus': 'amp.CH5+ sub.C1-', 'to-sub-minus': 'amp.CH5- sub.C1+' };

  test.each([
    ['as it is declared', 'reversed: in step with the front', swapped],
    ['as it is mounted back to front', 'mounted: reversed', swapped],
    ['not where both cancel out', 'mounted: reversed, reversed: in step', { 'to-sub': 'amp.CH5 sub.C1' }],
  ])('has its proposed links swapped: %s', (_, words, expected) => {
    const { links, problems } = linksOf(declared(words));
    expect(problems).toEqual([]);
    expect(Object.fromEntries(Object.entries(links).filter(([id]) => id.startsWith('to-sub')))).toEqual(
      expected,
    );
  });

  test('and whose links are written as usual is told which lines swap them, and they do', () => {
    const written = (links: string) => `${declared('reversed: in step with the front')}\nlinks:\n${links}`;
    const remedies = (text: string) => {
      const { job, problems } = linksOf(text);
      expect(problems).toEqual([]);
      if (!job) throw new Error('The job is read.');
      const { plan, remarks } = planKept(job);
      return judge(job, plan, remarks)
        .filter(({ rule }) => rule === 'polarity-not-as-declared')
        .map(({ remedy }) => remedy);
    };
    const [told = ''] = remedies(written('  bass: { from: amp.CH5, to: sub.C1 }\n'));
    const lines = /: (bass-plus: \{.*?\}) and (bass-minus: \{.*?\}) under links: in place of bass;/.exec(
      told,
    );
    expect(lines?.slice(1)).toEqual([
      'bass-plus: { from: amp.CH5+, to: sub.C1- }',
      'bass-minus: { from: amp.CH5-, to: sub.C1+ }',
    ]);
    expect(
      remedies(
        written(
          (lines ?? [])
            .slice(1)
            .map((line) => `  ${line}\n`)
            .join(''),
        ),
      ),
    ).toEqual([]);
  });
});
