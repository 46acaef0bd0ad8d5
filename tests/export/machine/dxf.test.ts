import type { ICircleEntity, IDxf, IPointEntity, IPolylineEntity } from 'dxf-parser';
import fc from 'fast-check';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import type { Loop } from '../../../lib/board/shape/bulge.ts';
import { type DxfUnit, dxfText } from '../../../lib/export/machine/dxf.ts';
import { machinePaths } from '../../../lib/export/machine/machine-paths.ts';
import { machineSvg } from '../../../lib/export/machine/machine-svg.ts';
import type { PlanBoard } from '../../../lib/model/plan/index.ts';
import { flattenPolygon, outlines } from '../../board/shapes.ts';
import { boardOf, roundedBoard } from '../board-of.ts';
import { parseDxf } from './parse-dxf.ts';

/** Metres of a unit: the inch is 25.4 mm exactly (NIST SP 811). */
const metres = { mm: 0.001, inch: 0.0254 } as const satisfies Record<DxfUnit, number>;

function readBack(board: PlanBoard, unit: DxfUnit = 'mm'): IDxf {
  return parseDxf(dxfText(machinePaths(board), unit, ['a remark']));
}

const isPolyline = (entity: IDxf['entities'][number]): entity is IPolylineEntity =>
  entity.type === 'POLYLINE';
const isCircle = (entity: IDxf['entities'][number]): entity is ICircleEntity => entity.type === 'CIRCLE';
const isPoint = (entity: IDxf['entities'][number]): entity is IPointEntity => entity.type === 'POINT';

/** The loops of a layer, in metres. */
function loopsOf({ entities }: IDxf, layer: string, unit: DxfUnit): Loop[] {
  const factor = metres[unit];
  return entities
    .filter(isPolyline)
    .filter((entity) => entity.layer === layer)
    .map(({ vertices }) =>
      vertices.map(({ x, y, bulge }) => ({ xM: x * factor, yM: y * factor, bulge: bulge ?? 0 })),
    );
}

/** Area of loops by @flatten-js/core, which has no code in common with ours. */
function areaOf(loops: readonly Loop[]): number {
  const [outer, ...openings] = loops.map((loop) => flattenPolygon(loop).area());
  return (outer ?? 0) - openings.reduce((sum, area) => sum + area, 0);
}

describe('dxf', () => {
  it.each(['mm', 'inch'] as const)('gives dxf-parser the area and the holes of the plan, in %s', (unit) => {
    const board = roundedBoard();
    const read = readBack(board, unit);
    const planned = areaOf([board.outline, ...board.cutouts]);
    // 600 x 400 less four corners, the notch, the slot and the window, by hand: plane areas.
    const slot = 0.07 * 0.02 + Math.PI * 0.01 ** 2;
    const window = 0.1 * 0.06 - (4 - Math.PI) * 0.008 ** 2;
    const byHand = 0.6 * 0.4 - (4 - Math.PI) * 0.03 ** 2 - 0.08 * 0.05 - slot - window;
    expect(areaOf(loopsOf(read, 'CUT', unit))).toBeCloseTo(planned, 9);
    expect(planned).toBeCloseTo(byHand, 5);
    const factor = metres[unit];
    const circles = read.entities.filter(isCircle);
    expect(circles.map(({ layer }) => layer)).toEqual(['DRILL', 'DRILL']);
    for (const [index, { center, radius }] of circles.entries()) {
      const hole = board.holes[index];
      expect(center.x * factor).toBeCloseTo(hole?.xM ?? Number.NaN, 9);
      expect(center.y * factor).toBeCloseTo(hole?.yM ?? Number.NaN, 9);
      expect(2 * radius * factor).toBeCloseTo(hole?.diameterM ?? Number.NaN, 9);
    }
  });

  it('marks a hole of unknown diameter by a point, not by a circle of nothing', () => {
    const [point, ...others] = readBack(roundedBoard()).entities.filter(isPoint);
    expect(point?.position).toMatchObject({ x: 500, y: 300 });
    expect(point?.layer).toBe('DRILL');
    expect(others).toEqual([]);
  });

  it('says its release, its unit and how far it reaches, as the DXF reference has them', () => {
    const header = readBack(roundedBoard()).header;
    expect(header.$ACADVER).toBe('AC1009');
    expect(header.$INSUNITS).toBe(4);
    expect(header.$EXTMIN).toMatchObject({ x: 0, y: 0 });
    expect(header.$EXTMAX).toMatchObject({ x: 600, y: 400 });
    expect(readBack(roundedBoard(), 'inch').header.$INSUNITS).toBe(1);
  });

  it('keeps every tool on a layer of its own, and closes what is cut', () => {
    const read = readBack(roundedBoard());
    expect(Object.keys(read.tables.layer.layers).sort()).toEqual(['CUT', 'DRILL', 'ENGRAVE']);
    const cut = read.entities.filter(isPolyline).filter(({ layer }) => layer === 'CUT');
    expect(cut.map(({ shape }) => shape)).toEqual([true, true, true]);
  });

  it('is ASCII in lines of CR LF, whatever a remark holds', () => {
    const text = dxfText(machinePaths(roundedBoard()), 'mm', ['Zürich\r\n  0\r\nEOF']);
    expect(text).toMatch(/^[\x20-\x7e\r\n]*$/);
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    expect(parseDxf(text).entities.length).toBeGreaterThan(3);
  });

  it('keeps the area of any outline, and so does the other library', () => {
    fc.assert(
      fc.property(outlines, (outline) => {
        const board = boardOf(outline);
        const planned = areaOf([board.outline, ...board.cutouts]);
        expect(areaOf(loopsOf(readBack(board), 'CUT', 'mm'))).toBeCloseTo(planned, 8);
      }),
      { numRuns: 60, seed: 4 },
    );
  });

  it('looks the same as the full-size SVG, both rendered by librsvg', async () => {
    const board = roundedBoard();
    const [ours, theirs] = await Promise.all(
      [machineSvg(board, []), drawnFrom(readBack(board))].map((svg) => raster(svg)),
    );
    if (!ours || !theirs) throw new Error('nothing was rendered');
    expect(ours.length).toBe(theirs.length);
    const differing = ours.filter((value, index) => Math.abs(value - (theirs[index] ?? 0)) > 64).length;
    const inked = ours.filter((value) => value < 128).length;
    expect(inked).toBeGreaterThan(1000);
    expect(differing / inked).toBeLessThan(0.02);
  });
});

/** A picture of what the parser read, drawn by this test: arcs as many chords. */
function drawnFrom(read: IDxf): string {
  const loops = ['CUT', 'ENGRAVE'].flatMap((layer) =>
    loopsOf(read, layer, 'mm').map((loop) => ({ loop, closed: layer === 'CUT' })),
  );
  const paths = loops.map(({ loop, closed }) => {
    const points = loop.flatMap((from, index) => {
      const to = loop[(index + 1) % loop.length];
      return to && (closed || index < loop.length - 1) ? chords(from, to) : [[from.xM, from.yM] as const];
    });
    return `<path d="M${points.map(([x, y]) => `${x * 1000} ${400 - y * 1000}`).join('L')}${closed ? 'Z' : ''}"/>`;
  });
  const circles = read.entities
    .filter(isCircle)
    .map(({ center, radius }) => `<circle cx="${center.x}" cy="${400 - center.y}" r="${radius}"/>`);
  const crosses = read.entities
    .filter(isPoint)
    .map(({ position: { x, y } }) => `<path d="M${x - 2} ${400 - y}h4M${x} ${398 - y}v4"/>`);
  return `<svg xmlns="http://www.w3.org/2000/svg" width="600mm" height="400mm" viewBox="0 0 600 400" fill="none" stroke="#000" stroke-width="0.1">${[...paths, ...circles, ...crosses].join('')}</svg>`;
}

/** Points of an edge from its bulge by turning the chord's start about it: tangent of a quarter of the angle. */
function chords(from: Loop[number], to: Loop[number]): (readonly [number, number])[] {
  if (from.bulge === 0) return [[from.xM, from.yM]];
  const quarter = Math.atan(from.bulge);
  return Array.from({ length: 32 }, (_, index) => {
    // The inscribed angle over the chord is constant: a point at share s is seen at angles that sum to it.
    const first = 2 * quarter * (1 - index / 32);
    const chord = Math.hypot(to.xM - from.xM, to.yM - from.yM);
    const away = (chord * Math.sin(2 * quarter - first)) / Math.sin(2 * quarter);
    const slope = Math.atan2(to.yM - from.yM, to.xM - from.xM) - first;
    return [from.xM + away * Math.cos(slope), from.yM + away * Math.sin(slope)] as const;
  });
}

async function raster(svg: string): Promise<Uint8Array> {
  const thick = svg
    .replaceAll('stroke-width="0.1"', 'stroke-width="0.8"')
    .replaceAll(/#ff0000|#0000ff/g, '#000000');
  const picture = sharp(Buffer.from(thick), { density: 72 }).flatten({ background: '#ffffff' }).greyscale();
  return new Uint8Array(await picture.raw().toBuffer());
}
