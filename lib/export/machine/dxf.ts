import type { OutlinePoint } from '../../model/plan/index.ts';
import { fullSizeView } from './full-size.ts';
import type { BoardPlace, DrilledHole, MachinePaths } from './machine-paths.ts';

export type DxfUnit = 'mm' | 'inch';

/** Units of a metre, the code of $INSUNITS and of $MEASUREMENT (DXF reference: 1 inches, 4 millimetres). */
const units = {
  mm: { perMetre: 1000, insUnits: 4, measurement: 1 },
  inch: { perMetre: 1 / 0.0254, insUnits: 1, measurement: 0 },
} as const satisfies Record<DxfUnit, object>;

/** Layers with the colour that tells them apart on a screen (DXF colour numbers: 1 red, 5 blue, 7 black or white). */
const layers = { CUT: 1, DRILL: 5, ENGRAVE: 7 } as const;
type Layer = keyof typeof layers;

type Pair = readonly [code: number, value: string | number];

/**
 * A drawing as DXF release 12 (AC1009), ASCII: loops as closed polylines on CUT with arcs as bulges, holes as
 * circles on DRILL (a point where the diameter is not known), marks as open polylines on ENGRAVE. Origin at the
 * board's datum, x right, y up, seen from the mounting side. `remarks` stand as comments at its head.
 */
export function dxfText(paths: MachinePaths, unit: DxfUnit, remarks: readonly string[]): string {
  const { perMetre } = units[unit];
  const entities = [
    ...paths.cut.flatMap((loop) => polyline('CUT', loop, true, perMetre)),
    ...paths.drill.flatMap((hole) => drilled(hole, perMetre)),
    ...paths.engrave.flatMap((run) => polyline('ENGRAVE', run, false, perMetre)),
  ];
  const pairs: Pair[] = [
    ...remarks.map((remark): Pair => [999, oneLine(remark)]),
    ...section('HEADER', header(paths, unit)),
    ...section('TABLES', tables()),
    ...section('BLOCKS', []),
    ...section('ENTITIES', entities),
    [0, 'EOF'],
  ];
  return `${pairs.map(([code, value]) => `${String(code).padStart(3)}\r\n${valueText(code, value)}`).join('\r\n')}\r\n`;
}

function header({ cut }: MachinePaths, unit: DxfUnit): Pair[] {
  const { perMetre, insUnits, measurement } = units[unit];
  const scale = perMetre / 1000;
  const boxes = cut.map((loop) => {
    const { view, widthMm, heightMm } = fullSizeView(loop);
    const [leftMm, lowMm] = [-view.datum.xMm, view.datum.yMm - heightMm];
    return { leftMm, lowMm, rightMm: leftMm + widthMm, highMm: lowMm + heightMm };
  });
  const extent = (of: (box: (typeof boxes)[number]) => number, pick: (...all: number[]) => number): number =>
    boxes.length === 0 ? 0 : pick(...boxes.map(of)) * scale;
  return [
    [9, '$ACADVER'],
    [1, 'AC1009'],
    [9, '$INSBASE'],
    ...point(0, 0),
    [9, '$EXTMIN'],
    ...point(
      extent(({ leftMm }) => leftMm, Math.min),
      extent(({ lowMm }) => lowMm, Math.min),
    ),
    [9, '$EXTMAX'],
    ...point(
      extent(({ rightMm }) => rightMm, Math.max),
      extent(({ highMm }) => highMm, Math.max),
    ),
    [9, '$INSUNITS'],
    [70, insUnits],
    [9, '$MEASUREMENT'],
    [70, measurement],
  ];
}

function tables(): Pair[] {
  const lineType: Pair[] = [
    [0, 'LTYPE'],
    [2, 'CONTINUOUS'],
    [70, 0],
    [3, 'Solid line'],
    [72, 65],
    [73, 0],
    [40, 0],
  ];
  const layerRows = Object.entries(layers).flatMap(([name, colour]): Pair[] => [
    [0, 'LAYER'],
    [2, name],
    [70, 0],
    [62, colour],
    [6, 'CONTINUOUS'],
  ]);
  return [...table('LTYPE', 1, lineType), ...table('LAYER', Object.keys(layers).length, layerRows)];
}

function table(name: string, rows: number, body: readonly Pair[]): Pair[] {
  return [[0, 'TABLE'], [2, name], [70, rows], ...body, [0, 'ENDTAB']];
}

function section(name: string, body: readonly Pair[]): Pair[] {
  return [[0, 'SECTION'], [2, name], ...body, [0, 'ENDSEC']];
}

type Corner = BoardPlace & Partial<Pick<OutlinePoint, 'bulge'>>;

function polyline(layer: Layer, corners: readonly Corner[], closed: boolean, perMetre: number): Pair[] {
  const vertices = corners.flatMap(({ xM, yM, bulge = 0 }): Pair[] => [
    [0, 'VERTEX'],
    [8, layer],
    ...point(xM * perMetre, yM * perMetre),
    ...(bulge === 0 ? [] : [[42, bulge] as const]),
  ]);
  return [
    [0, 'POLYLINE'],
    [8, layer],
    [66, 1],
    ...point(0, 0),
    [70, closed ? 1 : 0],
    ...vertices,
    [0, 'SEQEND'],
    [8, layer],
  ];
}

function drilled({ xM, yM, diameterM }: DrilledHole, perMetre: number): Pair[] {
  const place = point(xM * perMetre, yM * perMetre);
  if (diameterM <= 0) return [[0, 'POINT'], [8, 'DRILL'], ...place];
  return [[0, 'CIRCLE'], [8, 'DRILL'], ...place, [40, (diameterM / 2) * perMetre]];
}

function point(x: number, y: number): Pair[] {
  return [
    [10, x],
    [20, y],
    [30, 0],
  ];
}

/** Codes 10 to 59 hold real numbers, which are written with a decimal point; the others are whole or text. */
function valueText(code: number, value: string | number): string {
  if (typeof value === 'string') return value;
  if (code < 10 || code > 59) return String(value);
  const digits = (Number(value.toFixed(8)) + 0).toFixed(8).replace(/0+$/, '');
  return digits.endsWith('.') ? `${digits}0` : digits;
}

/** DXF is a list of lines, and release 12 knows ASCII only. */
function oneLine(text: string): string {
  return text.replace(/[^\x20-\x7e]/g, '?');
}
