import { describe, expect, it } from 'vitest';
import { awgSize } from '../../../lib/model/quantity/wire-size.ts';
import { dropParts } from '../../../lib/plan/power/drop-parts.ts';
import { nextSizeMm2 } from '../../../lib/plan/power/sizing/next-size.ts';
import type { CableCandidate } from '../../../lib/power/conductor/conductor-choice.ts';
import { judge } from '../../../lib/rules/index.ts';
import { type Change, smallShop } from '../../read/small-shop.ts';
import { planKept } from '../plan-kept.ts';
import { byId, jobOf } from '../plan-small-shop.ts';
import { addParts, inParts, inShop, inVehicle } from '../shop-changes.ts';

function judged(...changes: readonly Change[]) {
  const job = jobOf(smallShop(...changes));
  const { plan, remarks } = planKept(job);
  return { plan, findings: judge(job, plan, remarks) };
}

const reel = (id: string, awg: string, insulation: string, role: 'power' | 'ground') =>
  addParts(
    `${id}: { kind: wire, title: ${id}, size: ${awg}, insulation: ${insulation}, colour: ${role === 'power' ? 'RD' : 'BK'}, for: [${role}] }`,
  );
const onShelf = (...ids: readonly string[]) =>
  inShop('  black-4: {', `${ids.map((id) => `  ${id}: { reels: [60 ft] }\n`).join('')}  black-4: {`);
const warm = ({ findings }: ReturnType<typeof judged>) =>
  findings.filter(({ rule, related }) => rule === 'fuse-over-warm-conductor' && related.includes('feed'));

describe('a conductor that is chosen', () => {
  // 80 A through the engine bay: 4 AWG at 105 C carries 136 A by the published engine-space figure (33 CFR 183.425,
  // Table 5: 160 A, times 0.85), and at 85 C, sqrt((105 - 85) / (105 - 30)) = 0.516 of 160 A, under loom 0.8 of that: 66 A.
  const strong = [
    inParts('power: 300 W }]', 'power: 550 W }]'),
    inParts('fuse: 60 A, amplifier', 'fuse: 80 A, amplifier'),
  ];
  it('keeps its fuse at the true ambient too, where a reel on the shelf does', () => {
    const hot = judged(...strong, reel('silicone-4', '4 AWG', '200 C', 'power'), onShelf('silicone-4'));
    expect(byId(hot.plan.power.conductors, 'feed').insulationC).toBe(200);
    expect(byId(hot.plan.power.conductors, 'feed').reason).toMatch(/at the true ambient/);
    expect(warm(hot)).toEqual([]);
  });

  it('is told where no reel on the shelf does', () => {
    const usual = judged(...strong);
    expect(byId(usual.plan.power.conductors, 'feed').insulationC).toBe(105);
    expect(warm(usual).map(({ level }) => level)).toEqual(['caution']);
  });

  it('is not bought for it: a reel that the shop has not got does not count', () => {
    const unstocked = judged(...strong, reel('silicone-4', '4 AWG', '200 C', 'power'));
    expect(byId(unstocked.plan.power.conductors, 'feed').insulationC).toBe(105);
    expect(unstocked.findings.filter(({ rule }) => rule === 'conductor-not-on-shelf')).toEqual([]);
  });
});

describe('a drop over the limit', () => {
  const reducer = addParts(
    'reducer-0: { kind: terminal, title: Reducer, form: reducer, takes: { from: 1/0 AWG, to: 1/0 AWG }, pin: 4 AWG }',
  );
  const thick = [
    reel('red-0', '1/0 AWG', '105 C', 'power'),
    reel('black-0', '1/0 AWG', '105 C', 'ground'),
    reducer,
  ];
  const way = (length: string) =>
    inVehicle('{ zone: sill, length: 3 m }]\n    reaches', `{ zone: sill, length: ${length} }]\n    reaches`);
  const feedOf = ({ plan }: ReturnType<typeof judged>) => byId(plan.power.conductors, 'feed').size.label;
  const over = ({ findings }: ReturnType<typeof judged>) =>
    findings.filter(({ rule }) => rule === 'drop-over-limit');

  it('is mended by a reducer of the shelf, which brings a thicker feed into its port', () => {
    const bare = judged(way('14 m'));
    expect(feedOf(bare)).toBe('4 AWG');
    expect(over(bare)).toHaveLength(1);
    const mended = judged(way('14 m'), ...thick, onShelf('red-0', 'black-0'));
    expect(feedOf(mended)).toBe('1/0 AWG');
    expect(over(mended)).toEqual([]);
  });

  it('takes no reducer where that does not mend it', () => {
    const long = judged(way('40 m'), ...thick, onShelf('red-0', 'black-0'));
    expect(over(long)).toHaveLength(1);
    expect(feedOf(long)).toBe('4 AWG');
  });

  it('is told in its parts, which add to all that is lost', () => {
    for (const length of ['14 m', '40 m']) {
      const { plan } = judged(way(length));
      const [drop] = plan.power.drops.filter(({ point, item }) => point === 'rated-power' && item === 'amp');
      const sum = (drop?.parts ?? []).reduce((all, { dropV }) => all + dropV, 0);
      expect(sum).toBeCloseTo((drop?.feedDropV ?? 0) + (drop?.groundDropV ?? 0), 9);
      // The battery's strap carries charging current the other way: that is not relied on.
      const lost = (drop?.parts ?? []).reduce((all, { dropV }) => all + Math.max(0, dropV), 0);
      expect((drop?.share ?? 0) * 13.8).toBeCloseTo(lost, 9);
      expect(new Set(drop?.parts?.map(({ kind }) => kind))).toEqual(
        new Set(['conductor', 'fuse', 'joint', 'body']),
      );
    }
  });
});

describe('the parts of a drop', () => {
  const element = (
    kind: 'conductor' | 'fuse' | 'joint',
    of: string,
    from: string,
    to: string,
    dropV: number,
  ) => ({
    id: `${of}:${kind}`,
    of,
    kind,
    model: 'resistance' as const,
    from,
    to,
    ohm: 0.001,
    currentA: dropV * 1000,
    dropV,
  });
  const point = {
    name: 'rated-power' as const,
    title: '',
    state: 'solved' as const,
    referenceNode: 'battery.NEG',
    nodes: [],
    elements: [
      element('joint', 'tail', 'battery.POS', 'a', 0.01),
      element('conductor', 'tail', 'a', 'b', 0.02),
      element('fuse', 'main', 'b', 'c', 0.1),
      // Written against the current.
      element('conductor', 'feed', 'd', 'c', -0.2),
      element('joint', 'feed', 'd', 'amp.B+', 0.01),
    ],
  };

  it('are summed by what they are lost in, whichever way an element is written, largest first', () => {
    expect(dropParts(point)('battery.POS', 'amp.B+').map(({ kind, of, dropV }) => [kind, of, dropV])).toEqual(
      [
        ['conductor', 'feed', 0.2],
        ['fuse', 'main', 0.1],
        ['conductor', 'tail', 0.02],
        ['joint', 'feed', 0.01],
        ['joint', 'tail', 0.01],
      ],
    );
  });

  it('are none where no way joins the two', () => {
    expect(dropParts(point)('battery.POS', 'elsewhere')).toEqual([]);
  });
});

describe('the next size of a conductor', () => {
  const cable = (awg: string, stockM: number): CableCandidate => ({
    part: awg,
    size: awgSize(awg),
    material: 'copper',
    insulationC: 105,
    stockM,
  });
  const areaMm2 = (awg: string) => awgSize(awg).areaMm2;

  it('is the next that lies on the shelf in one piece', () => {
    expect(nextSizeMm2([cable('8', 9), cable('6', 1), cable('4', 9)], cable('8', 9), 3)).toBe(areaMm2('4'));
  });

  it('is the next that can be bought where none does', () => {
    expect(nextSizeMm2([cable('8', 9), cable('6', 1), cable('4', 2)], cable('8', 9), 3)).toBe(areaMm2('6'));
    expect(nextSizeMm2([cable('8', 9)], cable('8', 9), 3)).toBeNull();
  });
});

describe('a fuse that is chosen', () => {
  it('keeps four fifths of its rating for what flows at the voltage that its device really gets', () => {
    // 490 W at 75 % and 13.8 V are 47.3 A, which a fuse of 60 A carries with its margin; at the voltage that is left at the
    // end of 9 m of 4 AWG they are 49 A and more, and the next fuse of the shelf is one of 80 A.
    const far = inVehicle(
      '{ zone: sill, length: 3 m }]\n    reaches',
      '{ zone: sill, length: 9 m }]\n    reaches',
    );
    const { plan, findings } = judged(
      far,
      inParts('power: 300 W }]', 'power: 490 W }]'),
      inParts('fuse: 60 A, amplifier', 'fuse: 80 A, amplifier'),
    );
    const fuse = byId(plan.power.fuses, 'main-fuse');
    expect(fuse.continuousA).toBeGreaterThan(48);
    expect(fuse.ratingA).toBe(80);
    expect(findings.filter(({ rule }) => rule === 'fuse-under-load')).toEqual([]);
  });
});
