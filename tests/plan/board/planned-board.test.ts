import { describe, expect, test } from 'vitest';
import { layOutBoards } from '../../../lib/plan/board/board-layout.ts';
import { chooseProposals } from '../../../lib/plan/board/board-proposals.ts';
import { routeBoards } from '../../../lib/plan/board/board-routes.ts';
import { planBoard } from '../../../lib/plan/board/plan-board.ts';
import { PlanBook } from '../../../lib/plan/plan-book.ts';
import { buildCircuit } from '../../../lib/plan/power/circuit/circuit.ts';
import { inJob } from '../../read/problem-case.ts';
import { type Change, smallShop } from '../../read/small-shop.ts';
import { byId, jobOf } from '../plan-small-shop.ts';
import { addParts, inParts, inShop, inVehicle } from '../shop-changes.ts';
import { crowding } from './crowded-board.ts';
import { bentCoarsely, laidOut, type OneBoard, oneBoard } from './one-board.ts';

const laying = { isDraft: true, keep: bentCoarsely };
const openPlace = inJob('\n    at: { x: 200 mm, y: 110 mm }', '');

/** The board routed and planned, with its traces. */
function planned(found: OneBoard) {
  const { job, roles } = found;
  const book = new PlanBook();
  const laid = laidOut(found, book);
  const [routed] = routeBoards(job, [laid], new Map(), roles, laying);
  if (!routed) throw new Error('The board is routed.');
  const plan = planBoard(job, laid, routed, book, bentCoarsely);
  return { plan, laid, traces: book.traces(), remarks: book.remarks() };
}

describe('a board of the plan', () => {
  test('has each wire with its way, what lies along it, and the layer of what it carries', () => {
    const { plan } = planned(oneBoard());
    const route = byId(
      plan.routes.map((one) => ({ ...one, id: one.wire })),
      'speaker.+',
    );
    expect(route).toMatchObject({ along: ['speaker.+', 'speaker.-'], layer: 'speaker' });
    expect(route.points.length).toBeGreaterThan(1);
    const pathM = route.points.slice(1).reduce((sum, to, k) => {
      const from = route.points[k] ?? to;
      return sum + Math.hypot(to.xM - from.xM, to.yM - from.yM);
    }, 0);
    expect(pathM).toBeCloseTo(route.lengthM, 6);
    expect(plan.routes.map(({ wire, layer }) => [wire, layer])).toContainEqual(['feed', 'power']);
  });

  test('has the holes of the bracket that holds a part, beside its foot and turned with it', () => {
    const bracket = inParts(
      'supply: { type: regulated, fuse: 60 A, amplifier-class: class-d',
      'bracket-holes: [{ x: -8 mm, y: 30 mm, diameter: 5 mm }]\n    supply: { type: regulated, fuse: 60 A, amplifier-class: class-d',
    );
    const holes = (turn: string) => {
      const at = 'at: { x: 200 mm, y: 110 mm }';
      const { plan } = planned(oneBoard(undefined, bracket, inJob(at, `${at}\n    turn: ${turn}`)));
      return plan.holes.filter(({ of }) => of === 'amp');
    };
    // By hand: a foot of 100 by 80 mm with its corner at 200, 110; turned by 180 degrees the hole lies as far past its right.
    expect(holes('0')).toMatchObject([{ xM: expect.closeTo(0.192, 9), yM: expect.closeTo(0.14, 9) }]);
    expect(holes('180')).toMatchObject([{ xM: expect.closeTo(0.308, 9), yM: expect.closeTo(0.16, 9) }]);
  });

  test('has each device where it stands, as large as it is turned, with the rooms that it asks for', () => {
    const { plan } = planned(
      oneBoard(
        undefined,
        inJob('at: { x: 200 mm, y: 110 mm }', 'at: { x: 200 mm, y: 110 mm }\n    turn: 90'),
      ),
    );
    expect(plan.placements).toEqual([
      expect.objectContaining({
        ...{ item: 'amp', xM: 0.2, yM: 0.11, turnDeg: 90, raisedM: 0, chosen: 'given' },
        ...{ widthM: expect.closeTo(0.08, 9), depthM: expect.closeTo(0.1, 9), heightM: 0.04 },
      }),
    ]);
    const kinds = plan.placements[0]?.keepClear.map(({ kind }) => kind) ?? [];
    expect(kinds).toContain('control');
    for (const { kind, depthM } of plan.placements[0]?.keepClear ?? []) {
      expect(['air', 'connector', 'control', 'tool']).toContain(kind);
      expect(depthM).toBeGreaterThan(0);
    }
    expect(plan.placements[0]).not.toHaveProperty('score');
  });

  test('has a place and its score for a device that the job leaves open', () => {
    const { plan, laid } = planned(oneBoard(undefined, openPlace));
    expect(laid.search).not.toBeNull();
    expect(laid.proposals.length).toBeGreaterThan(0);
    expect(plan.placements).toHaveLength(1);
    expect(plan.placements[0]).toMatchObject({ item: 'amp', chosen: 'computed' });
    expect(plan.placements[0]?.score).toEqual(laid.proposals[0]?.score.parts);
    expect(laidOut(oneBoard())).toMatchObject({ search: null, proposals: [] });
  });

  test('has its holes, fixings and the air below its edges in figures of its own', () => {
    const { plan } = planned(oneBoard());
    expect(plan.holes.filter(({ purpose }) => purpose === 'fixing')).toHaveLength(4);
    expect(plan).toMatchObject({ id: 'main', sheet: 'ply-12', thicknessM: 0.012 });
    expect(plan.areaM2).toBeCloseTo(0.15, 2);
    expect(plan.massKg).toBeCloseTo(0.15 * 0.012 * 680, 1);
  });

  test('tells how far it sags once its plastic has crept, lying, and not standing', () => {
    const plastic = addParts(
      'plastic: { kind: board-sheet, title: P, material: polyethylene, thickness: 18 mm, width: 1500 mm, height: 1500 mm, density: 960 kg/m3, modulus: 1000 MPa, long-term-modulus: 250 MPa }',
    );
    const lying = inVehicle('    right: rear\n    upward: up\n', '    right: rear\n    upward: left\n');
    const { plan, traces } = planned(oneBoard(['sheet: plastic'], plastic, lying));
    expect(plan.sagCreptM).toBeCloseTo(4 * (plan.sagM ?? Number.NaN), 9);
    expect(traces['boards.main.sagCreptM']?.inputs.map(({ name, value }) => [name, value])).toEqual([
      ['sag', plan.sagM],
      ['modulus', 1e9],
      ['long-term modulus', 2.5e8],
    ]);
    expect(planned(oneBoard(['sheet: plastic'], plastic)).plan.sagCreptM).toBeNull();
    expect(planned(oneBoard(undefined, lying)).plan.sagCreptM).toBeNull();
  });

  test('asks for the way of its grain where it relies on it, and not where the job writes it', () => {
    const unlike = 'modulus: 9 GPa, modulus-across: 9 GPa';
    const stiff = inParts(unlike, 'modulus: 12 GPa, modulus-across: 3 GPa');
    const wanted = inVehicle('    depth: 200 mm', '    depth: 200 mm\n    beside-subwoofer: true');
    const open = planned(oneBoard(undefined, stiff, wanted));
    expect(open.plan).toMatchObject({ grain: 'level', grainChosen: 'computed' });
    expect(open.traces['boards.main.grain']).toMatchObject({ value: 'level', rule: 'board-grain' });
    const written = inJob(
      'outline: { rectangle: { width: 500 mm, height: 300 mm } }',
      'outline: { rectangle: { width: 500 mm, height: 300 mm }, grain: level }',
    );
    const given = planned(oneBoard(undefined, stiff, wanted, written));
    expect(given.plan).toMatchObject({ grain: 'level', grainChosen: 'given' });
    expect(given.traces).not.toHaveProperty(['boards.main.grain']);
    const even = planned(oneBoard(undefined, wanted));
    expect(even.plan).toMatchObject({ grain: null, grainChosen: null });
    expect(even.traces).not.toHaveProperty(['boards.main.grain']);
  });
});

describe('a wire that is made to a length', () => {
  /** What is told of lengths, with the way of the ground on the board; of another length than its 12 in where `mm` says. */
  const short = (mm?: string, ...changes: readonly Change[]) => {
    const ground = 'to: body.cargo, length: 12 in }';
    const written = mm === undefined ? [] : [inJob(ground, `to: body.cargo, length: ${mm} mm }`)];
    const found = oneBoard(undefined, ...written, ...changes);
    const [routed] = routeBoards(found.job, [laidOut(found)], new Map(), found.roles, laying);
    const told = routed?.faults.filter(({ rule }) => rule === 'length-short-of-way') ?? [];
    return { told, wayM: routed?.routes.find(({ wire }) => wire === 'ground')?.lengthM ?? Number.NaN };
  };

  test('reaches along its way on the board, to the hair, or is told what it has and what it needs', () => {
    const { wayM } = short();
    expect(wayM).toBeGreaterThan(0.05);
    expect(short((Math.ceil(wayM * 1e6) / 1e3).toFixed(3)).told).toEqual([]);
    const lessMm = (Math.floor(wayM * 1e6 - 1) / 1e3).toFixed(3);
    expect(short(lessMm).told).toMatchObject([
      { level: 'stop', of: ['ground'], value: expect.closeTo(wayM, 5), limit: wayM, unit: 'm' },
    ]);
  });

  test('and too short is written as long as its way at least, on to the next millimetre', () => {
    const { told, wayM } = short('20');
    const [[{ path = '', value = '' } = {}] = []] = told[0]?.advice ?? [];
    expect(path).toBe('/links/ground/length');
    const [, count = '', unit = ''] = /^([\d.]+) (mm|in)$/.exec(String(value)) ?? [];
    const writtenM = Number(count) * (unit === 'in' ? 0.0254 : 0.001);
    expect(writtenM).toBeGreaterThanOrEqual(wayM - 1e-9);
    expect(writtenM).toBeLessThan(wayM + 0.001);
    expect(told[0]?.remedy).toBe(
      `leave length: out to have it measured; or write length: ${value} or more, its loops with it`,
    );
  });

  test('is a lead as its part is made; in a run it is held against way and run together', () => {
    const made = inParts('    made-length: 10 ft\n', '    made-length: 20 mm\n');
    const lead = short(undefined, made).told;
    expect(lead).toMatchObject([{ of: ['signal'], value: 0.02 }]);
    expect(lead[0]).not.toHaveProperty('advice');
    const inRun = inJob('links: [turn-on] }', 'links: [turn-on, signal] }');
    expect(short(undefined, made, inRun).told).toEqual([]);
  });
});

describe('where places are searched for', () => {
  const sheet = inParts('width: 1500 mm\n    height: 1500 mm', 'width: 525 mm\n    height: 325 mm');
  const shelf = (text: string) =>
    inShop('  large-60: { pieces: 2 }\n', `  large-60: { pieces: 2 }\n  ply-a: ${text}\n`);
  /** What is raised on a board that only holds both with the amplifier over the bar, and what is told. */
  const crowded = (...more: readonly Change[]) => {
    const job = jobOf(smallShop(...crowding, ...more));
    const roles = buildCircuit(job, new Map(job.devices.map((device) => [device.id, device]))).roles;
    const book = new PlanBook();
    const [laid] = layOutBoards(job, { roles, sized: () => new Map() }, book, bentCoarsely);
    return {
      raised: laid?.placements.filter(({ heightM }) => heightM > 0).map(({ item }) => item),
      told: book.remarks().map(({ remark }) => remark.rule),
    };
  };

  test('a part is raised on rails as far as these come out of the shelf', () => {
    expect(crowded(sheet, shelf('{ pieces: 1 }'))).toEqual({ raised: [], told: ['no-sheet-for-rails'] });
  });

  test('of a sheet that is no stock rails are bought with the board', () => {
    expect(crowded(sheet)).toEqual({ raised: ['amp'], told: [] });
  });
});

describe('of several layouts', () => {
  const chosen = (layFirst: boolean, ...changes: readonly Change[]) => {
    const { job, roles, ...found } = oneBoard(undefined, ...changes);
    const laid = laidOut({ job, roles, ...found });
    const trial = { sized: new Map(), roles, layFirst };
    return { laid, taken: chooseProposals(job, [laid], trial, bentCoarsely)[0] };
  };

  test('that is taken which can be wired best, the others behind it, each once', () => {
    for (const layFirst of [false, true]) {
      const { taken } = chosen(layFirst, openPlace);
      expect(taken?.trials).toBeGreaterThan(0);
      expect(taken?.placements).toEqual(taken?.proposals[0]?.placements);
      const texts = taken?.proposals.map((one) => JSON.stringify(one.placements)) ?? [];
      expect(new Set(texts).size).toBe(texts.length);
      expect(texts.length).toBeGreaterThan(1);
    }
  });

  test('none is asked for where every place is given', () => {
    const { laid, taken } = chosen(true);
    expect(taken).toBe(laid);
  });
});
