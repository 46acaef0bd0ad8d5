import { describe, expect, test } from 'vitest';
import { computeAnew } from '../../../lib/model/keep.ts';
import { awgSize } from '../../../lib/model/quantity/wire-size.ts';
import { fixedBarriers, routeBoards } from '../../../lib/plan/board/board-routes.ts';
import { boardWires, layoutLinks, madeLengthM, wiresOnBoard } from '../../../lib/plan/board/board-wires.ts';
import { inJob } from '../../read/problem-case.ts';
import { byId } from '../plan-small-shop.ts';
import { inParts } from '../shop-changes.ts';
import { laidOut, type OneBoard, oneBoard } from './one-board.ts';

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
  const [routed] = routeBoards(job, laid, new Map(), roles, { isDraft: true, keep: computeAnew });
  const asked = wiresOnBoard(job, board, boardWires(job, board, roles), () => undefined);
  expect(routed?.routes.length).toBe(asked.length);
  for (const { wire, diameterM, bendRadiusM, along } of routed?.routes ?? []) {
    const own = byId(asked, wire);
    expect({ diameterM, bendRadiusM }).toEqual({ diameterM: own.diameterM, bendRadiusM: own.bendRadiusM });
    expect(along).toEqual(own.along.map(({ link }) => link));
  }
});

test('wires go round the heads of fixings and round the ribs of their face', () => {
  const found = oneBoard([
    'sheet: ply-12',
    'ribs: { r1: { edge: bottom, distance: 150 mm, height: 20 mm, face: mounting } }',
  ]);
  const barriers = fixedBarriers(found.job, laidOut(found));
  expect(barriers.map(({ id }) => id)).toEqual(expect.arrayContaining(['a', 'b', 'c', 'd', 'rib r1']));
});
