import { describe, expect, test } from 'vitest';
import { changed, linksOf } from './links-of.ts';
import { shop } from './short-shop.ts';

/** Four speakers play front and rear, so that the bass has no pair of its own. */
const shared = changed(
  'open-boat',
  [
    '  bow: { part: coaxial-65, in: [port-bow, starboard-bow] }\n',
    '  amp-bass: { part: amp-mono-400, on: board }\n  bass: { part: subwoofer-12-dual-4, box: enclosure-ported-45, in: battery-box, driven-by: amp-bass }\n  bow: { part: coaxial-65, in: [port-bow, starboard-bow], driven-by: amp }\n',
  ],
  ['in: [port-stern, starboard-stern] }', 'in: [port-stern, starboard-stern], driven-by: amp }'],
);

const withoutYLeads = shop.map((file) => ({
  ...file,
  text: file.text.replaceAll(/^ {2}lead-phono-y-.*\n/gm, ''),
}));

describe('one output of the source for two inputs', () => {
  test('goes to both over a Y-lead of the catalogue, told as proposed', () => {
    const { job, problems, proposed } = linksOf(shared);
    expect(problems).toEqual([]);
    const at = (output: string) =>
      Object.entries(job?.file.links ?? {}).filter(([, { from }]) => from === `source-unit.${output}`);
    for (const output of ['OUT1', 'OUT2']) {
      const links = at(output);
      expect(links).toHaveLength(2);
      expect(new Set(links.map(([, { cable }]) => cable))).toEqual(new Set([`y-${output.toLowerCase()}`]));
      expect(links.map(([, { conductors }]) => conductors)).toEqual([['one'], ['two']]);
      for (const [id] of links) expect(proposed(id)).toBeDefined();
    }
    // The pair that one amplifier alone plays lies in an ordinary lead.
    expect(at('OUT3').map(([, { cable }]) => cable)).toEqual(['lead-in-stern']);
    const cable = job?.proposals.find(({ path }) => path.join('.') === 'cables.y-out1');
    expect(cable).toMatchObject({ rule: 'cables', value: { part: 'lead-phono-y-6ft' } });
    expect(cable?.reason).toMatch(/source-unit\.OUT1 holds one plug and feeds 2 inputs/);
  });

  test('is asked for where the catalogue has no Y-lead', () => {
    const { job, problems } = linksOf(shared, withoutYLeads);
    expect(job).toBeNull();
    expect(problems.join('\n')).toMatch(
      /bass would play front-left of source-unit.*add a Y-lead to the catalogue/,
    );
  });

  test.each([
    ['a Y-lead', shop],
    ['none', withoutYLeads],
  ])('is a lead to each where the output holds two plugs and the catalogue has %s', (_, files) => {
    const twin = files.map((file) => ({
      ...file,
      text: file.text.replaceAll(
        /(OUT\d: \{ role: signal-out, panel: top, at: [^,]*, joint: phono)/g,
        '$1, conductors: 2',
      ),
    }));
    const { job, problems } = linksOf(shared, twin);
    expect(problems).toEqual([]);
    const cables = Object.values(job?.file.links ?? {}).flatMap(({ from, cable }) =>
      from === 'source-unit.OUT1' ? [cable] : [],
    );
    expect(cables).toEqual(['lead-in-bow', 'lead-in-bass']);
  });

  test('stays as it is written: a lead of the job takes the output', () => {
    const own = changed('open-boat', [
      '\nboards:',
      '\nlinks:\n  mine: { from: source-unit.OUT1, to: amp.IN1, cable: y, conductors: [one] }\ncables:\n  y: { part: lead-phono-y-6ft }\n\nboards:',
    ]);
    const { job, problems } = linksOf(own);
    expect(problems).toEqual([]);
    expect(job?.file.links.mine).toMatchObject({ cable: 'y', conductors: ['one'] });
    expect(Object.keys(job?.file.cables ?? {}).filter((id) => id.startsWith('y-'))).toEqual([]);
  });

  test('is not what any job asks for that has a pair for each', () => {
    for (const id of ['open-boat', 'under-seat-five', 'one-bass-amplifier']) {
      const { job } = linksOf(changed(id));
      expect(Object.keys(job?.file.cables ?? {}).filter((name) => name.startsWith('y-'))).toEqual([]);
    }
  });
});
