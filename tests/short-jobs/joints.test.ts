import { describe, expect, test } from 'vitest';
import { judge } from '../../lib/rules/judge.ts';
import { planKept } from '../plan/plan-kept.ts';
import { linksOf } from './links-of.ts';
import { shortText } from './short-shop.ts';
import { speakerLevelShop } from './speaker-level-shop.ts';

/** Five inputs for speaker level, and a source of four pairs: nothing is told of inputs that a channel takes inside. */
const { job, problems, links } = linksOf(shortText('under-seat-five'), speakerLevelShop());

describe('an input more than the source has speaker outputs', () => {
  test('is joined before the output to the wire of another, told as proposed', () => {
    expect(problems).toEqual([]);
    expect(links['in-sub']).toBe('source-unit.SP1 amp.IN5');
    expect(job?.file.links['in-sub']?.joint).toEqual({ with: 'in-front-left' });
    const proposed = job?.proposals.find(({ path }) => path.join('.') === 'links.in-sub');
    expect(proposed?.reason).toMatch(
      /source-unit\.SP1 holds one conductor, so it is joined to in-front-left/,
    );
  });

  test('leaves the usual colours to the four pairs, and lies in a cable of its own', () => {
    const cableOf = (id: string) => job?.file.links[id]?.cable;
    expect(
      new Set(['front-left', 'front-right', 'rear-left', 'rear-right'].map((one) => cableOf(`in-${one}`))),
    ).toHaveProperty('size', 1);
    expect(cableOf('in-sub')).toBe('cable-in-sub');
  });

  test('has a splice of the shelf, a label, its line on the steps, and no finding of a port that is full', () => {
    if (!job) throw new Error(problems.join('\n'));
    const { plan, remarks } = planKept(job);
    const joints = plan.joints ?? [];
    expect(joints.map(({ id, trunk }) => [id, trunk])).toEqual([
      ['in-sub.+', 'in-front-left.+'],
      ['in-sub.-', 'in-front-left.-'],
    ]);
    for (const { id, part, terminal, distanceM, trunkLabel } of joints) {
      expect(part).toBe('solder-sleeve-16');
      expect(distanceM).toBeCloseTo(0.1016, 9);
      const ends = plan.wires.find((one) => one.id === id)?.ends ?? [];
      const end = ends.find((one) => one.terminal === terminal);
      expect(end).toMatchObject({
        form: 'joint',
        prep: `joined to ${trunkLabel} before the port`,
        part: 'solder-sleeve-16',
      });
    }
    // At the plug the pair that is joined and the turn-on stay in their leads; three pairs are cut and joined end to end.
    const picked = (id: string) => plan.pick.find(({ part }) => part === id)?.quantity;
    expect(picked('solder-sleeve-16')).toBe(2 + 2 + 1);
    const cut = plan.wires.flatMap(({ ends }) => ends.filter(({ prep }) => /plug, which is cut/.test(prep)));
    expect(cut.map(({ part }) => part)).toEqual(Array.from({ length: 6 }, () => 'splice-18'));
    const step = plan.steps.find(({ acts }) => acts.includes('join:in-sub.+'));
    expect(step?.text).toMatch(/first join .* to .* 4 in before source-unit\.SP1\+ by solder-sleeve-16/);
    const told = judge(job, plan, remarks);
    const ports = ['port-refuses-conductor', 'port-shared', 'joint-off-size', 'terminal-not-in-catalogue'];
    expect(told.filter(({ rule }) => ports.includes(rule)).map(({ message }) => message)).toEqual([]);
  });
});
