import type { BuildPlan } from '../../model/plan/index.ts';
import type { TextMetrics } from '../lettering/text-metrics.ts';
import { layOutSignal } from './signal-layout.ts';
import type { SignalEdge, SignalModel } from './signal-model.ts';
import type { SignalView } from './signal-paint.ts';

/** Columns of the diagram that sheets show, and the room that these have. */
export interface SignalSpan {
  readonly plan: BuildPlan;
  readonly model: SignalModel;
  readonly metrics: TextMetrics;
  readonly from: number;
  readonly to: number;
}

function columnAt({ units }: SignalModel, id: string): number {
  return units.find(({ item }) => item.id === id)?.column ?? 0;
}

/** The diagram of some edges; `seen` are the units of earlier sheets. */
function viewOf(span: SignalSpan, edges: readonly SignalEdge[], seen: ReadonlySet<string>): SignalView {
  const { plan, model, metrics, from, to } = span;
  const shown = new Set(edges.map(({ id }) => id));
  return { plan, model, from, to, layout: layOutSignal({ plan, model, metrics, shown, seen }) };
}

/** All of a span in one view, however high it is: what the widths follow from. */
export function wholeView(span: SignalSpan): SignalView {
  return viewOf(span, edgesOf(span), new Set());
}

function edgesOf({ model, from, to }: SignalSpan): SignalEdge[] {
  return model.edges.filter((edge) => columnAt(model, edge.from) >= from && columnAt(model, edge.to) <= to);
}

/**
 * Spreads a span over sheets: whole amplifiers as far as they fit, a larger one in parts; what arrives before
 * the amplifiers fills the room that is left, and further sheets where that is not enough.
 */
export function signalSheets(span: SignalSpan, heightMm: number): SignalView[] {
  const { model } = span;
  const fits = (edges: readonly SignalEdge[]): boolean =>
    viewOf(span, edges, new Set()).layout.heightMm <= heightMm;
  const all = edgesOf(span);
  const amplifiers = model.units.filter(({ column }) => column === model.amplifiers);
  const chunks = amplifiers.flatMap(({ item }) =>
    slicesThatFit(
      all.filter(({ to }) => to === item.id),
      all.filter(({ from }) => from === item.id),
      fits,
    ),
  );
  const ids = new Set(amplifiers.map(({ item }) => item.id));
  const early = all.filter(({ from, to }) => !ids.has(from) && !ids.has(to));
  const sheets: SignalEdge[][] = [];
  for (const chunk of chunks) {
    const last = sheets.at(-1);
    if (last && fits([...last, ...chunk])) last.push(...chunk);
    else sheets.push([...chunk]);
  }
  for (const edge of early) {
    const open = sheets.find((sheet) => fits([...sheet, edge]));
    if (open) open.push(edge);
    else sheets.push([edge]);
  }
  return numbered(span, sheets);
}

/** Inputs and outputs of an amplifier in as few slices as fit; a single edge is not sliced. */
function slicesThatFit(
  inputs: readonly SignalEdge[],
  outputs: readonly SignalEdge[],
  fits: (edges: readonly SignalEdge[]) => boolean,
): SignalEdge[][] {
  const most = Math.max(1, inputs.length, outputs.length);
  for (let count = 1; count < most; count += 1) {
    const slices = Array.from({ length: count }, (_, nth) => [
      ...slice(inputs, nth, count),
      ...slice(outputs, nth, count),
    ]);
    if (slices.every(fits)) return slices;
  }
  return Array.from({ length: most }, (_, nth) => [
    ...slice(inputs, nth, most),
    ...slice(outputs, nth, most),
  ]);
}

function slice(edges: readonly SignalEdge[], nth: number, count: number): readonly SignalEdge[] {
  const each = Math.ceil(edges.length / count);
  return edges.slice(nth * each, (nth + 1) * each);
}

function numbered(span: SignalSpan, sheets: readonly (readonly SignalEdge[])[]): SignalView[] {
  const seen = new Set<string>();
  return sheets.map((edges) => {
    const view = viewOf(span, edges, new Set(seen));
    for (const { from, to } of edges) seen.add(from).add(to);
    return view;
  });
}
