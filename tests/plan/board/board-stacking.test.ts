import { describe, expect, test } from 'vitest';
import { drawJob } from '../../../lib/draw/draw-job.ts';
import { placement } from '../../../lib/publish/sheets/board/placement.ts';
import { shippedMetrics } from '../../draw/lettering/shipped-metrics.ts';
import { outsideCheck } from '../../outside-check.ts';
import { inJob, withBoard } from '../../read/problem-case.ts';
import type { Change } from '../../read/small-shop.ts';
import { byId, smallPlan } from '../plan-small-shop.ts';
import { inParts } from '../shop-changes.ts';
import { barPart, crowded, onePart } from './crowded-board.ts';

const byHand = outsideCheck('rooms-by-hand');

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
    expect(byHand.differs(placed('amp').raisedM, 2 * 0.018)).toBeGreaterThan(0.0327);
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
    const [, ...groups] = drawing?.svg.split('<g data-of="bar">') ?? [];
    expect(groups.map((after) => after.slice(0, after.indexOf('</g>'))).join()).toContain('stroke-dasharray');
    expect(drawing?.svg).toMatch(/>Bar</);
    expect(drawing?.svg).toMatch(/>Bass amplifier</);
  });
});

describe('rails of a raised part', () => {
  const sheet = inParts('width: 1500 mm\n    height: 1500 mm', 'width: 525 mm\n    height: 325 mm');
  const shelf = (text: string): Change => [
    'content/shop.yaml',
    '  large-60: { pieces: 2 }\n',
    `  large-60: { pieces: 2 }\n  ply-a: ${text}\n`,
  ];
  const raisedIn = (...more: readonly Change[]): readonly string[] => {
    const { plan, remarks } = crowded(...more);
    const told = remarks.filter(({ rule }) => rule === 'no-sheet-for-rails').map(({ rule }) => rule);
    const raised = byId(plan.boards, 'main').placements.filter(({ raisedM }) => raisedM > 0);
    return [...told, ...raised.map(({ item }) => item)];
  };

  test('come out of what the board leaves of the stock, such as an off-cut', () => {
    expect(raisedIn(sheet, shelf('{ pieces: 1 }'))).toEqual(['no-sheet-for-rails']);
    const offCut = '{ pieces: 1, off-cuts: { a: { width: 300 mm, height: 240 mm } } }';
    expect(raisedIn(sheet, shelf(offCut))).toEqual(['amp']);
  });

  test('of a sheet that is no stock are to be bought with the board', () => {
    expect(raisedIn(sheet)).toEqual(['amp']);
  });
});

/** Two amplifiers as wide as the board, each with a ground bar of its own that finds room beneath one of them only. */
const twice = (): ReturnType<typeof smallPlan> =>
  smallPlan(
    withBoard('width: 500 mm, height: 300 mm', 'width: 500 mm, height: 440 mm'),
    inJob('title: Bass amplifier\n    in: boot', 'title: Bass amplifier\n    on: main'),
    inJob(
      '  sub: { part',
      `  bar: { part: bar-a, on: main }
  bar-2: { part: bar-a, on: main }
  amp-2: { part: amp-a, title: Front amplifier, on: main }
  sub: { part`,
    ),
    inJob(
      '  ground: { from: amp.GND, to: body.cargo, length: 12 in }',
      `  ground: { from: bar.G1, to: body.cargo, length: 4 ft }
  ground-2: { from: bar-2.G1, to: body.cargo, length: 4 ft }
  amp-ground: { from: amp.GND, to: bar.G2 }
  amp-2-ground: { from: amp-2.GND, to: bar-2.G2 }`,
    ),
    inParts(
      `title: Amplifier\n    ${onePart}`,
      'title: Amplifier\n    size: { width: 460 mm, depth: 190 mm, height: 50 mm }',
    ),
    inParts(
      '  radio-a:\n',
      `${barPart.replace('width: 100 mm, depth: 80 mm', 'width: 200 mm, depth: 120 mm')}  radio-a:\n`,
    ),
  );

describe('a board too small for its parts with one of them raised', () => {
  const { plan, remarks } = twice();
  const board = byId(plan.boards, 'main');
  const pairs = board.placements
    .filter(({ raisedM }) => raisedM > 0)
    .map(({ item }) => {
      const trace = plan.traces[`boards.main.placements.${item}.raisedM`];
      return [item, trace?.inputs.find(({ name }) => name === 'beneath')?.value];
    });

  test('has both amplifiers raised, each over a bar', () => {
    expect(pairs.map(([upper]) => upper)).toEqual(['amp', 'amp-2']);
    expect(new Set(pairs.map(([, lower]) => lower))).toEqual(new Set(['bar', 'bar-2']));
    expect(remarks.filter(({ rule }) => /does-not-fit|overlap|covered|no-sheet/.test(rule))).toEqual([]);
  });

  test('has rails below each: two times two layers of 18 mm, on the nesting sheet too', () => {
    expect(board.pieces.map(({ carries, form, count, makesM }) => [carries, form, count, makesM])).toEqual([
      ['amp', 'rail', 4, expect.closeTo(0.036, 9)],
      ['amp-2', 'rail', 4, expect.closeTo(0.036, 9)],
    ]);
    const [drawing] = drawJob(plan, shippedMetrics).filter(({ id }) => id.startsWith('nest-'));
    expect(drawing?.svg).toContain('8 x rail of main');
  });

  test('has each bar and its ground wire in place before the amplifier closes over it', () => {
    const at = (id: string) => plan.steps.findIndex(({ installs }) => installs.includes(id));
    for (const [upper, lower] of pairs) {
      expect(at(String(lower))).toBeGreaterThanOrEqual(0);
      expect(at(String(lower))).toBeLessThan(at(String(upper)));
      const own = plan.wires.find(({ from }) => from === `${lower}.G1`);
      expect(at(own?.id ?? '')).toBeLessThan(at(String(upper)));
    }
  });

  test('tells on sheet and drawing how far each is raised, and over what', () => {
    const sheet = JSON.stringify(placement.model(plan));
    expect(sheet.match(/Side by side there is no room/g)).toHaveLength(1);
    expect(sheet).toMatch(/Bass amplifier stands .*; Front amplifier stands .* over Ground bar/);
    const [drawing] = drawJob(plan, shippedMetrics).filter((one) => one.sheet === 'placement');
    expect(drawing?.svg.match(/raised [^<]*, over Bar/g)).toHaveLength(2);
  });
});
