import { describe, expect, test } from 'vitest';
import { bodyInSpace, faceM } from '../../../lib/rules/mounting/reach-in-space.ts';
import { about, aboutContent, aboutPlan, byId, entry, partIn } from '../case.ts';
import { board, control, space } from '../changes.ts';
import { found } from '../found.ts';

const placement = {
  ...{ item: 'amp', xM: 0.01, yM: 0.1, turnDeg: 0, widthM: 0.1, depthM: 0.1, heightM: 0.05, raisedM: 0.005 },
  chosen: 'given' as const,
};

describe('a board in its space', () => {
  test('stands on its highest spacer, with its parts on its face', () => {
    const { plan } = about();
    const made = board(plan);
    expect(faceM(made)).toBeCloseTo(0.012, 9);
    for (const [at, spacerM] of [0.012, 0.02].entries()) Object.assign(made.fixings[at] ?? {}, { spacerM });
    expect(faceM(made)).toBeCloseTo(0.032, 9);
    made.datumInSpace = { xM: 0.2, yM: 0.03 };
    const body = bodyInSpace(made, { ...placement, keepClear: [] });
    for (const [key, value] of Object.entries({ minX: 0.21, maxX: 0.31, minY: 0.13, maxY: 0.23 }))
      expect(body).toHaveProperty(key, expect.closeTo(value, 9));
    expect(body.minZ).toBeCloseTo(0.037, 9);
    expect(body.maxZ).toBeCloseTo(0.087, 9);
  });

  test('is judged by no part of which the job knows nothing', () => {
    const made = aboutPlan((plan) => {
      board(plan).placements = [
        { ...placement, item: 'stranger', keepClear: [{ kind: 'control', side: 'left', depthM: 0.0762 }] },
      ];
    });
    expect(found('control-before-wall', made)).toEqual([]);
    expect(found('tool-room-before-wall', made)).toEqual([]);
  });
});

describe('a control that is unsafe at first power-up', () => {
  test('is told with its safe state as the limit', () => {
    const [told] = found(
      'control-unsafe',
      aboutPlan((plan) => {
        Object.assign(control(plan, 'GAIN'), { preset: 'half', safe: false });
      }),
    );
    expect(told).toMatchObject({ value: 'half', limit: 'fully down', path: '/devices/amp/settings/GAIN' });
  });
});

describe('a fixing that is too short', () => {
  const short = (length: string, stock: Readonly<Record<string, number>> = {}) => {
    const [told] = found(
      'fixing-too-short',
      aboutContent((content) => {
        const screw = partIn(content, 'screw', 'fixing');
        screw.length = length;
        content.parts['m6-18'] = { ...screw, length: '18 mm' };
        content.parts['m6-20'] = { ...screw, length: '20 mm' };
        content.shop.stock = Object.fromEntries(
          Object.entries(stock).map(([id, pieces]) => [id, { pieces }]),
        );
      }),
    );
    return told;
  };

  test('gives way to the shortest that does, and first to one of which enough are on the shelf', () => {
    const remedy = (stock: Readonly<Record<string, number>>) => short('11 mm', stock)?.remedy;
    expect(remedy({})).toMatch(/^write fixing: m6-18 \(0 in stock\) for a and b/);
    expect(remedy({ 'm6-20': 2 })).toMatch(/^write fixing: m6-20 \(2 in stock\)/);
    expect(remedy({ 'm6-20': 1 })).toMatch(/^write fixing: m6-18 \(0 in stock\)/);
    expect(remedy({ 'm6-18': 2, 'm6-20': 9 })).toMatch(/^write fixing: m6-18 \(2 in stock\)/);
  });

  // ISO 4032, from memory: 4.8 mm are the height of a nut M6; a whole diameter is common practice.
  test('is told against the least where it stops, else against what is good', () => {
    expect(short('16.7 mm')).toMatchObject({ level: 'stop', limit: expect.closeTo(0.0048, 9) });
    expect(short('16.7 mm')?.message).toMatch(/4\.8 mm.* is the least for M6$/);
    expect(short('16.9 mm')).toMatchObject({ level: 'caution', limit: expect.closeTo(0.006, 9) });
    expect(short('16.9 mm')?.message).toMatch(/6 mm.* is good for M6$/);
  });
});

describe('a box that does not go into its place', () => {
  test('is told with each side of the place that is known', () => {
    const told = (room: { width?: string; height?: string; depth?: string }) =>
      found(
        'place-too-small',
        aboutContent((content) => {
          partIn(content, 'vented', 'enclosure').size = {
            width: '500 mm',
            depth: '360 mm',
            height: '380 mm',
          };
          Object.assign(entry(content.vehicle.places, 'boot'), room);
        }),
      )[0]?.message;
    expect(told({ depth: '350 mm' })).toMatch(/, and boot is 350 mm \(.*\) deep: it goes in no way round$/);
    expect(told({ width: '400 mm', depth: '300 mm' })).toMatch(
      /, and boot is 400 mm \(.*\) wide and 300 mm \(.*\) deep: it/,
    );
  });
});

test('a board that gets wet is judged by the sheet that the plan chose for it', () => {
  const wet = (sheet: string) =>
    found(
      'fibreboard-in-wet-zone',
      about({
        content: (content) => {
          space(content).wet = true;
          content.parts.fibre = { ...partIn(content, 'plywood', 'board-sheet'), material: 'fibreboard' };
        },
        plan: (plan) => {
          byId(plan.boards, 'main').sheet = sheet;
        },
      }),
    ).map(({ of }) => of);
  expect(wet('fibre')).toEqual([['main', 'well', 'fibre']]);
  expect(wet('plywood')).toEqual([]);
});
