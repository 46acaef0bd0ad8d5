import type { NestedSheet } from '../../board/cut/nesting.ts';
import { cutFrom, type JobNesting, nestedGrain, nestedName, nestJobs } from '../../board/cut/sheet-pieces.ts';
import type { BuildPlan } from '../../model/plan/index.ts';
import { lengthStyle } from '../../model/quantity/length-text.ts';
import { sheetRooms } from '../board/scaled-sheet.ts';
import type { TextMetrics } from '../lettering/text-metrics.ts';
import { nestLayout, nestNotes } from '../nest/nest-layout.ts';
import type { NestScene } from '../nest/nest-list.ts';
import { paintNest } from '../nest/nest-paint.ts';
import { drawPage, type Page } from '../page.ts';
import type { DrawingKind } from './kind.ts';

/** Nesting: every stock sheet of a job, with the boards, rails, pads and ribs that are cut from it and the off-cuts to keep. */
export const nest: DrawingKind = {
  sheet: 'risers',
  pages: (plan, metrics) => {
    const nesting = nestJobs([plan]);
    return nesting.sheets.map((sheet) => drawPage(plan, metrics, nestPage(plan, metrics, nesting, sheet)));
  },
};

function nestPage(plan: BuildPlan, metrics: TextMetrics, nesting: JobNesting, sheet: NestedSheet): Page {
  const from = cutFrom(plan.boards).find((each) => each.sheet === sheet.stock.sheet);
  const scene: NestScene = {
    nesting,
    sheet,
    style: lengthStyle(plan.shop),
    grain: nestedGrain(plan.boards, sheet),
  };
  const { stock, copy, pieces } = sheet;
  const left = nesting.unplaced.map(({ id }) => `${id}: fits on no sheet`);
  const base = {
    id: `nest-${stock.id}-${copy}`,
    title: `Nesting: ${nestedName(sheet)}`,
    subject: (from?.material ?? '').replaceAll('-', ' '),
    documentType: 'Nesting',
    description: `${nestedName(sheet)}, with ${pieces.length} pieces and ${sheet.offCuts.length} off-cuts to keep.`,
    projection: null,
    notes: nestNotes(scene),
  };
  const [best] = sheetRooms(plan, metrics, base)
    .flatMap(({ orientation, room }) => {
      const layout = nestLayout(scene, room, metrics);
      return layout ? [{ orientation, ratio: layout.ratio }] : [];
    })
    .toSorted((a, b) => a.ratio - b.ratio);
  return {
    ...base,
    scale: best?.ratio ?? null,
    orientation: best?.orientation ?? 'landscape',
    paint: (drawing, room) => {
      const layout = nestLayout(scene, room, metrics);
      const unplaced = layout ? paintNest(drawing, room, scene, layout) : [stock.id];
      return copy === 1 ? [...left, ...unplaced] : unplaced;
    },
  };
}
