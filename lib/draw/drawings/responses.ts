import type { BuildPlan } from '../../model/plan/index.ts';
import { drawPage, type Page } from '../page.ts';
import { heightMm } from '../paper.ts';
import { type ResponseGraph, responseGraphs } from '../response/response-graphs.ts';
import { hertzText, levelText, paintResponse } from '../response/response-paint.ts';
import type { DrawingKind } from './kind.ts';

/** Level over frequency of every filtered path, and of the sums of those that hand over to each other. */
export const responses: DrawingKind = {
  sheet: 'signal-diagram',
  pages: (plan, metrics) => {
    const graphs = responseGraphs(plan);
    const perSheet = graphs.length > 1 ? 2 : 1;
    const sheets = Array.from({ length: Math.ceil(graphs.length / perSheet) }, (_, index) =>
      graphs.slice(index * perSheet, (index + 1) * perSheet),
    );
    return sheets.map((own, index) =>
      drawPage(plan, metrics, responsePage(plan, own, index + 1, sheets.length)),
    );
  },
};

const gapMm = 6;

function responsePage(plan: BuildPlan, graphs: readonly ResponseGraph[], nth: number, of: number): Page {
  return {
    id: of > 1 ? `responses-${nth}` : 'responses',
    title: of > 1 ? `Responses, part ${nth} of ${of}` : 'Responses',
    subject: plan.vehicle.title,
    documentType: 'Response diagram',
    description: describe(graphs),
    scale: null,
    orientation: graphs.length > 1 ? 'portrait' : 'landscape',
    projection: null,
    notes: [
      'Filters alone: no speaker, no vehicle',
      'Sum (thick): paths flat, equally loud and in time; circles: handovers',
    ],
    paint: (drawing, room) => {
      const highMm = (heightMm(room) - gapMm * (graphs.length - 1)) / graphs.length;
      return graphs.flatMap((graph, index) => {
        const topMm = room.topMm + index * (highMm + gapMm);
        const box = { ...room, topMm, bottomMm: topMm + highMm };
        return paintResponse(drawing, graph, plan.audio.curves.frequenciesHz, box);
      });
    },
  };
}

function describe(graphs: readonly ResponseGraph[]): string {
  const told = graphs.map(({ of, sum }) => {
    const ids = of.map((each) => each.join(', ')).join('; alike ');
    const handovers = (sum?.handovers ?? []).map(
      ({ frequencyHz, sumDb }) => `${hertzText(frequencyHz)}, sum ${levelText(sumDb)}`,
    );
    return handovers.length === 0 ? ids : `${ids}: handovers at ${handovers.join('; ')}`;
  });
  return `Level over frequency, 20 Hz to 20 kHz: ${told.join('. ')}.`;
}
