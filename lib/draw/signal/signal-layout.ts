import type { BuildPlan, PlanChannel } from '../../model/plan/index.ts';
import { shownLabel } from '../../model/plan/shown-names.ts';
import { printed } from '../../model/printed/index.ts';
import { wrapText } from '../lettering/lettering.ts';
import type { TextMetrics } from '../lettering/text-metrics.ts';
import { types } from '../line-styles.ts';
import { shortName } from '../power/feed-words.ts';
import { filtersAt, filterText, type SignalEdge, type SignalModel, type SignalUnit } from './signal-model.ts';

/** From one conductor to the next of a pair. */
export const pairPitchMm = 8.2;
/** Height of one line of a conductor with its label. */
const conductorMm = 6.2;
/** Height of the head of a box, where its title stands. */
export const headMm = 8.6;
const linePitch = 4;
const edgePadMm = 2.6;
const boxGapMm = 4;
/** Width in which the title of a speaker is broken. */
export const speakerTextMm = 27;
export const speakerSymbolMm = 9;

/** An edge at its height. */
export interface LaidEdge {
  readonly edge: SignalEdge;
  readonly yMm: number;
  readonly highMm: number;
}

/** A box at its height; a unit has several where other lines run between its own. */
export interface LaidBox {
  readonly unit: SignalUnit;
  readonly topMm: number;
  readonly bottomMm: number;
  /** Not its first box: the title says so. */
  readonly again: boolean;
}

/** The diagram in height; columns get their places later. */
export interface SignalLayout {
  readonly boxes: readonly LaidBox[];
  readonly edges: readonly LaidEdge[];
  readonly heightMm: number;
}

/** What is told of an edge inside the box that it leaves. */
export function outputLines(plan: Pick<BuildPlan, 'audio' | 'joints'>, edge: SignalEdge): string[] {
  const joints = (plan.joints ?? [])
    .filter(({ id }) => edge.conductors.some(({ wire }) => wire.id === id))
    .map(
      ({ label, trunkLabel, at }) =>
        `${label} joined to ${trunkLabel} ${at === undefined ? 'before the port' : `at ${at}`}`,
    );
  const filters = filtersAt(plan.audio.channels, edge.from, edge).map(filterText);
  return [...(edge.channel ? channelLines(edge.channel) : []), ...filters, ...joints];
}

function channelLines({ powerW, loadOhm, minimumOhm }: PlanChannel): string[] {
  const load = loadOhm === null ? 'LOAD NOT SOLVED' : printed('load', loadOhm);
  const power = powerW === null ? 'power not known' : printed('power', powerW);
  return [`${power}, ${load}`, `at least ${printed('load-at-least', minimumOhm)}`];
}

/** What is told of a speaker. */
export function speakerLines(plan: Pick<BuildPlan, 'audio'>, { joins }: SignalModel, id: string): string[] {
  const speaker = plan.audio.speakers.find((one) => one.id === id);
  const facts = speaker
    ? [`${speaker.powerW === null ? '' : `${printed('power', speaker.powerW)}, `}${speaker.polarity}`]
    : [];
  const joined = (joins.get(id) ?? []).map(
    ({ wire, fromTerminal, toTerminal }) => `${shownLabel(wire)}: ${fromTerminal} to ${toTerminal}`,
  );
  return [...facts, ...joined];
}

/** Height that an edge needs for its conductors and for what is told at its ends. */
function edgeHeight(plan: BuildPlan, model: SignalModel, edge: SignalEdge, metrics: TextMetrics): number {
  const conductors = (edge.conductors.length - 1) * pairPitchMm + conductorMm;
  const told = outputLines(plan, edge).length * linePitch + 1;
  const unit = model.units.find(({ item }) => item.id === edge.to);
  const isSpeaker = unit?.column === model.amplifiers + 1;
  const title =
    unit && isSpeaker ? wrapText(metrics, shortName(unit.item), speakerTextMm, types.item).length * 5.6 : 0;
  const facts = isSpeaker ? speakerLines(plan, model, edge.to).length * linePitch + 3 : 0;
  return Math.max(conductors, told, title + facts) + edgePadMm;
}

/** Edges that arrive at a unit from the shown columns, in the order of its own terminals within each source. */
function inputsOf(model: SignalModel, shown: readonly SignalEdge[], id: string): SignalEdge[] {
  const order = (item: string, terminal: string | undefined): number =>
    model.units
      .find((unit) => unit.item.id === item)
      ?.item.terminals.findIndex(({ name }) => name === terminal) ?? 0;
  const unitOrder = (item: string): number => model.units.findIndex((unit) => unit.item.id === item);
  const columnOf = (item: string): number => model.units.find((unit) => unit.item.id === item)?.column ?? 0;
  return shown
    .filter(({ to }) => to === id)
    .toSorted(
      (a, b) =>
        columnOf(b.from) - columnOf(a.from) ||
        unitOrder(a.from) - unitOrder(b.from) ||
        order(id, a.conductors[0]?.toTerminal) - order(id, b.conductors[0]?.toTerminal),
    );
}

function outputsOf(model: SignalModel, shown: readonly SignalEdge[], id: string): SignalEdge[] {
  const item = model.units.find((unit) => unit.item.id === id)?.item;
  const order = ({ conductors: [first] }: SignalEdge): number =>
    item?.terminals.findIndex(({ name }) => name === first?.fromTerminal) ?? 0;
  return shown.filter(({ from }) => from === id).toSorted((a, b) => order(a) - order(b));
}

export interface LayoutRequest {
  readonly plan: BuildPlan;
  readonly model: SignalModel;
  readonly metrics: TextMetrics;
  /** Edges that stand on this sheet, by id. */
  readonly shown: ReadonlySet<string>;
  /** Units that an earlier sheet shows: their titles say so. */
  readonly seen: ReadonlySet<string>;
}

/** Lays a part of the diagram out in height: every conductor is level, so none cross. */
export function layOutSignal(request: LayoutRequest): SignalLayout {
  const { model, seen } = request;
  const shown = model.edges.filter(({ id }) => request.shown.has(id));
  const edges: LaidEdge[] = [];
  const boxes: LaidBox[] = [];
  let topMm = 0;
  for (const unit of model.units.filter(({ column }) => column === model.amplifiers)) {
    const left = inputsOf(model, shown, unit.item.id);
    const right = outputsOf(model, shown, unit.item.id);
    if (left.length + right.length === 0) continue;
    const bottoms = [left, right].map((list) => stack(request, list, topMm + headMm, edges));
    const bottomMm = Math.max(topMm + headMm + 4, ...bottoms);
    boxes.push({ unit, topMm, bottomMm, again: seen.has(unit.item.id) });
    topMm = bottomMm + boxGapMm;
  }
  const laid = new Set(edges.map(({ edge }) => edge.id));
  const direct = shown.filter((edge) => !laid.has(edge.id) && passes(model, edge, model.amplifiers));
  stack(request, direct, topMm + headMm, edges);
  for (let column = model.amplifiers - 1; column >= 0; column -= 1)
    layColumn(request, column, shown, edges, boxes);
  boxes.push(...speakerBoxes(request, edges));
  const heightMm = Math.max(0, ...boxes.map(({ bottomMm }) => bottomMm));
  return { boxes, edges, heightMm };
}

function stack(
  { plan, model, metrics }: LayoutRequest,
  list: readonly SignalEdge[],
  fromMm: number,
  edges: LaidEdge[],
): number {
  let yMm = fromMm;
  let before: string | null = null;
  for (const edge of list) {
    // Each unit that edges come from has a box with a head of its own.
    if (before !== null && before !== edge.from) yMm += headMm + boxGapMm;
    before = edge.from;
    const highMm = edgeHeight(plan, model, edge, metrics);
    edges.push({ edge, yMm: yMm + highMm / 2, highMm });
    yMm += highMm;
  }
  return yMm;
}

/** Lays the units of a column before the amplifiers round the edges that leave them, then what arrives at them. */
function layColumn(
  request: LayoutRequest,
  column: number,
  shown: readonly SignalEdge[],
  edges: LaidEdge[],
  boxes: LaidBox[],
): void {
  const { model, seen } = request;
  for (const unit of model.units.filter((each) => each.column === column)) {
    const { id } = unit.item;
    const own = edges.filter(({ edge }) => edge.from === id);
    const foreign = edges.filter(({ edge }) => edge.from !== id && passes(model, edge, column));
    const inputs = inputsOf(model, shown, id);
    const lowest = Math.max(-boxGapMm, ...boxes.map(({ bottomMm }) => bottomMm));
    const spans = runsOf(own, foreign).map((run) => spanOf(run));
    if (spans.length === 0 && inputs.length > 0)
      spans.push({ topMm: lowest + boxGapMm, bottomMm: lowest + boxGapMm + headMm });
    spans.forEach(({ topMm, bottomMm }, index) => {
      const foot = index === 0 ? stack(request, inputs, topMm + headMm, edges) : bottomMm;
      boxes.push({ unit, topMm, bottomMm: Math.max(bottomMm, foot), again: index > 0 || seen.has(id) });
    });
  }
}

/** Where a box round a run of edges begins and ends. */
function spanOf(run: readonly LaidEdge[]): { topMm: number; bottomMm: number } {
  return {
    topMm: Math.min(...run.map(({ yMm, highMm }) => yMm - highMm / 2)) - headMm,
    bottomMm: Math.max(...run.map(({ yMm, highMm }) => yMm + highMm / 2)),
  };
}

/** True for an edge that runs past a column without a stop there. */
function passes({ units }: SignalModel, { from, to }: SignalEdge, column: number): boolean {
  const columnOf = (id: string): number => units.find(({ item }) => item.id === id)?.column ?? 0;
  return columnOf(from) <= column && columnOf(to) > column;
}

/** Unbroken runs of a unit's edges: where a foreign one lies between, a new run begins. */
function runsOf(own: readonly LaidEdge[], foreign: readonly LaidEdge[]): LaidEdge[][] {
  const runs: LaidEdge[][] = [];
  for (const laid of own.toSorted((a, b) => a.yMm - b.yMm)) {
    const before = runs.at(-1)?.at(-1);
    const broken = before && foreign.some(({ yMm }) => yMm > before.yMm && yMm < laid.yMm);
    if (before && !broken) runs.at(-1)?.push(laid);
    else runs.push([laid]);
  }
  return runs;
}

function speakerBoxes({ model, seen }: LayoutRequest, edges: readonly LaidEdge[]): LaidBox[] {
  const speakers = model.units.filter(({ column }) => column === model.amplifiers + 1);
  const isSpeaker = new Set(speakers.map(({ item }) => item.id));
  return speakers.flatMap((unit) => {
    const { id } = unit.item;
    const own = edges.filter(({ edge }) => edge.to === id);
    const foreign = edges.filter(({ edge }) => edge.to !== id && isSpeaker.has(edge.to));
    return runsOf(own, foreign).map((run, index): LaidBox => {
      const { topMm, bottomMm } = spanOf(run);
      const again = index > 0 || seen.has(id);
      return { unit, topMm: topMm + headMm + 0.8, bottomMm: bottomMm - 0.8, again };
    });
  });
}
