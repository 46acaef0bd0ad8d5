import { inJob, partsFile, vehicleFile, withBoard } from '../../read/problem-case.ts';
import type { Change } from '../../read/small-shop.ts';

/** A sheet of birch plywood for the small shop, `pieces` of it on the shelf. */
export interface ShopSheet {
  readonly id: string;
  readonly mm: number;
  readonly pieces?: number;
  readonly width?: number;
  readonly material?: string;
}

/** Sheets, a screw of 25 mm and glue for the small shop. */
export function stocked(...sheets: readonly ShopSheet[]): readonly Change[] {
  const parts = sheets.map(
    ({ id, mm, width = 1500, material = 'birch-plywood' }) =>
      `  ${id}: { kind: board-sheet, title: Sheet, material: ${material}, thickness: ${mm} mm, width: ${width} mm, height: 1500 mm, grain: height, density: 680 kg/m3, modulus: 9 GPa, modulus-across: 9 GPa, shear-modulus: 3.4 GPa }\n`,
  );
  const shelf = sheets
    .filter(({ pieces = 0 }) => pieces > 0)
    .map(({ id, pieces }) => `  ${id}: { pieces: ${pieces} }\n`);
  return [
    [
      partsFile,
      '  ply-a:\n',
      `${parts.join('')}  screw-25: { kind: fixing, title: Screw, form: wood-screw, length: 25 mm, clearance: 4.4 mm, pilot: 3 mm }\n  glue-a: { kind: fixing, title: Glue, form: adhesive }\n  bolt-60: { kind: fixing, title: Bolt, form: bolt, thread: M6, length: 60 mm, clearance: 6.4 mm, holds: 400 kg }\n  ply-a:\n`,
    ],
    [
      'content/shop.yaml',
      '  large-60:',
      `${shelf.join('')}  screw-25: { pieces: 50 }\n  glue-a: { pieces: 1 }\n  large-60:`,
    ],
  ];
}

/** The amplifier of the small shop in the middle of its board, and two more points below that. */
export const onTheBoard: readonly Change[] = [
  inJob(
    'title: Bass amplifier\n    in: boot',
    'title: Bass amplifier\n    on: main\n    at: { x: 200 mm, y: 110 mm }',
  ),
  [
    vehicleFile,
    '      p2: {',
    '      p3: { x: 50 mm, y: 270 mm, stud: M6, what: rivet nut, behind: nothing }\n      p4: { x: 450 mm, y: 270 mm, stud: M6, what: rivet nut, behind: nothing }\n      p2: {',
  ],
];

/**
 * The board of the small shop, 500 x 300 mm on four points near its corners and spacers, the amplifier in its middle.
 * `lines` are those of the board: its sheet, its ribs.
 */
export function onFourPoints(lines: readonly string[], spacer = '25 mm'): readonly Change[] {
  const fixings = ['p1', 'p2', 'p3', 'p4'].map(
    (point, at) => `${'abcd'.charAt(at)}: { point: ${point}, fixing: bolt-60, spacer: ${spacer} }`,
  );
  const outline = 'outline: { rectangle: { width: 500 mm, height: 300 mm } }';
  return [
    withBoard(
      `sheet: ply-a\n    ${outline}\n    fixings: { a: { point: p1, fixing: bolt-a }, b: { point: p2, fixing: bolt-a } }`,
      [...lines, 'at: { x: 10 mm, y: 10 mm }', outline, `fixings: { ${fixings.join(', ')} }`].join('\n    '),
    ),
    ...onTheBoard,
  ];
}
