import { describe, expect, test } from 'vitest';
import { readContent } from '../../lib/read/read-content.ts';
import { expectProblem, type ProblemCase, partsFile, withBoard } from './problem-case.ts';
import { smallShop } from './small-shop.ts';

const withRib = (rib: string) => withBoard('fixings:', `ribs: { r1: ${rib} }\n    fixings:`);

const cases: readonly ProblemCase[] = [
  {
    name: 'a rib of a sheet that is not there',
    changes: [withRib('{ edge: bottom, distance: 60 mm, height: 20 mm, sheet: ^ply-b }')],
    says: /there is no part "ply-b"/,
    remedy: /ply-a/,
  },
  {
    name: 'a rib cut from wire',
    changes: [withRib('{ edge: bottom, distance: 60 mm, height: 20 mm, sheet: ^red-4 }')],
    says: /"red-4" is not a board sheet but a wire/,
  },
  {
    name: 'a rib that nobody says where it runs',
    changes: [withRib('^{ height: 20 mm }')],
    says: /needs edge and distance, or from and to/,
  },
  {
    name: 'a rib that runs two ways',
    changes: [
      withRib('^{ edge: bottom, distance: 60 mm, from: [0 mm, 0 mm], to: [90 mm, 0 mm], height: 20 mm }'),
    ],
    says: /and not both/,
  },
  {
    name: 'a rib with a start and no length',
    changes: [withRib('^{ edge: bottom, distance: 60 mm, start: 20 mm, height: 20 mm }')],
    says: /start and length together/,
  },
  {
    name: 'a rib without length',
    changes: [withRib('^{ from: [90 mm, 0 mm], to: [90 mm, 0 mm], height: 20 mm }')],
    says: /starts where it ends/,
  },
  {
    name: 'a rib of no height',
    changes: [withRib('{ edge: bottom, distance: 60 mm, height: ^0 mm }')],
    says: /not above zero/,
  },
  {
    name: 'a rib along an edge that no board has',
    changes: [withRib('{ edge: ^front, distance: 60 mm, height: 20 mm }')],
    says: /not a side of the board/,
  },
  {
    name: 'a rib on no face',
    changes: [withRib('{ edge: bottom, distance: 60 mm, height: 20 mm, face: ^back }')],
    says: /write rear or mounting/,
  },
  {
    name: 'a rib that is nailed',
    changes: [withRib('{ edge: bottom, distance: 60 mm, height: 20 mm, joint: ^nailed }')],
    says: /write screwed or glued/,
  },
];

describe('a rib that can not be read', () => {
  test.each(cases)('$name', expectProblem);
});

test('a sheet left open in a catalogue without sheets is told at the board', () => {
  const files = smallShop(withBoard('sheet: ply-a', 'title: Main'), [
    partsFile,
    '    kind: board-sheet\n    title: Plywood\n    material: birch-plywood\n    thickness: 18 mm\n    width: 1500 mm\n    height: 1500 mm\n    density: 680 kg/m3\n    modulus: 9 GPa\n',
    '    kind: fixing\n    title: Washer\n    form: washer\n',
  ]);
  const { problems } = readContent(files);
  expect(problems.map(({ message }) => message)).toEqual([
    expect.stringMatching(/the sheet is left open, and the catalogue has no board sheet/),
  ]);
  expect(problems[0]?.where.path).toBe('/boards/main');
});
