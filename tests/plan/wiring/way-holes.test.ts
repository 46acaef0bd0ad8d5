import { describe, expect, test } from 'vitest';
import { judge } from '../../../lib/rules/index.ts';
import { inJob } from '../../read/problem-case.ts';
import { type Change, smallShop } from '../../read/small-shop.ts';
import { planKept } from '../plan-kept.ts';
import { byId, jobOf, smallPlan } from '../plan-small-shop.ts';
import { addParts, inVehicle } from '../shop-changes.ts';
import { allBefore } from '../work/steps/step-order.ts';

const grommets = addParts(
  'grommet-12: { kind: grommet, title: G, bore: 12 mm, hole: 16 mm }',
  'grommet-15: { kind: grommet, title: G, bore: 15 mm, hole: 20 mm }',
  'grommet-40: { kind: grommet, title: G, bore: 40 mm, hole: 46 mm }',
);
const sill = (facts: string) =>
  inVehicle(
    '{ zone: sill, length: 3 m }]\n    reaches',
    `{ zone: sill, length: 3 m, ${facts} }]\n    reaches`,
  );
/** The turn-on lies on the way of the power, in a run of its own. */
const oneWay = inJob('control: { route: right-sill', 'control: { route: left-sill');
/** The same on a route of its own that reaches the board at the same edge, over these stretches after a metre of cabin. */
const twinWay = (passes: string): readonly Change[] => [
  inVehicle(
    '  right-sill: {',
    `  left-dash: { title: Dash, side: left, ends: [radio], reaches: { space: well, edge: left }, passes: [{ zone: cabin, length: 1 m }, ${passes}] }\n  right-sill: {`,
  ),
  inJob('control: { route: right-sill', 'control: { route: left-dash'),
];

describe('a hole on the way of wires', () => {
  test('that is to be drilled has its step before the run, with the look behind it first, and its grommet fetched', () => {
    const { plan } = smallPlan(grommets, sill('there: false, through-hole: 20 mm, behind: nothing'));
    const step = byId(plan.steps, 'holes-power');
    expect(step.text).toMatch(
      /^Drill on the way of power: at the sill .*20 mm.* for grommet-15, with .*20 mm/,
    );
    expect(step.text).toMatch(/First look and feel behind each/);
    expect(step.after).toContain('battery-off');
    expect(allBefore(plan.steps, 'run-power')).toContain('holes-power');
    expect(byId(plan.steps, 'run-power').text).not.toContain('blind plug');
    expect(plan.pick).toContainEqual(expect.objectContaining({ part: 'grommet-15', quantity: 1 }));
  });

  test('is drilled as wide as its grommet asks for, where no width is written', () => {
    const { plan } = smallPlan(grommets, sill('there: false'));
    expect(byId(plan.runs, 'power').grommets).toMatchObject([
      { holeM: null, part: 'grommet-15', madeForM: 0.02, drilledBefore: 'unknown' },
    ]);
    expect(byId(plan.steps, 'holes-power').text).toMatch(/at the sill .*20 mm.* for grommet-15/);
  });

  // The sill's is drilled with the turn-on, which comes first in the job; that into the engine bay is the power's own.
  test('each is drilled before the run is laid, its own and one that is drilled with another run', () => {
    const hole = 'there: false, behind: nothing';
    const shared = `{ zone: sill, length: 3 m, ${hole} }, { zone: cargo, length: 300 mm }`;
    const { plan } = smallPlan(
      grommets,
      inVehicle(
        '{ zone: engine-bay, length: 500 mm }, { zone: sill, length: 3 m }]',
        `{ zone: engine-bay, length: 500 mm, ${hole} }, ${shared}]`,
      ),
      ...twinWay(shared),
      inJob('  power: { route: left-sill, links: [feed], covering: loom-a }\n', ''),
      inJob('left-open:', '  power: { route: left-sill, links: [feed], covering: loom-a }\nleft-open:'),
    );
    const holes = [...allBefore(plan.steps, 'run-power')].filter((id) => id.startsWith('holes-'));
    expect(holes.toSorted()).toEqual(['holes-control', 'holes-power']);
  });

  // Common practice, no source: water comes in by a hole that rain and spray reach.
  test('has its grommet sealed where the run comes from under the bonnet, and not where it stays inside', () => {
    const inside = inVehicle('passes: [{ zone: engine-bay, length: 500 mm }, ', 'passes: [');
    const laid = (...changes: readonly Change[]) => byId(smallPlan(...changes).plan.steps, 'run-power');
    const sealed = laid(grommets, sill('edge: true'));
    expect(sealed.text).toMatch(/; sealer round each grommet that has weather on one side$/);
    expect(sealed.tools).toContain('sealer');
    for (const dry of [laid(grommets, sill('edge: true'), inside), laid(grommets)]) {
      expect(dry.text).not.toMatch(/sealer/);
      expect(dry.tools).not.toContain('sealer');
    }
  });

  test('that is there is not drilled', () => {
    const { plan } = smallPlan(grommets, sill('edge: true, through-hole: 20 mm'));
    expect(plan.steps.map(({ id }) => id)).not.toContain('holes-power');
  });

  test('takes all runs of its way through one grommet, which is fetched once', () => {
    const { plan } = smallPlan(grommets, sill('edge: true'), oneWay);
    const [power, control] = ['power', 'control'].map((id) => byId(plan.runs, id).grommets[0]);
    expect(power).toMatchObject({ beside: ['control'] });
    expect(control).toMatchObject({ part: power?.part, beside: ['power'] });
    const alone = byId(smallPlan(grommets, sill('edge: true')).plan.runs, 'power').grommets[0];
    expect([alone?.part, power?.part]).toEqual(['grommet-15', 'grommet-40']);
    expect(plan.pick).toContainEqual(expect.objectContaining({ part: 'grommet-40', quantity: 1 }));
    expect(byId(plan.steps, 'run-control').text).toContain('at the sill through the grommet of power');
    expect(byId(plan.steps, 'run-control').acts.filter((act) => act.startsWith('grommet:'))).toEqual([]);
  });

  // Two bundles side by side need a hole as wide as both: geometry.
  test('is told as too narrow for what goes through it together, once, where each alone would go through', () => {
    const told = (...changes: readonly Change[]) => {
      const job = jobOf(smallShop(grommets, sill('through-hole: 15.5 mm'), ...changes));
      const { plan, remarks } = planKept(job);
      return judge(job, plan, remarks).filter(({ rule }) => rule === 'bundle-over-hole');
    };
    expect(told()).toEqual([]);
    const [only, ...more] = told(oneWay);
    expect(more).toEqual([]);
    expect(only?.message).toMatch(/^the bundles of power and control are about .* thick together/);
    expect(only?.value).toBeGreaterThan(0.0155);
  });

  test('is one with that of another way which is the same from there to the common edge, and with no other', () => {
    const beside = (passes: string) =>
      byId(
        smallPlan(grommets, sill('edge: true }, { zone: cargo, length: 300 mm'), ...twinWay(passes)).plan
          .runs,
        'power',
      ).grommets[0]?.beside;
    expect(beside('{ zone: sill, length: 3 m, edge: true }, { zone: cargo, length: 300 mm }')).toEqual([
      'control',
    ]);
    expect(
      beside('{ zone: sill, length: 2 m, edge: true }, { zone: cargo, length: 300 mm }'),
    ).toBeUndefined();
  });
});
