import { describe, expect, test } from 'vitest';
import { judge } from '../../lib/rules/index.ts';
import { planKept } from '../plan/plan-kept.ts';
import { changed, instead, linksOf, shopWith } from './links-of.ts';
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

describe('the subsonic filter of a vented box', () => {
  /** The five-channel amplifier with a subsonic switch of one corner on its bass channel, and a box tuned to 34 Hz. */
  const box = `parts:
  box-34:
    kind: enclosure
    title: "Vented box, tuned to 34 Hz"
    size: { width: 16 in, depth: 14 in, height: 12 in }
    mass: 15 kg
    terminals: {}
    volume: 32 L
    loading: ported
    opening: 9 1/8 in
    free-depth: 10 in
    tuning: 34 Hz
`;
  const switched = (filter: string) =>
    shop.map((file) => {
      if (file.path.endsWith('parts/enclosures.yaml'))
        return { ...file, text: file.text.replace('parts:\n', box) };
      if (!file.path.endsWith('parts/amplifiers.yaml')) return file;
      const at = file.text.indexOf('    controls:\n', file.text.indexOf('  amp-five:\n'));
      const line = `      SUBSONIC: { what: subsonic, panel: face, channels: ["5"], form: switch, positions: [OFF, ON], filter: { ${filter} }, safe: ON }\n`;
      const from = at + '    controls:\n'.length;
      return { ...file, text: `${file.text.slice(0, from)}${line}${file.text.slice(from)}` };
    });
  const fixed = (hz: number) =>
    switched(`type: butterworth, order: 4, passes: { ON: subsonic }, corner: ${hz} Hz`);
  const vented = changed('under-seat-five', ['enclosure-sealed-20', 'box-34']);
  const told = (text: string, files: readonly (typeof shop)[number][]) => {
    const { job, problems } = linksOf(text, files);
    expect(problems).toEqual([]);
    if (!job) throw new Error('The job is read.');
    const { plan, remarks } = planKept(job);
    const lacking = judge(job, plan, remarks).filter(({ rule }) => rule === 'ported-without-subsonic');
    const final = plan.controls.find(({ control }) => control === 'SUBSONIC')?.final.state;
    const own = job.devices.find(({ id }) => id === 'amp')?.given?.filters.CH5 ?? [];
    return {
      remedies: lacking.map(({ remedy }) => remedy),
      final,
      corners: own.map(({ pass, corner }) => [pass, corner]),
    };
  };

  // 0.7 to 0.8 of the tuning is asked for, half of it is the least that guards the cone (common practice, no source).
  test.each([
    [25, true],
    [17, true],
    [16, false],
  ])('of one corner, %s Hz, is proposed on at a tuning of 34 Hz: %s', (hz, isOn) => {
    const { corners, final, remedies } = told(vented, fixed(hz));
    expect(corners.some(([pass, corner]) => pass === 'subsonic' && corner === hz)).toBe(isOn);
    expect(final).toBe(isOn ? 'ON' : 'OFF');
    expect(remedies).toHaveLength(isOn ? 0 : 1);
  });

  test('that written filters leave out is told with the line to write, which mends it', () => {
    const low = '{ pass: low-pass, type: linkwitz-riley, order: 4, corner: 80 Hz }';
    const written = instead(
      vented,
      'amp: { part: amp-five, on: board }',
      `amp: { part: amp-five, on: board, filters: { CH5: [${low}] } }`,
    );
    const { remedies } = told(written, fixed(25));
    const [, line = ''] = /at amp filters: (\{ CH5: .* \})$/.exec(remedies[0] ?? '') ?? [];
    expect(line).toBe(`{ CH5: [${low}, { pass: subsonic, type: butterworth, order: 4, corner: 25 Hz }] }`);
    expect(told(instead(written, `{ CH5: [${low}] }`, line), fixed(25)).remedies).toEqual([]);
  });

  test('of a switch that is told by half is told once, with what its part lacks', () => {
    const files = switched('passes: { ON: subsonic }, corner: 25 Hz');
    expect(told(vented, files).remedies).toEqual([
      expect.stringMatching(
        /^a filter that is told in part counts for none: write type: .* and order: under filter: of SUBSONIC in amp-five, and it is proposed/,
      ),
    ]);
  });
});
