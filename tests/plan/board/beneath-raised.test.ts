import { describe, expect, test } from 'vitest';
import { boardItems } from '../../../lib/plan/board/board-items.ts';
import {
  beneathOf,
  itemsBeneath,
  raisedHeight,
  stackLimits,
} from '../../../lib/plan/board/board-stacking.ts';
import { PlanBook } from '../../../lib/plan/plan-book.ts';
import { inJob } from '../../read/problem-case.ts';
import type { Change } from '../../read/small-shop.ts';
import { byId } from '../plan-small-shop.ts';
import { addParts, inParts } from '../shop-changes.ts';
import { laidOut, oneBoard } from './one-board.ts';

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
