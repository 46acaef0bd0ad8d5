import { describe, expect, test } from 'vitest';
import { drawJob } from '../../lib/draw/draw-job.ts';
import { placement } from '../../lib/publish/sheets/placement.ts';
import { shippedMetrics } from '../draw/shipped-metrics.ts';
import { inJob, partsFile, withBoard } from '../read/problem-case.ts';
import type { Change } from '../read/small-shop.ts';
import { byId, smallPlan } from './plan-small-shop.ts';

const inParts = (found: string, instead: string): Change => [partsFile, found, instead];
const onePart = 'size: { width: 100 mm, depth: 80 mm, height: 40 mm }';
const barPart = `  bar-a:
    kind: distribution
    title: Ground bar
    size: { width: 100 mm, depth: 80 mm, height: 20 mm }
    mass: 200 g
    current: 150 A
    terminals:
      G1: { role: ground-bar, panel: top, at: 20 mm, joint: set-screw, takes: { from: 8 AWG, to: 4 AWG } }
      G2: { role: ground-bar, panel: top, at: 80 mm, joint: set-screw, takes: { from: 8 AWG, to: 4 AWG } }
`;
/** A board of 500 x 300 mm for an amplifier of 430 x 230 mm and a ground bar of 100 x 80 mm. */
const crowded = (...more: readonly Change[]): ReturnType<typeof smallPlan> =>
  smallPlan(
    withBoard(),
    inJob('title: Bass amplifier\n    in: boot', 'title: Bass amplifier\n    on: main'),
    inJob('  sub: { part', '  bar: { part: bar-a, on: main }\n  sub: { part'),
    inJob(
      '  ground: { from: amp.GND, to: body.cargo, length: 12 in }',
      '  ground: { from: bar.G1, to: body.cargo, length: 4 ft }\n  amp-ground: { from: amp.GND, to: bar.G2 }',
    ),
    inParts(
      `title: Amplifier\n    ${onePart}`,
      'title: Amplifier\n    size: { width: 430 mm, depth: 230 mm, height: 50 mm }',
    ),
    inParts('  radio-a:\n', `${barPart}  radio-a:\n`),
    ...more,
  );

describe('a board too small for its parts side by side', () => {
  const { plan, remarks } = crowded();
  const board = byId(plan.boards, 'main');
  const placed = (id: string) =>
    byId(
      board.placements.map((one) => ({ ...one, id: one.item })),
      id,
    );

  test('has the amplifier over the bar, by two layers of 18 mm, on rails of the sheet', () => {
    // 20 mm and half an inch of clearance are 32.7 mm: one layer is too little.
    expect(placed('amp')).toMatchObject({ chosen: 'computed', raisedM: expect.closeTo(0.036, 9) });
    expect(placed('bar')).toMatchObject({ chosen: 'computed', raisedM: 0 });
    expect(board.pieces).toEqual([
      expect.objectContaining({ carries: 'amp', form: 'rail', layers: 2, count: 4, packM: 0 }),
    ]);
    expect(plan.traces['boards.main.placements.amp.raisedM']).toMatchObject({ rule: 'raised-over-part' });
  });

  test('leaves the end that comes from the vehicle past the edge of the amplifier', () => {
    const [amp, bar] = [placed('amp'), placed('bar')];
    expect(bar.xM).toBeGreaterThan(amp.xM);
    const edges = { 0: bar.yM + bar.depthM >= amp.yM + amp.depthM - 1e-9, 180: bar.yM <= amp.yM + 1e-9 };
    expect(edges).toMatchObject({ [bar.turnDeg]: true });
  });

  test('finds nothing wrong with where they stand', () => {
    const rules = remarks.map(({ rule }) => rule);
    for (const rule of [
      'item-does-not-fit',
      'items-overlap',
      'control-covered',
      'face-covered',
      'wire-without-way',
    ])
      expect(rules).not.toContain(rule);
  });

  test('is built from below: the bar, its wire under the amplifier, then the amplifier', () => {
    const at = (act: string) =>
      plan.steps.findIndex(({ installs, acts }) => [...installs, ...acts].includes(act));
    expect(at('bar')).toBeGreaterThanOrEqual(0);
    expect(at('bar')).toBeLessThan(at('amp'));
    const upper = plan.steps[at('amp')];
    expect(upper?.waitsFor.map(({ why }) => why)).toContain('amp stands over bar');
  });

  test('tells on the placement sheet what was raised, and over what', () => {
    expect(JSON.stringify(placement.model(plan))).toMatch(
      /no room: Bass amplifier stands .* over Ground bar/,
    );
  });

  test('is drawn with what lies beneath in dashed lines, and both names', () => {
    const [drawing] = drawJob(plan, shippedMetrics).filter(({ sheet }) => sheet === 'placement');
    const [, after = ''] = drawing?.svg.split('<g data-subject="bar">') ?? [];
    expect(after.slice(0, after.indexOf('</g>'))).toContain('stroke-dasharray');
    expect(drawing?.svg).toMatch(/>Bar</);
    expect(drawing?.svg).toMatch(/>Bass amplifier</);
  });
});
