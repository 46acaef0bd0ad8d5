import { describe, expect, test } from 'vitest';
import type { SideRoom } from '../../../lib/board/layout/item.ts';
import type { Job } from '../../../lib/model/content/resolved-job.ts';
import { computeAnew } from '../../../lib/model/keep.ts';
import { awgSize } from '../../../lib/model/quantity/wire-size.ts';
import { boardItems, partGapM } from '../../../lib/plan/board/board-items.ts';
import { givenPlacement } from '../../../lib/plan/board/board-layout.ts';
import { wallsBefore } from '../../../lib/plan/board/board-pose.ts';
import { fixedBarriers, routeBoards } from '../../../lib/plan/board/board-routes.ts';
import { boardFixings, drilling, mountingScrew } from '../../../lib/plan/board/board-shape.ts';
import {
  beneathOf,
  itemsBeneath,
  raisedHeight,
  stackLimits,
} from '../../../lib/plan/board/board-stacking.ts';
import { boardWires, layoutLinks, madeLengthM, wiresOnBoard } from '../../../lib/plan/board/board-wires.ts';
import { fixingJoints } from '../../../lib/plan/board/fixing-joints.ts';
import { placeBoards } from '../../../lib/plan/board/place-boards.ts';
import { boardLengths } from '../../../lib/plan/board/remark-words.ts';
import { unmadeHeights } from '../../../lib/plan/board/spacer-stacks.ts';
import { PlanBook } from '../../../lib/plan/plan-book.ts';
import { inJob } from '../../read/problem-case.ts';
import type { Change } from '../../read/small-shop.ts';
import { byId } from '../plan-small-shop.ts';
import { addParts, inParts, inShop, inVehicle } from '../shop-changes.ts';
import { laidOut, type OneBoard, oneBoard } from './one-board.ts';

const g = 9.80665;

describe('a device as the layout of its board sees it', () => {
  const item = (found: OneBoard) => {
    const book = new PlanBook();
    return { ...byId(boardItems(found.job, 'main', found.roles, book), 'amp'), traces: book.traces() };
  };
  const panels = [
    inParts(
      'B+: { role: supply-positive, joint: set-screw,',
      'B+: { role: supply-positive, panel: left, joint: set-screw,',
    ),
    inParts('IN1: { role: signal-in, joint: phono,', 'IN1: { role: signal-in, panel: right, joint: phono,'),
  ];

  test('has the terminals that are wired, in the layer of what they carry, at the side of their panel', () => {
    const { terminals } = item(oneBoard(undefined, ...panels));
    expect(terminals.map(({ id, side, layer }) => [id, side, layer])).toEqual([
      ['amp.B+', 'left', 'power'],
      ['amp.GND', 'bottom', 'ground'],
      ['amp.REM', 'bottom', 'speaker'],
      ['amp.IN1', 'right', 'signal'],
      ['amp.CH1+', 'bottom', 'speaker'],
      ['amp.CH1-', 'bottom', 'speaker'],
    ]);
    // In the middle of a side of 80 mm, of one of 100 mm.
    expect(terminals.map(({ alongM }) => alongM)).toEqual([0.04, 0.05, 0.05, 0.04, 0.05, 0.05]);
  });

  test('keeps room for bends and plugs where a conductor is wired, for a hand at its knobs, for a tool at its screws', () => {
    // House rules, common practice, no source: power bend 3 in, signal plug 2 in, knobs 3 in, set screws 6 in.
    const { rooms, traces } = item(oneBoard(undefined, ...panels));
    const inch = (room: SideRoom | undefined) =>
      Object.values(room ?? {}).map((m) => (m / 0.0254).toFixed(6));
    expect(inch(rooms.left)).toEqual(['0.000000', '3.000000', '6.000000', '3.000000']);
    expect(inch(rooms.right)).toEqual(['0.000000', '0.000000', '0.000000', '2.000000']);
    expect(rooms.top).toEqual({ airM: 0, accessM: 0, toolM: 0, bendM: 0 });
    expect(traces['boards.main.placements.amp.keepClear.left.connector']).toMatchObject({
      ...{ origin: 'assumed', rule: 'gap-power-bend', mark: 'cp' },
    });
    const own = item(
      oneBoard(undefined, ...panels, inShop('stock:', 'rules:\n  gap-power-bend: 5 in\nstock:')),
    );
    expect(own.rooms.left?.bendM).toBeCloseTo(0.127, 9);
    expect(own.traces['boards.main.placements.amp.keepClear.left.connector']).toMatchObject({
      ...{ origin: 'given', citation: 'the shop' },
    });
    const unwired = inJob('  feed: { from: main-fuse.OUT, to: amp.B+ }\n', '');
    const open = inJob('links: [feed], covering: loom-a', 'links: [signal], covering: loom-a');
    expect(item(oneBoard(undefined, ...panels, unwired, open)).rooms.left?.bendM).toBe(0);
  });

  test('is reached on its face where any of its controls is there', () => {
    expect(item(oneBoard()).faceAccess).toBe(false);
    const two = inParts(
      'GAIN: { what: gain, form: knob, panel: left,',
      'PHASE: { what: phase, form: switch, positions: [a, b], panel: face, safe: a, why: it stays }\n      GAIN: { what: gain, form: knob, panel: left,',
    );
    expect(item(oneBoard(undefined, two)).faceAccess).toBe(true);
  });
});

test('parts stand no nearer than the house gap, nor than the tolerance of their size', () => {
  const { rules } = oneBoard().job;
  const gap = (gapM: number, toleranceM: number) =>
    partGapM({
      ...rules,
      'gap-parts': { ...rules['gap-parts'], value: gapM },
      'part-tolerance': { ...rules['part-tolerance'], value: toleranceM },
    });
  expect([gap(0.0127, 0.003), gap(0.002, 0.003)]).toEqual([0.0127, 0.003]);
});

test('wires go round the heads of fixings and round the ribs of their face', () => {
  const found = oneBoard([
    'sheet: ply-12',
    'ribs: { r1: { edge: bottom, distance: 150 mm, height: 20 mm, face: mounting } }',
  ]);
  const barriers = fixedBarriers(found.job, laidOut(found));
  expect(barriers.map(({ id }) => id)).toEqual(expect.arrayContaining(['a', 'b', 'c', 'd', 'rib r1']));
});

test('a place that the job gives is as high as it says, flat on the board where it does not', () => {
  const at = (more: string) =>
    givenPlacement(
      oneBoard(undefined, inJob('at: { x: 200 mm, y: 110 mm }', `at: { x: 200 mm, y: 110 mm }${more}`)).job,
      'amp',
    );
  expect(at('')).toEqual({ item: 'amp', xM: 0.2, yM: 0.11, turnDeg: 0, heightM: 0 });
  expect(at('\n    raised: 36 mm\n    turn: 90')).toMatchObject({ turnDeg: 90, heightM: 0.036 });
  expect(givenPlacement(oneBoard().job, 'sub')).toBeNull();
});

describe('what stands before the parts of a board', () => {
  const walls = (...more: readonly Change[]) => {
    const { job, board } = oneBoard(undefined, ...more);
    return wallsBefore(board, boardFixings(board, job.parts));
  };

  test('is each edge of its space that is not open, in the axes of the board, and an obstacle as far as it stands out', () => {
    const bounds = inVehicle(
      '    depth: 200 mm',
      '    depth: 200 mm\n    bounds: { left: wall, right: open }',
    );
    const pipe =
      'obstacles: { pipe: { x: 100 mm, y: 100 mm, width: 20 mm, height: 30 mm, stands-out: 80 mm, what: a pipe } }';
    const found = walls(bounds, inVehicle('    sound-points:', `    ${pipe}\n    sound-points:`));
    const edges = found.filter(({ toM }) => !Number.isFinite(toM));
    expect(edges.flatMap(({ sides }) => sides).toSorted()).toEqual(['bottom', 'left', 'top']);
    expect(edges.filter(({ certain }) => certain).flatMap(({ sides }) => sides)).toEqual(['left']);
    // The board stands at 10 mm, 10 mm of its space: the corner of that lies outside it.
    expect(edges[0]?.ring[0]).toEqual({ xM: -0.01, yM: -0.01 });
    // 80 mm less the spacer of 25 mm and the sheet of 12 mm.
    const [obstacle] = found.filter(({ toM }) => Number.isFinite(toM));
    expect(obstacle?.toM).toBeCloseTo(0.043, 9);
    expect(obstacle?.certain).toBe(true);
  });
});

describe('the holes for the screws of parts', () => {
  const screws = addParts(
    'screw-6: { kind: fixing, title: S, form: wood-screw, length: 16 mm, clearance: 3.6 mm, pilot: 2 mm }',
    'screw-a: { kind: fixing, title: S, form: wood-screw, length: 20 mm, clearance: 4.4 mm, pilot: 3 mm }',
    'screw-bare: { kind: fixing, title: S, form: wood-screw, length: 20 mm, clearance: 5 mm }',
    'screw-odd: { kind: fixing, title: S, form: wood-screw, length: 20 mm, pilot: 3 mm }',
    'bolt-4: { kind: fixing, title: S, form: machine-screw, thread: M4, length: 20 mm, clearance: 4.2 mm, pilot: 3 mm }',
  );
  const { parts } = oneBoard(undefined, screws).job;

  test('are of the thickest wood screw that passes, with a pilot and a clearance that are known', () => {
    expect(mountingScrew(0.0044, parts)?.id).toBe('screw-25');
    expect(mountingScrew(0.0043, parts)?.id).toBe('screw-6');
    expect(mountingScrew(0.006, parts)?.id).toBe('screw-25');
    expect(mountingScrew(0.0035, parts)).toBeNull();
  });

  test('keep from a corner only where the sheet may split there, and from an edge always', () => {
    const holes = inParts(
      'kind: amplifier\n    title: Amplifier\n    ',
      'kind: amplifier\n    title: Amplifier\n    mounting-holes: [{ x: 5 mm, y: 5 mm, diameter: 5 mm }]\n    ',
    );
    const kept = (...more: readonly Change[]) => {
      const found = oneBoard(undefined, screws, holes, ...more);
      return drilling(found.board, found.job, boardItems(found.job, 'main', found.roles, new PlanBook()));
    };
    const { rules } = oneBoard().job;
    expect(kept()).toMatchObject({ toEdgeM: rules['hole-edge'].value, toCornerM: 0 });
    // A hole of 5 mm takes the screw with a clearance of 4.4 mm, which is drilled to its pilot.
    expect([...kept().drilledM]).toEqual([[0.005, 0.003]]);
    const split = inParts(
      'ply-12: { kind: board-sheet, title: Sheet, material: birch-plywood',
      'ply-12: { kind: board-sheet, title: Sheet, material: fibreboard',
    );
    expect(kept(split).toCornerM).toBe(rules['hole-corner'].value);
  });
});

describe('what a raised part may stand over', () => {
  const bar = addParts(
    'bar-a: { kind: distribution, title: Bar, size: { width: 60 mm, depth: 40 mm, height: 20 mm }, mass: 200 g, current: 150 A, terminals: { G1: { role: ground-bar, joint: set-screw, panel: left, takes: { from: 8 AWG, to: 4 AWG } }, G2: { role: ground-bar, joint: set-screw, panel: top, takes: { from: 8 AWG, to: 4 AWG } } } }',
  );
  const wired: readonly Change[] = [
    bar,
    inJob('  sub: { part', '  bar: { part: bar-a, on: main }\n  sub: { part'),
    inJob(
      '  ground: { from: amp.GND, to: body.cargo, length: 12 in }',
      '  ground: { from: bar.G1, to: body.cargo, length: 12 in }\n  amp-ground: { from: amp.GND, to: bar.G2 }',
    ),
  ];
  const of = (id: string, ...more: readonly Change[]) => {
    const { job } = oneBoard(undefined, ...wired, ...more);
    return beneathOf(job, byId(job.devices, id));
  };

  test('is a bar whose wires leave at sides that are known, each with the part on the board that it comes from', () => {
    expect(of('bar')).toEqual({
      wires: [
        { side: 'left', from: null },
        { side: 'top', from: 'amp' },
      ],
    });
    expect(
      of(
        'bar',
        inParts(
          'G2: { role: ground-bar, joint: set-screw, panel: top,',
          'G2: { role: ground-bar, joint: set-screw,',
        ),
      ),
    ).toBeUndefined();
  });

  test('is told apart by what it shares out: grounds alone, or a feed, and no other part shares', () => {
    const sharesOf = (id: string, ...more: readonly Change[]) => {
      const found = oneBoard(undefined, ...more);
      return byId(boardItems(found.job, 'main', found.roles, new PlanBook()), id).shares;
    };
    expect(sharesOf('bar', ...wired)).toBe('ground');
    expect(sharesOf('amp', ...wired)).toBeUndefined();
    const fed = [
      bar,
      inJob(
        '  sub: { part',
        '  bar: { part: bar-a, on: main }\n  block: { part: block-a, on: main }\n  sub: { part',
      ),
      inJob('to: amp.B+ }', 'to: block.IN }'),
      inJob('  turn-on: {', '  amp-feed: { from: block.OUT1, to: amp.B+ }\n  turn-on: {'),
    ];
    expect(sharesOf('block', ...fed)).toBe('feed');
    expect(sharesOf('bar', ...fed)).toBeUndefined();
  });

  test('is nothing with a fuse, with a control on its face, or that is raised itself', () => {
    expect(
      of(
        'bar',
        inParts(
          'current: 150 A, terminals: { G1',
          'current: 150 A, fused-ways: { G2: { from: G1, fuse-form: maxi-blade } }, terminals: { G1',
        ),
      ),
    ).toBeUndefined();
    expect(of('sub')).toBeUndefined();
  });

  test('is an amplifier that is closed once it is wired: nothing on its face, each terminal at a side', () => {
    const roles = {
      ...{ 'B+': 'supply-positive, joint: set-screw,', GND: 'supply-negative, joint: set-screw,' },
      ...{ REM: 'turn-on-in', IN1: 'signal-in, joint: phono,' },
      ...{ 'CH1+': 'speaker-out-positive', 'CH1-': 'speaker-out-negative' },
    };
    const sided = Object.entries(roles).map(([name, role]) => {
      const end = role.endsWith(',') ? '' : ' }';
      return inParts(`${name}: { role: ${role}${end}`, `${name}: { panel: right, role: ${role}${end}`);
    });
    expect(of('amp', ...sided)?.wires.map(({ side }) => side)).toEqual(Array(6).fill('right'));
    const face = (panel: string) =>
      of(
        'amp',
        ...sided,
        inParts(
          'GAIN: { what: gain, form: knob, panel: left,',
          `GAIN: { what: gain, form: knob, panel: ${panel},`,
        ),
      );
    expect(face('top')).toBeDefined();
    expect(face('face')).toBeUndefined();
    expect(of('amp')).toBeUndefined();
  });

  test('lies below it in plan, wholly: what stands beside or reaches higher does not', () => {
    const laid = laidOut(
      oneBoard(
        undefined,
        bar,
        inJob(
          '  sub: { part',
          '  bar: { part: bar-a, on: main, at: { x: 210 mm, y: 120 mm } }\n  sub: { part',
        ),
      ),
    );
    const [amp] = laid.placements.filter(({ item }) => item === 'amp');
    if (!amp) throw new Error('The amplifier is placed.');
    const over = (heightM: number, xM = amp.xM) =>
      itemsBeneath(laid, { ...amp, xM, heightM }).map(({ id }) => id);
    expect(over(0.036)).toEqual(['bar']);
    expect(over(0.02)).toEqual(['bar']);
    expect(over(0.019)).toEqual([]);
    expect(over(0)).toEqual([]);
    expect(over(0.036, 0.27)).toEqual([]);
    // Over its own height too it stands over the bar, and not over itself.
    expect(over(0.05)).toEqual(['bar']);
    expect(itemsBeneath(laid, { ...amp, item: 'nobody', heightM: 0.036 })).toEqual([]);
  });

  test('leaves the depth of the space less spacers, sheet and the clearance', () => {
    const { job, board } = oneBoard();
    // 200 mm less 25 and 12 mm.
    expect(stackLimits(job, board).topM).toBeCloseTo(0.163 - job.rules['space-clearance'].value, 9);
    expect(stackLimits(job, board).layerM).toBe(0.012);
  });

  test('is told by what asks for most: height and clearance of that alone', () => {
    const found = raisedHeight(0.036, 0.018, [
      { id: 'low', topM: 0.01, clearanceM: 0.02 },
      { id: 'high', topM: 0.02, clearanceM: 0.0127 },
    ]);
    expect(found.trace.inputs.map(({ name, value }) => [name, value])).toEqual([
      ['layers', 2],
      ['thickness', 0.018],
      ['height beneath', 0.02],
      ['clearance', 0.0127],
      ['beneath', 'low, high'],
    ]);
  });
});

describe('the wires of a board', () => {
  const found = () => oneBoard();
  const wiresOf = ({ job, board, roles }: OneBoard) => boardWires(job, board, roles);
  const cable = (link: string) =>
    link === 'feed'
      ? { part: 'red-4', size: awgSize('4'), material: 'copper' as const, insulationC: 105 }
      : undefined;

  test('are those that end on it, pairs together, in the layer of what they carry', () => {
    expect(
      wiresOf(found()).map(({ link, along, layer }) => [link.id, along.map(({ id }) => id), layer]),
    ).toEqual([
      ['feed', ['feed'], 'power'],
      ['ground', ['ground'], 'ground'],
      ['turn-on', ['turn-on'], 'speaker'],
      ['signal', ['signal'], 'signal'],
      ['speaker.+', ['speaker.+', 'speaker.-'], 'speaker'],
    ]);
  });

  test('end at terminals of the board, or leave it: at the edge that their run reaches, else by the nearest', () => {
    const { job, board, roles } = found();
    const [feed, , turnOn] = wiresOnBoard(job, board, boardWires(job, board, roles), cable);
    expect(feed?.along).toEqual([
      { link: 'feed', from: { exit: 'left' }, to: { item: 'amp', terminal: 'amp.B+' } },
    ]);
    expect(turnOn?.along[0]?.from).toEqual({ exit: 'nearest' });
  });

  test('bend as their thickest conductor does: by its diameter as the catalogue or the model has it', () => {
    const { job, board, roles } = found();
    const [feed, ground] = wiresOnBoard(job, board, boardWires(job, board, roles), cable);
    expect(feed?.diameterM).toBeGreaterThan(0.005);
    expect(feed?.bendRadiusM).toBeCloseTo(job.rules['bend-diameters'].value * (feed?.diameterM ?? 0), 9);
    // Nothing is known of it yet.
    expect(ground).toMatchObject({ diameterM: 0.002, bendRadiusM: 0 });
  });

  test('are as thick as their cable says, and reach as far as it is made, or as the job gives', () => {
    const outside = inParts('    form: coaxial\n', '    form: coaxial\n    outside-diameter: 9 mm\n');
    const { job, board, roles } = oneBoard(undefined, outside);
    const links = layoutLinks(job, board, boardWires(job, board, roles), cable);
    expect(byId(links, 'signal')).toMatchObject({ diameterM: 0.009, longestM: 3.048 });
    expect(byId(links, 'ground').longestM).toBeCloseTo(0.3048, 9);
    expect(byId(links, 'feed')).not.toHaveProperty('longestM');
    const lengthOf = (id: string) => madeLengthM(job, byId(job.links, id));
    expect([lengthOf('signal'), lengthOf('feed')]).toEqual([3.048, undefined]);
    const short = oneBoard(
      undefined,
      inJob('conductors: [left] }', 'conductors: [left], length: 2 ft }'),
    ).job;
    expect(madeLengthM(short, byId(short.links, 'signal'))).toBeCloseTo(0.6096, 9);
  });
});

test('a way on the board is as thick as what lies along it, and bends as that does', () => {
  const { job, board, roles } = oneBoard();
  const laid = [laidOut({ job, board, roles })];
  const [routed] = routeBoards(job, laid, new Map(), roles, { inLanes: false, keep: computeAnew });
  const asked = wiresOnBoard(job, board, boardWires(job, board, roles), () => undefined);
  expect(routed?.routes.length).toBe(asked.length);
  for (const { wire, diameterM, bendRadiusM, along } of routed?.routes ?? []) {
    const own = byId(asked, wire);
    expect({ diameterM, bendRadiusM }).toEqual({ diameterM: own.diameterM, bendRadiusM: own.bendRadiusM });
    expect(along).toEqual(own.along.map(({ link }) => link));
  }
});

describe('the joints of a board on its fixings', () => {
  const joints = (fixing: string, more: readonly Change[] = [], lines?: readonly string[]) => {
    const bolt =
      'bolt-60: { kind: fixing, title: Bolt, form: bolt, thread: M6, length: 60 mm, clearance: 6.4 mm, holds: 400 kg }';
    const { job, board } = oneBoard(lines, inParts(bolt, bolt.replace('holds: 400 kg', fixing)), ...more);
    const stack = { layers: 0, parts: [{ part: 'spacer-12', count: 2 }], makesM: 0.024 };
    const stacks = new Map(more.length > 0 ? [['a', stack] as const] : []);
    return fixingJoints(job, board, boardFixings(board, job.parts), stacks);
  };

  test('hold what the weakest of bolt, rivet nut and board does, each over its spacer', () => {
    const { rules } = oneBoard().job;
    const [a] = joints('holds: 10 kg');
    expect(a?.rated).toMatchObject({
      pullBy: 'bolt',
      shearBy: 'bolt',
      spacer: { heightM: 0.025, faceM: 0.012 },
    });
    expect(a?.rated?.pullOutN).toBeCloseTo(10 * g, 6);
    const [strong] = joints('bears-on: 40 mm, holds: 4000 kg');
    expect(strong?.rated?.pullBy).toBe('insert');
    expect(strong?.rated?.pullOutN).toBeCloseTo(rules['rivet-nut-holds-m6'].value * g, 6);
  });

  test('are not known where the bolt does not tell what it holds', () => {
    expect(joints('torque: 9 N m')[0]?.rated).toBeNull();
  });

  test('tip on the narrowest face of their stack: of its parts, and of a pad of sheet', () => {
    const spacer = (more: string) => [
      addParts(`spacer-12: { kind: fixing, title: S, form: spacer, thread: M6, length: 12 mm${more} }`),
    ];
    expect(joints('holds: 400 kg', spacer(''))[0]?.rated?.spacer?.faceM).toBeCloseTo(0.012, 9);
    expect(joints('holds: 400 kg', spacer(', bears-on: 17 mm'))[0]?.rated?.spacer?.faceM).toBe(0.017);
    const { rules } = oneBoard().job;
    expect(joints('holds: 400 kg', spacer(', bears-on: 79 mm'))[0]?.rated?.spacer?.faceM).toBe(
      rules['spacer-pad'].value,
    );
  });

  test('are tightened to the least of bolt, rivet nut and what the sheet bears for good below the smaller face', () => {
    const { rules } = oneBoard().job;
    const [tight] = joints('bears-on: 18 mm, holds: 400 kg');
    // By hand: K s A d, the spacer of 12 mm bearing on less than the washer of 18 mm.
    const areaM2 = (Math.PI / 4) * (0.012 ** 2 - 0.0064 ** 2);
    const bearsPa = rules['crushing-wood'].value * rules['bearing-lasting'].value;
    expect(tight?.tight?.torqueNm.value).toBeCloseTo(rules['nut-factor'].value * bearsPa * areaM2 * 0.006, 9);
    expect(tight?.tight?.by).toBe('board');
    expect(joints('torque: 0.1 N m, holds: 400 kg')[0]?.tight).toMatchObject({
      by: 'bolt',
      torqueNm: { value: 0.1 },
    });
  });

  test('of a plastic sheet bear no more than creep leaves of it', () => {
    const sheet = (longTerm: string) =>
      addParts(
        `plastic: { kind: board-sheet, title: P, material: polyethylene, thickness: 12 mm, width: 1500 mm, height: 1500 mm, density: 960 kg/m3, modulus: 1000 MPa${longTerm} }`,
      );
    const torque = (longTerm: string) => {
      const { job, board } = oneBoard(['sheet: plastic'], sheet(longTerm));
      return fixingJoints(job, board, boardFixings(board, job.parts), new Map())[0]?.tight?.torqueNm.value;
    };
    const { rules } = oneBoard().job;
    const share = rules['bearing-lasting'].value;
    expect((torque(', long-term-modulus: 100 MPa') ?? 0) / (torque('') ?? 1)).toBeCloseTo(0.1 / share, 9);
    expect(torque(', long-term-modulus: 990 MPa')).toBeCloseTo(torque('') ?? Number.NaN, 12);
  });

  test('of a wood screw, and of a bolt whose torque nobody tells, have none', () => {
    const { job, board } = oneBoard(
      undefined,
      inParts(
        'form: bolt, thread: M6, length: 60 mm',
        'form: wood-screw, thread: M6, pilot: 5 mm, length: 60 mm',
      ),
    );
    const fixings = boardFixings(board, job.parts);
    expect(fixingJoints(job, board, fixings, new Map()).map(({ tight }) => tight)).toEqual([
      null,
      null,
      null,
      null,
    ]);
    const small = inParts('form: bolt, thread: M6, length: 60 mm', 'form: bolt, thread: M5, length: 60 mm');
    const other = oneBoard(undefined, small);
    const [unknown] = fixingJoints(
      other.job,
      other.board,
      boardFixings(other.board, other.job.parts),
      new Map(),
    );
    expect(unknown?.tight).toBeNull();
  });
});

describe('a board without a place', () => {
  const open = (job: Job): Job => ({
    ...job,
    boards: job.boards.map(({ place: _place, ...board }) => {
      const { at: _at, ...given } = board.given;
      return { ...board, given };
    }),
  });

  test('gets the first that is free; one that has a place keeps it', () => {
    const { job } = oneBoard();
    expect(placeBoards(job, new PlanBook())).toBe(job);
    const book = new PlanBook();
    const [placed] = placeBoards(open(job), book).boards;
    expect(placed?.place).toBeDefined();
    expect(book.traces()['boards.main.datumInSpace.xM']).toMatchObject({ rule: 'board-place' });
    expect(book.remarks()).toEqual([]);
  });

  test('stands as its traces say, tried place by place on the grid of its space', () => {
    const book = new PlanBook();
    const [placed] = placeBoards(open(oneBoard().job), book).boards;
    for (const axis of ['xM', 'yM'] as const)
      expect(book.traces()[`boards.main.datumInSpace.${axis}`]).toMatchObject({
        ...{ value: placed?.place?.[axis], unit: 'm', rule: 'board-place' },
        inputs: [
          { name: 'space', value: 'well', unit: '' },
          { name: 'grid', unit: 'm' },
          { name: 'places tried', value: expect.any(Number), unit: '' },
        ],
      });
    // Each of its fixings comes through it, by the house distance from its edge at least.
    const { job } = oneBoard();
    const edgeM = job.rules['hole-edge'].value;
    const at = placed?.place ?? { xM: Number.NaN, yM: Number.NaN };
    for (const [x, y] of [
      [0.05, 0.05],
      [0.45, 0.27],
    ] as const) {
      expect(x - at.xM).toBeGreaterThanOrEqual(edgeM + 0.0032);
      expect(0.5 - (x - at.xM)).toBeGreaterThanOrEqual(edgeM + 0.0032);
      expect(y - at.yM).toBeGreaterThanOrEqual(edgeM + 0.0032);
      expect(0.3 - (y - at.yM)).toBeGreaterThanOrEqual(edgeM + 0.0032);
    }
  });

  test('has none as long as its outline can’t be drawn, which is told where it is laid out', () => {
    const crossed = inJob(
      'outline: { rectangle: { width: 500 mm, height: 300 mm } }',
      'outline: { polygon: [[0 mm, 0 mm], [500 mm, 300 mm], [500 mm, 0 mm], [0 mm, 300 mm]] }',
    );
    const book = new PlanBook();
    const { job } = oneBoard(undefined, crossed);
    expect(placeBoards(open(job), book).boards).toEqual(open(job).boards);
    expect(book.remarks()).toEqual([]);
    expect(book.traces()).toEqual({});
  });

  test('keeps clear of what must stay reachable, and of what should, as long as there is room', () => {
    const area = (must: boolean, width: string) =>
      inVehicle(
        '    sound-points:\n',
        `    keep-reachable: { jack: { what: cover, x: 0 mm, y: 0 mm, width: ${width}, height: 500 mm, before: 300 mm, must: ${must} } }\n    sound-points:\n`,
      );
    const placeOf = (...changes: readonly Change[]) => {
      const book = new PlanBook();
      const [placed] = placeBoards(open(oneBoard(undefined, ...changes).job), book).boards;
      return { xM: placed?.place?.xM ?? Number.NaN, told: book.remarks().map(({ remark }) => remark.of) };
    };
    // The points are 50 mm from the side: what is kept free there is 20 mm wide, or wider than the board can give way to.
    for (const must of [true, false]) {
      expect(placeOf(area(must, '20 mm')).xM).toBeGreaterThanOrEqual(0.02);
      expect(placeOf(area(must, '20 mm')).told).toEqual([]);
    }
    expect(placeOf(area(false, '60 mm'))).toEqual({ ...placeOf(), told: [] });
    expect(placeOf(area(true, '60 mm')).told).toEqual([['main', 'jack']]);
  });

  test('that is larger than its space stands where it lacks least, told by its own name', () => {
    const wide = inJob(
      'outline: { rectangle: { width: 500 mm, height: 300 mm } }',
      'outline: { rectangle: { width: 900 mm, height: 300 mm } }',
    );
    const book = new PlanBook();
    placeBoards(open(oneBoard(undefined, wide).job), book);
    const [told] = book.remarks();
    expect(told?.remark).toMatchObject({ rule: 'no-place-for-board', level: 'stop', of: ['main'] });
    expect(told?.remark.message).toMatch(/main reaches .* past the edge of the space/);
  });
});

test('a length in what is remarked of a board is told as the board, its space, or the part that it names has it', () => {
  const { job } = oneBoard();
  const told = (board: string, lengthM: number, ...named: readonly string[]) =>
    boardLengths(job, board, { path: '/nowhere' }, named)('told', lengthM);
  expect(told('main', 0.5)).toMatch(/^500 mm \(/);
  expect(told('main', 0.8)).toMatch(/^800 mm \(/);
  expect(told('main', 0.123)).toMatch(/^123 mm \(/);
  // Of no board the shop's own inches are left, but for what a part says that is named.
  expect(told('other', 0.123)).toMatch(/^\d.* in \(123 mm\)$/);
  expect(told('other', 0.1, 'amp')).toMatch(/^100 mm \(/);
});

test('a height that the stack does not make is told, and none that it does', () => {
  const piece = {
    ...{ id: 'board.a.pad', carries: 'a', form: 'pad' as const, count: 1, layers: 2, parts: [] },
    ...{ widthM: 0.05, lengthM: 0.05, thicknessM: 0.012, makesM: 0.024, holeM: null },
  };
  const told = (packM: number) => unmadeHeights([{ ...piece, packM }], 0.0005);
  expect(told(0)).toEqual([]);
  expect(told(0.001)).toEqual([
    expect.objectContaining({ rule: 'height-not-in-stock', of: ['a'], value: 0.001 }),
  ]);
});
