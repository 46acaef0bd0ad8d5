import { describe, expect, test } from 'vitest';
import type { SourceFile } from '../../../lib/model/content/source-file.ts';
import { judge } from '../../../lib/rules/index.ts';
import { planKept } from '../../plan/plan-kept.ts';
import { changed, instead, linksOf } from '../../short-jobs/links-of.ts';
import { shop } from '../../short-jobs/short-shop.ts';

const capacitor = `parts:
  capacitor-lead:
    kind: crossover
    title: "Capacitor in the lead of a tweeter, 4 kHz"
    size: { width: 2 in, depth: 1 in, height: 1 in }
    mass: 0.05 kg
    terminals:
      IN: { role: coil, joint: supplied-lead, lead: 18 AWG }
      T: { role: speaker-out, joint: supplied-lead, lead: 18 AWG }
    ways: { T: from 4 kHz }
    load: 4 ohm
    power: 90 W
`;

/** Each door by its kick panel, from where a way goes up to the pillar. */
const waysOf = (side: string, carpet: string) => `  ${side}-kick-sill:
    side: ${side}
    ends: [${side}-kick]
    passes: [under-carpet ${carpet}, sill 30 in]
    reaches: { space: under-left-seat, edge: left, at: 5 in }
  ${side}-kick-door:
    side: ${side}
    ends: [${side}-kick, ${side}-door]
    passes: [cabin 8 in, { zone: cabin, length: 12 in, edge: true, through-hole: 13 mm }]
  ${side}-kick-pillar: { side: ${side}, ends: [${side}-kick, ${side}-pillar], passes: [cabin 24 in] }
`;
const places = (side: string) =>
  `  ${side}-kick: { zone: cabin, side: ${side} }\n  ${side}-pillar: { zone: cabin, side: ${side}, depth: 1 in, distance: 36 in, row: front }\n`;

function vehicle(text: string): string {
  const [from, to] = [text.indexOf('  left-door:\n'), text.indexOf('  left-rear:\n')];
  const ways = `${waysOf('left', '14 in')}${waysOf('right', '48 in')}`;
  const without = `${text.slice(0, from)}${ways}${text.slice(to)}`;
  return instead(without, '\nplaces:\n', `\nplaces:\n${places('left')}${places('right')}`);
}

const files: readonly SourceFile[] = shop.map((one) => {
  if (one.path.endsWith('vehicles/hatchback.yaml')) return { ...one, text: vehicle(one.text) };
  if (one.path.endsWith('parts/speakers.yaml'))
    return { ...one, text: instead(one.text, 'parts:\n', capacitor) };
  return one;
});

const setIn = (filter: string) =>
  changed('under-seat-five', [
    '  front: { part: coaxial-65, in: [left-door, right-door] }\n',
    `  front: { part: midbass-65, in: [left-door, right-door], driven-by: amp }
  filter: { part: capacitor-lead, in: [${filter}], driven-by: front }
  tweeter: { part: tweeter-25, in: [left-pillar, right-pillar], driven-by: filter }
`,
  ]);

describe('the lead to a filter in the lead of a tweeter', () => {
  const { job, problems, proposed } = linksOf(setIn('left-pillar, right-pillar'), files);

  test('parts from that of the woofer in the last place that both ways go through', () => {
    expect(problems).toEqual([]);
    expect(job?.file.links['to-filter-left']).toMatchObject({
      from: 'front-left.C1',
      to: 'filter-left.IN',
      joint: { with: 'to-front-left', at: 'left-kick' },
    });
    expect(proposed('to-filter-left')?.reason).toMatch(
      /joined to to-front-left at left-kick, the last place/,
    );
    expect(job?.file.runs['left-kick-pillar']).toMatchObject({ links: ['to-filter-left'] });
  });

  test('is cut from there to the filter, and one cable goes up to there: none goes back', () => {
    if (!job) throw new Error('The job is read.');
    const { plan, remarks } = planKept(job);
    const wire = (id: string) => plan.wires.find((one) => one.id === id);
    // By the file: 24 in of way and the 12 in of the loop at what is no speaker (common practice).
    expect(wire('to-filter-left.+')?.lengthM).toBeCloseTo(36 * 0.0254, 4);
    const joint = plan.joints?.find(({ id }) => id === 'to-filter-left.+');
    // From the woofer: the 6 in of its loop, the 20 in through the sleeve and the 2 in of slack at the hinge of its door.
    expect(joint).toMatchObject({ trunk: 'to-front-left.+', at: 'left-kick' });
    expect(joint?.distanceM).toBeCloseTo(28 * 0.0254, 4);
    const sleeve = plan.runs.find(({ wires }) => wires.includes('to-front-left.+'));
    expect(sleeve?.wires).toEqual(['to-front-left.+', 'to-front-left.-']);
    const end = wire('to-filter-left.+')?.ends.find(({ form }) => form === 'joint');
    expect(end).toMatchObject({ prep: expect.stringMatching(/ at left-kick$/), loopM: 0 });
    const step = plan.steps.find(({ acts }) => acts.includes('join:to-filter-left.+'));
    expect(step?.text).toMatch(/ at left-kick, 28 in along it from front-left\.C1\+/);
    expect(plan.audio.channels.find(({ id }) => id === 'amp.1')).toMatchObject({
      loadOhm: 4,
      speakers: ['front-left', 'tweeter-left'],
    });
    const told = judge(job, plan, remarks).filter(({ rule }) => rule === 'route-ends-elsewhere');
    expect(told.map(({ message }) => message)).toEqual([]);
  });

  test('parts there as well where the filter lies in that place', () => {
    const inKick = linksOf(setIn('left-kick, right-kick'), files);
    expect(inKick.problems).toEqual([]);
    expect(inKick.job?.file.links['to-filter-left']?.joint).toMatchObject({ at: 'left-kick' });
    expect(inKick.job?.file.runs['left-kick-pillar']).toMatchObject({ links: ['to-tweeter-left'] });
  });

  test('stays at the woofer where the filter lies beside it', () => {
    const inDoor = linksOf(setIn('left-door, right-door'), files);
    expect(inDoor.problems).toEqual([]);
    expect(inDoor.job?.file.links['to-filter-left']?.joint?.at).toBeUndefined();
  });
});

describe('a joint that is written on the way of another link', () => {
  const written = (joint: string, more = '') =>
    linksOf(
      `${setIn('left-pillar, right-pillar')}\nlinks:\n  to-filter-left: { from: amp.CH1, to: filter-left.IN, joint: { with: to-front-left, ${joint} }${more} }\n`,
      files,
    );

  test('stands where it is written, from the other end too: nothing of it lies on the board', () => {
    const { job, problems } = written('at: left-kick');
    expect(problems).toEqual([]);
    if (!job) throw new Error('The job is read.');
    const { plan } = planKept(job);
    const wire = plan.wires.find(({ id }) => id === 'to-filter-left.+');
    expect(wire?.lengthM).toBeCloseTo(36 * 0.0254, 4);
    expect(plan.boards.flatMap(({ routes }) => routes).some((one) => one.wire === 'to-filter-left.+')).toBe(
      false,
    );
    const trunk = plan.wires.find(({ id }) => id === 'to-front-left.+');
    const joint = plan.joints?.find(({ id }) => id === 'to-filter-left.+');
    // What is left of the wire behind the joint is the sleeve with the slack at its hinge, and the loop at the woofer.
    expect(joint?.distanceM).toBeCloseTo((trunk?.lengthM ?? 0) - 28 * 0.0254, 4);
  });

  test('may be told by how far along it lies, with the length from there', () => {
    const { job, problems } = written('after: 30 in', ', length: 30 in');
    expect(problems).toEqual([]);
    expect(job?.links.find(({ id }) => id === 'to-filter-left.+')?.given?.joint?.after).toBeCloseTo(0.762, 9);
    expect(written('after: 9 m', ', length: 30 in').problems[0]).toMatch(/further along than its run/);
  });

  test('is refused in a place where no routes of that run meet, with those that do', () => {
    expect(written('at: right-kick').problems).toContainEqual(
      expect.stringMatching(
        /^right-kick is no place in which routes of .* meet.*; write at: left-kick, or after:/,
      ),
    );
  });
});

describe('a link that is written to a filter in a lead', () => {
  test('tells the channel of the speaker beside it: none is dealt besides', () => {
    const { links, problems, proposed } = linksOf(
      `${setIn('left-pillar, right-pillar')}
links:
  to-filter-left: { from: amp.CH1, to: filter-left.IN, joint: { with: to-front-left, at: left-kick } }
`,
      files,
    );
    expect(problems).toEqual([]);
    expect(links['to-front-left']).toBe('amp.CH1 front-left.C1');
    expect(links['to-front-right']).toBe('amp.CH2 front-right.C1');
    expect(proposed('to-front-left')?.reason).toMatch(/to-filter-left, which is written/);
  });

  test('is named where its channel is missing for others', () => {
    const { problems } = linksOf(
      `${changed('under-seat-five')}\nlinks:\n  old: { from: amp.CH1, to: spare.C1 }\n`.replace(
        'devices:\n',
        'devices:\n  spare: { part: coaxial-65, in: left-pillar }\n',
      ),
      files,
    );
    expect(problems[0]).toMatch(/^amp has 3 channels left \(taken: 1 by old\), and front and rear are 4/);
  });

  test('as a branch that its port does not hold is mended by a joint where it was to part', () => {
    const branched = (line: string) =>
      linksOf(
        `${setIn('left-pillar, right-pillar')}\nlinks:\n  to-filter-left: { from: amp.CH1, to: filter-left.IN, ${line} }\n`,
        files,
      );
    const { job, problems } = branched('branch: { from: to-front-left, after: 44 in, leg: 36 in }');
    expect(problems).toEqual([]);
    if (!job) throw new Error('The job is read.');
    const { plan, remarks } = planKept(job);
    const ofPort = judge(job, plan, remarks).filter(({ rule }) => rule === 'port-refuses-conductor');
    const remedy = ofPort[0]?.remedy ?? '';
    expect(remedy).toMatch(/at the link to-filter-left write joint: \{ with: to-front-left, after: 44 in \}/);
    const [, joint = '', own = ''] = /write (joint: \{.*?\}) and (length: \d+ in)/.exec(remedy) ?? [];
    const mended = branched(`${joint}, ${own}`);
    expect(mended.problems).toEqual([]);
    if (!mended.job) throw new Error('The mended job is read.');
    const again = planKept(mended.job);
    const left = judge(mended.job, again.plan, again.remarks).filter(({ related }) =>
      related.some((id) => id.startsWith('to-filter-left')),
    );
    expect(left.filter(({ level }) => level === 'stop').map(({ message }) => message)).toEqual([]);
  });
});
