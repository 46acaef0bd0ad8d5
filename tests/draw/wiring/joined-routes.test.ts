import { expect, test } from 'vitest';
import { drawJobPages } from '../../../lib/draw/draw-job.ts';
import { drawingText } from '../../../lib/draw/surface.ts';
import type { BuildPlan, PlanJoint } from '../../../lib/model/plan/index.ts';
import { fixedPlan } from '../../boards/fixed-jobs.ts';
import { shippedMetrics } from '../lettering/shipped-metrics.ts';

/** Two turn-on wires begin at one port of this job: each enters it by itself, unless the second is joined to the first. */
const plan = fixedPlan('estate-side-well');
const [front, sub] = ['turn-on-front', 'turn-on-sub'].map((id) => plan.wires.find((wire) => wire.id === id));
const joint = (distanceM: number, part: string | null = null): PlanJoint => ({
  ...{ id: sub?.id ?? '', label: sub?.label ?? '', trunk: front?.id ?? '', trunkLabel: front?.label ?? '' },
  ...{ terminal: 'dsp.REM-OUT', distanceM, part },
});

/** The wiring sheets, each with the dots of IEC 60617 on it: a filled circle of 0.9 mm. */
function drawnWith(joints: readonly PlanJoint[]) {
  const one: BuildPlan = { ...plan, joints: [...joints] };
  return drawJobPages(one, shippedMetrics)
    .filter(({ page }) => page.documentType === 'Wiring')
    .map(({ page, drawing }) => {
      const svg = drawingText(drawing, { colours: 'resolved' });
      const dots = [...svg.matchAll(/<circle[^>]*\br="0\.9"[^>]*>/g)].map(([text]) => text);
      return { id: page.id, svg, dots };
    });
}

test('a wire that is joined to another on the board begins at a dot upon it, on the sheet of its layer alone', () => {
  expect(front?.from).toBe('dsp.REM-OUT');
  expect(sub?.from).toBe('dsp.REM-OUT');
  const bare = drawnWith([]);
  expect(bare.flatMap(({ dots }) => dots)).toEqual([]);
  const joined = drawnWith([joint(0.03)]);
  const [sheet, ...more] = joined.filter(({ dots }) => dots.length > 0);
  expect(more).toEqual([]);
  expect(sheet?.id).toMatch(/turn-on/);
  expect(sheet?.dots).toHaveLength(1);
  const [, x = '', y = ''] = /cx="([-\d.]+)" cy="([-\d.]+)"/.exec(sheet?.dots[0] ?? '') ?? [];
  expect(x).not.toBe('');
  const before = bare.find(({ id }) => id === sheet?.id)?.svg ?? '';
  expect(before).not.toContain(`M${x} ${y}`);
  expect(sheet?.svg).toContain(`M${x} ${y}`);
});

test('a joint farther from its port than the wire is long lies off the board: no dot is drawn for it', () => {
  expect(drawnWith([joint(50)]).flatMap(({ dots }) => dots)).toEqual([]);
  expect(drawnWith([joint(50)]).map(({ svg }) => svg)).toEqual(drawnWith([]).map(({ svg }) => svg));
});
