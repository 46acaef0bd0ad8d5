import { describe, expect, test } from 'vitest';
import { judge } from '../../lib/rules/index.ts';
import { planKept } from '../plan/plan-kept.ts';
import { changed, linksOf, shopWith } from './links-of.ts';
import { shop, shortText } from './short-shop.ts';

/** The shop in which the amplifier of the open boat has no crossover: its leaflet tells of gains alone. */
const plain = shop.map((one) =>
  one.path.endsWith('parts/amplifiers.yaml')
    ? { ...one, text: withoutCrossovers(one.text, 'amp-four') }
    : one,
);

function withoutCrossovers(text: string, part: string): string {
  const from = text.indexOf(`  ${part}:\n`);
  const to = text.indexOf('\n    supply:', from);
  const own = text.slice(from, to).replace(/\n {6}(XOVER|FREQ)-[^}]*?\{[\s\S]*?(?=\n {6}[A-Z]|$)/g, '');
  return `${text.slice(0, from)}${own}${text.slice(to)}`;
}

const filtersOf = (text: string, files = shop) => {
  const { job, problems } = linksOf(text, files);
  return { problems, filters: job?.devices.find(({ id }) => id === 'amp')?.given?.filters, job };
};

describe('filters are proposed where a part on the path makes them', () => {
  test('by the crossover of the amplifier, where it has one', () => {
    const { problems, filters } = filtersOf(shortText('open-boat'));
    expect(problems).toEqual([]);
    expect(filters?.CH1).toEqual([{ pass: 'high-pass', type: 'butterworth', order: 2, corner: 60 }]);
  });

  test('nowhere, where none does: what that leaves unguarded stops the job', () => {
    const { problems, filters, job } = filtersOf(shortText('open-boat'), plain);
    expect(problems).toEqual([]);
    expect(filters).toEqual({});
    if (!job) throw new Error('The job is read.');
    const { plan, remarks } = planKept(job);
    const stops = judge(job, plan, remarks).filter(({ rule }) => rule === 'small-speaker-without-high-pass');
    expect(stops.map(({ level }) => level)).toEqual(['stop']);
    expect(stops[0]?.remedy).toMatch(/^no part on its path makes a high-pass: put in a processor/);
  });

  test('a control whose leaflet is told in part counts for none, and it is told what to write', () => {
    const halfTold = shop.map((one) =>
      one.path.endsWith('parts/amplifiers.yaml')
        ? { ...one, text: one.text.replace(/type: butterworth, /g, '') }
        : one,
    );
    expect(halfTold).not.toEqual(shop);
    const { filters, job } = filtersOf(shortText('open-boat'), halfTold);
    expect(filters).toEqual({});
    if (!job) throw new Error('The job is read.');
    const { plan, remarks } = planKept(job);
    const stops = judge(job, plan, remarks).filter(({ rule }) => rule === 'small-speaker-without-high-pass');
    expect(stops[0]?.remedy).toMatch(
      /a filter that is told in part counts for none: write type: butterworth or .* under filter: of XOVER-\S+ in amp-four/,
    );
  });

  test('a band that the job names and nobody makes is asked for', () => {
    const { problems } = filtersOf(
      changed('open-boat', ['bow: { part: coaxial-65', 'bow: { plays: from 90 Hz, part: coaxial-65']),
      plain,
    );
    expect(problems).toEqual([
      expect.stringMatching(
        /^bow plays from 90 Hz, and amp makes no high-pass there; add a processor that makes a high-pass, or a lead with one in it; or take plays: out; where the leaflet of amp-four has one/,
      ),
    ]);
  });
});

test('what the menu of a processor offers is proposed: its orders, its shapes', () => {
  const filters = (own: string) => {
    const files = shopWith('parts/processors.yaml', 'filter-orders: [1, 2, 3, 4, 6, 8]', own);
    const text = shortText('estate-side-well');
    const { job } = linksOf(text, files);
    return Object.values(job?.devices.find(({ spec }) => spec?.kind === 'processor')?.given?.filters ?? {})
      .flat()
      .map(({ type, order }) => `${type} ${order}`);
  };
  expect(new Set(filters('filter-orders: [1, 2, 3, 4, 6, 8]'))).toContain('linkwitz-riley 4');
  expect(new Set(filters('filter-orders: [1, 2, 3]\n    filter-types: [butterworth]'))).toEqual(
    new Set(['butterworth 2']),
  );
});
