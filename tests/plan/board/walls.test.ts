import { describe, expect, test } from 'vitest';
import { place } from '../../../lib/board/layout/placed.ts';
import { wallsShort } from '../../../lib/board/layout/walls.ts';
import { everyFinding } from '../../../lib/model/finding.ts';
import { judge } from '../../../lib/rules/judge.ts';
import { entry, jobOf, partIn } from '../../rules/case.ts';
import { written } from '../../rules/content.ts';
import { planKept } from '../plan-kept.ts';

type Edge = 'left' | 'right' | 'top' | 'bottom';

/** What the rules say of room before walls, where all places are open and the block is tightened from one side. */
function toldOf(screws: Edge, walls: readonly Edge[]) {
  const content = written();
  const bounds = Object.fromEntries(
    (['left', 'right', 'top', 'bottom'] as const).map((edge) => [
      edge,
      walls.includes(edge) ? 'wall' : 'open',
    ]),
  );
  Object.assign(entry(content.vehicle.spaces, 'well'), { bounds });
  for (const device of Object.values(content.job.devices)) {
    delete device.at;
    delete device.turn;
  }
  for (const terminal of Object.values(partIn(content, 'fused', 'distribution').terminals))
    Object.assign(terminal, { panel: screws, joint: 'set-screw' });
  const job = jobOf(content);
  const { plan, remarks } = planKept(job);
  return {
    placements: plan.boards[0]?.placements ?? [],
    told: everyFinding(judge(job, plan, remarks)).filter(({ rule }) => /-before-wall$/.test(rule)),
  };
}

describe('places that are proposed', () => {
  // Without the walls in the search the first proposal of each left 137 mm, or 112 mm, where a tool needs 152 mm.
  test.each(['left', 'top'] as const)(
    'keep room for a tool before a wall: set screws on the %s',
    (screws) => {
      const { placements, told } = toldOf(screws, ['bottom']);
      expect(placements).toHaveLength(4);
      expect(told.map(({ message }) => message)).toEqual([]);
    },
  );
});

describe('room up to the walls of a space', () => {
  const item = {
    id: 'amp',
    ...{ widthM: 0.1, depthM: 0.1, heightM: 0.05, massKg: 1, terminals: [] },
    rooms: { left: { accessM: 0.076 }, right: { toolM: 0.15 } },
  };
  const ring = [
    { xM: 0, yM: 0 },
    { xM: 0.5, yM: 0 },
    { xM: 0.5, yM: 0.4 },
    { xM: 0, yM: 0.4 },
  ];
  const wall = (side: Edge, certain = true, toM = 1) => ({ ring, sides: [side], toM, certain });
  const short = (xM: number, walls: Parameters<typeof wallsShort>[1]) =>
    wallsShort(place(item, { item: 'amp', xM, yM: 0.1, turnDeg: 0, heightM: 0 }, 0.01), walls);

  test('is short below what a hand or a tool asks for, and not at it', () => {
    expect(short(0.076, [wall('left')])).toEqual({ count: 0, shortM: 0 });
    expect(short(0.066, [wall('left')]).shortM).toBeCloseTo(0.01, 9);
    expect(short(0.25, [wall('right')])).toEqual({ count: 0, shortM: 0 });
    expect(short(0.26, [wall('right')])).toMatchObject({ count: 1 });
  });

  test('counts most where a hand surely comes to no control, little where nobody said what stands there', () => {
    expect(short(0.066, [wall('left')]).count).toBeGreaterThan(short(0.066, [wall('left', false)]).count);
  });

  test('is not asked for before an open edge, nor before what stays below the part', () => {
    expect(short(0, [])).toEqual({ count: 0, shortM: 0 });
    expect(short(0.01, [wall('left', true, 0)])).toEqual({ count: 0, shortM: 0 });
    expect(short(0.01, [wall('left', true, 0.01)]).count).toBeGreaterThan(0);
  });
});
