import type { ICircleEntity, IPolylineEntity } from 'dxf-parser';
import { describe, expect, it } from 'vitest';
import { nestedFiles } from '../../../lib/export/exporters/nest.ts';
import { letterStock } from '../../../lib/export/labels/label-stock.ts';
import type { BuildPlan } from '../../../lib/model/plan/index.ts';
import { flattenPolygon } from '../../board/shapes.ts';
import { shippedMetrics } from '../../draw/lettering/shipped-metrics.ts';
import { samplePlan } from '../../publish/sample/sample-plan.ts';
import { roundedBoard } from '../board-of.ts';
import { parseDxf } from '../machine/parse-dxf.ts';

const choices = { unit: 'mm', paper: 'Letter', labelStock: letterStock } as const;
const job = (id: string): BuildPlan => {
  const plan = samplePlan({ boards: [roundedBoard()] });
  return { ...plan, job: { ...plan.job, id } };
};
const files = nestedFiles([job('one'), job('two')], { metrics: shippedMetrics, choices });
const textOf = (ending: string): string =>
  String(files.find(({ name }) => name.endsWith(ending))?.content ?? '');

describe('the nest of two jobs', () => {
  it('is SVG and DXF of each sheet and a table', () => {
    expect(files.map(({ name }) => name.replace(/^nest-/, ''))).toEqual([
      'birch-12-1.svg',
      'birch-12-1-mm.dxf',
      'pieces.csv',
    ]);
    expect(textOf('.svg')).toContain('one, revision B');
    expect(textOf('.svg')).toContain('two, revision B');
  });

  it('gives dxf-parser the area of both boards and every hole, inside the stock sheet', () => {
    const { entities, header } = parseDxf(textOf('.dxf'));
    const cut = entities.filter(
      (entity): entity is IPolylineEntity => entity.type === 'POLYLINE' && entity.layer === 'CUT',
    );
    const loops = cut.map(({ vertices }) =>
      vertices.map(({ x, y, bulge }) => ({ xM: x / 1000, yM: y / 1000, bulge: bulge ?? 0 })),
    );
    const { outline, cutouts } = roundedBoard();
    const both = [outline, ...cutouts].map((loop) => flattenPolygon(loop).area());
    const found = loops.map((loop) => flattenPolygon(loop).area());
    // Areas by @flatten-js/core, which has no code in common with ours.
    for (const [nth, area] of [...both, ...both].entries()) expect(found[nth]).toBeCloseTo(area, 9);
    const circles = entities.filter((entity): entity is ICircleEntity => entity.type === 'CIRCLE');
    expect(circles).toHaveLength(4);
    const places = loops.flat();
    expect(Math.min(...places.map(({ xM, yM }) => Math.min(xM, yM)))).toBeGreaterThanOrEqual(0.01 - 1e-9);
    expect(header.$EXTMAX).toMatchObject({
      x: expect.closeTo(1000 * Math.max(...places.map(({ xM }) => xM)), 3),
      y: expect.closeTo(1000 * Math.max(...places.map(({ yM }) => yM)), 3),
    });
  });

  it('keeps the boards apart by the saw cut', () => {
    const rows = textOf('.csv')
      .trim()
      .split('\r\n')
      .map((row) => row.split(','));
    const [titles = [], ...body] = rows;
    const field = (row: readonly string[], name: string): number => Number(row[titles.indexOf(name)]);
    const boards = body.filter((row) => row[titles.indexOf('piece')]?.endsWith('.main-board'));
    const [a = [], b = []] = boards;
    expect(boards).toHaveLength(2);
    const gaps = (['x', 'y'] as const).flatMap((axis) => {
      const size = axis === 'x' ? 'width_m' : 'height_m';
      const [from, to] = [field(a, `${axis}_m`), field(b, `${axis}_m`)];
      return [to - from - field(a, size), from - to - field(b, size)];
    });
    expect(Math.max(...gaps)).toBeGreaterThanOrEqual(0.0032 - 1e-9);
  });
});
