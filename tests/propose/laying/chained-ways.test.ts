import { describe, expect, test } from 'vitest';
import type { SourceFile } from '../../../lib/model/content/source-file.ts';
import { judge } from '../../../lib/rules/index.ts';
import { planKept } from '../../plan/plan-kept.ts';
import { changed, instead, linksOf } from '../../short-jobs/links-of.ts';
import { shop } from '../../short-jobs/short-shop.ts';

const job = changed('under-seat-five');

/** The way to the left door in two: along the sill to the kick panel, and from there through the sleeve into the door. */
const sill = `  left-kick-sill:
    side: left
    ends: [left-kick]
    passes: [under-carpet 14 in, sill 30 in]
    reaches: { space: under-left-seat, edge: left, at: 5 in }
`;
const sleeve = `  left-kick-door:
    side: left
    ends: [left-kick, left-door]
    passes: [door 8 in, { zone: door, length: 12 in, own-grommet: true, through-hole: 13 mm }]
`;
const kick = '\nplaces:\n  left-kick: { title: "Left kick panel", zone: cabin, side: left, depth: 1 in }\n';

function hatchback(change: (text: string) => string): readonly SourceFile[] {
  return shop.map((one) =>
    one.path.endsWith('vehicles/hatchback.yaml') ? { ...one, text: change(one.text) } : one,
  );
}

const direct = (text: string): string => {
  const from = text.indexOf('  left-door:\n');
  return text.slice(from, text.indexOf('  right-door:\n', from));
};
const inTwo = hatchback((text) =>
  instead(instead(text, direct(text), `${sill}${sleeve}`), '\nplaces:\n', kick),
);

describe('ways of a vehicle that meet in a place', () => {
  const { job: read, problems } = linksOf(job, inTwo);

  test('lead on from one to the other: a proposed run goes by the shortest chain of them', () => {
    expect(problems).toEqual([]);
    expect(read?.file.runs['left-door-to-under-left-seat']).toMatchObject({
      route: ['left-kick-door', 'left-kick-sill'],
      links: ['to-front-left'],
    });
  });

  test('add their lengths, holes and zones, as one way of the same stretches has them', () => {
    const whole = linksOf(job).job;
    if (!read || !whole) throw new Error('Both are read.');
    const [chain, single] = [read, whole].map((one) => planKept(one).plan);
    const runOf = (plan: typeof chain) => plan?.runs.find(({ wires }) => wires.includes('to-front-left.+'));
    const [a, b] = [runOf(chain), runOf(single)];
    // By the file: 14 + 30 + 20 in, however it is parted.
    expect(a?.lengthM).toBeCloseTo(64 * 0.0254, 9);
    expect(a?.lengthM).toBeCloseTo(b?.lengthM ?? 0, 9);
    expect(a?.grommets.map(({ zone, holeM }) => [zone, holeM])).toEqual([['door', 0.013]]);
    const wire = (plan: typeof chain) => plan?.wires.find(({ id }) => id === 'to-front-left.+');
    expect(wire(chain)?.lengthM).toBeCloseTo(wire(single)?.lengthM ?? 0, 3);
    const zones = new Set(wire(chain)?.zones.map(({ zone }) => zone));
    expect(zones).toEqual(new Set(wire(single)?.zones.map(({ zone }) => zone)));
  });

  test('tell a fault of a stretch at the route that has it', () => {
    const narrow = inTwo.map((one) => ({
      ...one,
      text: one.text.replace('through-hole: 13 mm }]\n  right', 'through-hole: 4 mm }]\n  right'),
    }));
    const { job: tight } = linksOf(job, narrow);
    if (!tight) throw new Error('The job is read.');
    const { plan, remarks } = planKept(tight);
    const places = judge(tight, plan, remarks).flatMap(({ where }) => where.path);
    expect(places).toContain('/routes/left-kick-door/passes/1/through-hole');
  });

  test('are asked for with the line that mends it where none leads on', () => {
    const cut = hatchback((text) => instead(instead(text, direct(text), sleeve), '\nplaces:\n', kick));
    const { problems: told } = linksOf(job, cut);
    expect(told).toEqual([expect.stringMatching(/^no way of hatchback/)]);
    expect(told[0]).toMatch(/^no way of hatchback leads from .*left-seat.* to left-door, nor do several/);
    expect(told[0]).toContain('one that begins at left-kick does as well, with its own stretches alone');
    const [, line = ''] =
      /such as (left-door-to-under-left-seat: \{ .* \}), or as a row/.exec(told[0] ?? '') ?? [];
    const mended = hatchback((text) =>
      instead(
        instead(instead(text, direct(text), sleeve), '\nplaces:\n', kick),
        'routes:\n',
        `routes:\n  ${line}\n`,
      ),
    );
    expect(linksOf(job, mended).problems).toEqual([]);
  });

  test('make one run of links between the same two places, whichever way round each is written', () => {
    const away = hatchback((text) =>
      instead(
        instead(instead(text, direct(text), `${sill}${sleeve}`), '\nplaces:\n', kick),
        'routes:\n',
        'routes:\n  dash-left-kick: { side: left, ends: [source-unit, left-kick], passes: [cabin 30 in] }\n',
      ),
    );
    const links = (text: string) => `${job}\nlinks:\n${text}`;
    const runsOf = (text: string) =>
      Object.values(linksOf(links(text), away).job?.file.runs ?? {}).filter(({ links: own }) =>
        own.some((id) => ['there', 'back'].includes(id)),
      );
    const there = '  there: { from: source-unit.SP1, to: front-left.C1 }\n';
    const back = '  back: { from: front-left.C1, to: source-unit.SP2 }\n';
    const runs = runsOf(`${there}${back}`);
    expect(runs.map((run) => run.links)).toEqual([['there', 'back']]);
    expect(runsOf(`${back}${there}`).map(({ route }) => route)).toEqual(runs.map(({ route }) => route));
  });

  test('may be written for a run, one after another, in either order', () => {
    const written = (routes: string) =>
      linksOf(`${job}\nruns:\n  door: { route: ${routes}, links: [to-front-left] }\n`, inTwo);
    for (const routes of ['[left-kick-door, left-kick-sill]', '[left-kick-sill, left-kick-door]'])
      expect(written(routes).job?.runs.find(({ id }) => id === 'door')?.route.passes).toHaveLength(4);
    expect(written('[left-kick-door, left-rear]').problems).toEqual([
      expect.stringMatching(/^left-kick-door and left-rear do not meet one after another/),
    ]);
  });

  test('are named in one run where a link stands in two', () => {
    const two = `${job}\nruns:\n  door: { route: left-kick-door, links: [to-front-left] }\n  sill: { route: left-kick-sill, links: [to-front-left] }\n`;
    expect(linksOf(two, inTwo).problems).toContainEqual(
      expect.stringMatching(/goes by the run door already; .*route: \[left-kick-door, left-kick-sill\]$/),
    );
  });
});
