import { describe, expect, it } from 'vitest';
import type { Item, Placement, TurnDeg } from '../../../lib/board/layout/item.ts';
import { settingOf } from '../../../lib/board/layout/layout-setting.ts';
import type { Link } from '../../../lib/board/layout/score/links.ts';
import { sitesOfProposal } from '../../../lib/board/propose/proposal-sites.ts';
import { tidyLayouts } from '../../../lib/board/propose/tidy-layouts.ts';
import { bestTurned, compareLaid, singleTurns } from '../../../lib/board/propose/turned-layouts.ts';
import { compareOnce, wiredLayout } from '../../../lib/board/propose/wired-layout.ts';
import { wiredProposals } from '../../../lib/board/propose/wired-proposals.ts';
import { madeUpBoard } from '../../../lib/commands/bench/made-up-board.ts';
import { caseCount } from '../../long-run.ts';
import { shapeOf } from '../shapes.ts';
import { usualRouting, usualScore } from '../usual-board.ts';

type Task = Parameters<typeof settingOf>[0];

/** A task with how its layouts are wired, all wires of one diameter (m). */
function wiringOf(task: Task, diameterM: number) {
  const setting = settingOf(task, usualScore, usualScore.house.stepM);
  const wires = task.links.map(({ id, from, to, layer }) => {
    return { id, layer, diameterM, along: [{ link: id, from, to }] };
  });
  const wiring = { shape: task.board.shape, items: task.items, barriers: [], wires, house: usualRouting };
  const as = (how: 'once' | 'for-good') => (sites: Parameters<typeof wiredLayout>[3]) =>
    wiredLayout(setting, wiring, task.given, sites, how);
  return { setting, wiring, ways: { once: as('once'), forGood: as('for-good') } };
}

const amp: Item = {
  ...{ id: 'amp', widthM: 0.2, depthM: 0.15, heightM: 0.06, massKg: 3, kind: 'amplifier', rooms: {} },
  terminals: ['B+', 'GND', 'REM'].map((id, at) => {
    return { id, side: 'left', alongM: 0.04 + 0.03 * at, layer: 'power' };
  }),
};
const bar: Item = {
  ...{ id: 'bar', widthM: 0.05, depthM: 0.15, heightM: 0.03, massKg: 1, kind: 'distribution', rooms: {} },
  shares: 'feed',
  terminals: ['1', '2', '3'].map((id, at) => {
    return { id, side: 'left', alongM: 0.04 + 0.03 * at, layer: 'power' };
  }),
};
const links = ['B+', 'GND', 'REM'].map((terminal, at): Link => {
  return {
    id: `w${at}`,
    from: { item: 'amp', terminal },
    to: { item: 'bar', terminal: String(3 - at) },
    layer: 'power',
  };
});

describe('turning single parts', () => {
  it('turns a bar whose ports face away from the amplifier that it serves', () => {
    const task = {
      board: { shape: shapeOf({ rectangle: { width: '800 mm', height: '400 mm' } }) },
      items: [amp, bar],
      given: [],
      links,
    };
    const { setting, ways } = wiringOf(task, 0.004);
    const at = (item: string, xM: number, turnDeg: TurnDeg): Placement => {
      return { item, xM, yM: 0.127, turnDeg, heightM: 0 };
    };
    const placements = [at('amp', 0.4572, 0), at('bar', 0.254, 0)];
    const sites = sitesOfProposal(setting, { placements, score: ways.once([]).proposal.score });
    const start = { once: ways.once(sites), forGood: ways.forGood(sites) };
    const { best } = bestTurned(setting, start, ways);
    // Ports on its left side face the amplifier to its right once it is turned by half a circle.
    expect(best.forGood.proposal.placements.map(({ turnDeg }) => turnDeg)).toEqual([0, 180]);
    expect(best.forGood.trial.bends).toBeLessThan(start.forGood.trial.bends);
  });

  it('leaves no single turn that is lawful and better on boards made up', () => {
    for (let n = 0; n < caseCount({ all: 20, some: 1 }); n += 1) {
      const board = madeUpBoard(4711 + n);
      if (!board) throw new Error(`The board ${4711 + n} can not be drawn.`);
      const { shape, items, links: wires } = board;
      const task = { board: { shape }, items, given: [], links: wires };
      const { setting, wiring, ways } = wiringOf(task, 0.004);
      const found = tidyLayouts(task, { layerM: 0, topM: 0 }, { rules: usualScore });
      const { proposals } = wiredProposals({ task, rules: usualScore, proposals: found.proposals, wiring });
      const [proposed] = proposals;
      if (!proposed) throw new Error('Nothing was proposed.');
      // What is proposed is the number that its place has once it is written in the job.
      for (const { xM, yM } of proposed.placements)
        expect([Number(xM.toFixed(9)), Number(yM.toFixed(9))]).toEqual([xM, yM]);
      const sites = sitesOfProposal(setting, proposed);
      const best = { once: ways.once(sites), forGood: ways.forGood(sites) };
      for (const turned of singleTurns(setting, sites)) {
        const once = ways.once(turned);
        if (compareOnce(once, best.once) >= 0) continue;
        expect(compareLaid({ once, forGood: ways.forGood(turned) }, best)).toBeGreaterThanOrEqual(0);
      }
    }
  }, 600_000);
});
