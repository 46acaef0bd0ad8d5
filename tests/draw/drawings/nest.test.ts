import { describe, expect, test } from 'vitest';
import { drawJob } from '../../../lib/draw/draw-job.ts';
import type { BuildPlan, PlanBoard } from '../../../lib/model/plan/index.ts';
import { shippedMetrics } from '../../../lib/publish/site/shipped-metrics.ts';
import { fixedPlan } from '../../boards/fixed-jobs.ts';

const plan = fixedPlan('estate-side-well');

/** The nesting of a plan whose stock has the grain along one of its sides, or none. */
function nested(sheetGrain: PlanBoard['sheetGrain'], from: BuildPlan = plan): string {
  const boards = from.boards.map((board) => ({ ...board, sheetGrain }));
  const [drawn] = drawJob({ ...from, boards }, shippedMetrics()).filter(({ id }) => id.startsWith('nest-'));
  if (!drawn) throw new Error('nothing is nested');
  return drawn.svg;
}

/** The first and the last point of the arrow of the grain; null where none is drawn. */
function arrow(svg: string): { readonly wideMm: number; readonly highMm: number } | null {
  const [, group = ''] = /<g id="[^"]*grain"[^>]*>(.*?)<\/g>/s.exec(svg) ?? [];
  const [, d = ''] = /<path[^>]* d="([^"]*)"/.exec(group) ?? [];
  const [x1, y1, x2, y2] = (d.match(/-?[\d.]+/g) ?? []).map(Number);
  if (x1 === undefined || y1 === undefined || x2 === undefined || y2 === undefined) return null;
  return { wideMm: Math.abs(x2 - x1), highMm: Math.abs(y2 - y1) };
}

describe('the nesting of a sheet with a grain', () => {
  const [board] = plan.boards;
  const longer = (board?.sheetWidthM ?? 0) >= (board?.sheetHeightM ?? 0) ? 'width' : 'height';
  const shorter = longer === 'width' ? 'height' : 'width';

  test('shows its way by an arrow: along the longer side it lies, along the shorter one it stands', () => {
    const level = nested(longer);
    expect(level).toContain('>GRAIN<');
    expect(arrow(level)).toMatchObject({ highMm: 0 });
    expect(arrow(level)?.wideMm).toBeGreaterThan(10);
    expect(level).toContain('Grain runs from left to right');
    const upright = nested(shorter);
    expect(arrow(upright)).toMatchObject({ wideMm: 0 });
    expect(arrow(upright)?.highMm).toBeGreaterThan(10);
    expect(upright).toContain('Grain runs upwards');
  });

  test('has no arrow where the sheet has no grain', () => {
    const none = nested(null);
    expect(none).not.toContain('>GRAIN<');
    expect(arrow(none)).toBeNull();
  });
});
