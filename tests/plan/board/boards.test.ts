import { describe, expect, test } from 'vitest';
import type { PlanBoard } from '../../../lib/model/plan/index.ts';
import { inJob, withBoard } from '../../read/problem-case.ts';
import type { Change } from '../../read/small-shop.ts';
import { byId, smallPlan } from '../plan-small-shop.ts';
import { inParts } from '../shop-changes.ts';

const onBoard = (more = ''): Change =>
  inJob(
    'title: Bass amplifier\n    in: boot',
    `title: Bass amplifier\n    on: main\n    at: { x: 100 mm, y: 50 mm }${more}`,
  );
const boardOf = (...changes: readonly Change[]): PlanBoard =>
  byId(smallPlan(withBoard(), ...changes).plan.boards, 'main');

const panels = [
  inParts(
    'B+: { role: supply-positive, joint: set-screw, takes: { from: 8 AWG, to: 4 AWG } }\n      GND: { role: supply-negative, joint: set-screw, takes: { from: 8 AWG, to: 4 AWG } }\n      REM: { role: turn-on-in }\n      IN1: { role: signal-in, joint: phono, signal: 4 V }',
    'B+: { role: supply-positive, panel: right, joint: set-screw, takes: { from: 8 AWG, to: 4 AWG } }\n      GND: { role: supply-negative, joint: set-screw, takes: { from: 8 AWG, to: 4 AWG } }\n      REM: { role: turn-on-in }\n      IN1: { role: signal-in, panel: left, joint: phono, signal: 4 V }',
  ),
  inParts(
    "    channels:\n      '1': { positive: CH1+",
    "    air: { top: 40 mm }\n    cooling: { top: fins, bottom: fan }\n    channels:\n      '1': { positive: CH1+",
  ),
];

/** Metres, so that a sheet's words do not matter here. */
const inch = 0.0254;

describe('room to keep clear round an item', () => {
  // Common practice, no source: fan face 2 in, plugs 2 in, power bend 3 in, knobs 3 in, set screws 6 in straight.
  const unturned = [
    { kind: 'air', side: 'top', depthM: 0.04 },
    { kind: 'air', side: 'bottom', depthM: 2 * inch },
    { kind: 'connector', side: 'left', depthM: 2 * inch },
    { kind: 'control', side: 'left', depthM: 3 * inch },
    { kind: 'connector', side: 'right', depthM: 3 * inch },
    { kind: 'tool', side: 'right', depthM: 6 * inch },
  ];
  const rooms = (board: PlanBoard) => board.placements[0]?.keepClear ?? [];

  test('is what its maker asks for, else what the house rules ask for', () => {
    const found = rooms(boardOf(...panels, onBoard()));
    expect(found).toHaveLength(unturned.length);
    expect(found).toEqual(expect.arrayContaining(unturned));
  });

  test('turns with the item: a quarter turn counter-clockwise takes right to top', () => {
    const turned: Record<string, string> = { right: 'top', top: 'left', left: 'bottom', bottom: 'right' };
    const found = rooms(boardOf(...panels, onBoard('\n    turn: 90')));
    expect(found).toHaveLength(unturned.length);
    expect(found).toEqual(
      expect.arrayContaining(unturned.map((room) => ({ ...room, side: turned[room.side] }))),
    );
  });

  test('tells who asks for it', () => {
    const { plan } = smallPlan(withBoard(), ...panels, onBoard());
    const trace = (id: string) => plan.traces[`boards.main.placements.amp.keepClear.${id}`];
    expect(trace('top.air')).toMatchObject({ origin: 'given', value: 0.04 });
    expect(trace('bottom.air')).toMatchObject({ origin: 'assumed', rule: 'gap-fan', mark: 'cp' });
  });
});

describe('a board as it is cut', () => {
  const outline = 'outline: { rectangle: { width: 500 mm, height: 300 mm }';

  test('has its edge profile, and its grain where both the board and the sheet have one', () => {
    const worked = withBoard(
      outline,
      `${outline}, edge-profile: { kind: chamfer, size: 1/8 in }, grain: upright`,
    );
    const { plan } = smallPlan(
      worked,
      inParts('    kind: board-sheet\n', '    kind: board-sheet\n    grain: height\n'),
    );
    expect(byId(plan.boards, 'main')).toMatchObject({
      edgeProfile: { kind: 'chamfer', sizeM: 0.003175 },
      grain: 'upright',
      sheetGrain: 'height',
    });
  });

  test('has rails below what is raised and pads below its fixings, with what is left to pack', () => {
    const spaced = withBoard('fixing: bolt-a }, b', 'fixing: bolt-a, spacer: 1 in }, b');
    const { plan } = smallPlan(spaced, onBoard('\n    raised: 1 in'));
    const { pieces, thicknessM } = byId(plan.boards, 'main');
    expect(pieces.map(({ carries, form }) => [carries, form])).toEqual([
      ['amp', 'edge-rail'],
      ['a', 'pad'],
    ]);
    const pad = pieces.find(({ form }) => form === 'pad');
    expect(pad?.packM).toBeCloseTo(inch - (pad?.layers ?? 0) * thicknessM, 9);
    expect(plan.pick.find(({ kind }) => kind === 'board-sheet')?.quantity).toBe(1);
  });

  test('too large for its stock sheet stops the job', () => {
    const { remarks } = smallPlan(withBoard('width: 500 mm', 'width: 5000 mm'));
    const found = remarks.find(({ rule }) => rule === 'piece-larger-than-sheet');
    expect(found?.level).toBe('stop');
  });
});
