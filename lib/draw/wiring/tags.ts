import type { BuildPlan, PlanWire } from '../../model/plan/index.ts';
import { shownLabel, shownTerminal } from '../../model/plan/shown-names.ts';
import { labelsText, type MergedName, single } from '../board/merge-names.ts';
import type { ConductorEnd } from './route-ends.ts';

/** The number of the step of the order of work that lays a wire, as its sheet counts them; null where none does. */
export type StepOf = (wire: string) => number | null;

/** The steps that lay the wires of a plan: the first of several, since a wire is laid once. */
export function stepsOf({ steps }: Pick<BuildPlan, 'steps'>): StepOf {
  const numbers = new Map<string, number>();
  steps.forEach(({ installs }, index) => {
    for (const id of installs) if (!numbers.has(id)) numbers.set(id, index + 1);
  });
  return (wire) => numbers.get(wire) ?? null;
}

/** What a tag says of its conductors: size and colour, and the step that lays them. */
function facts(wires: readonly PlanWire[], stepOf: StepOf): string {
  return said([sizesOf(wires), coloursOf(wires), stepsIn(wires, stepOf)]);
}

function sizesOf(wires: readonly PlanWire[]): string {
  return distinct(wires.map(({ size }) => size.label)).join(', ');
}

function coloursOf(wires: readonly PlanWire[]): string {
  return distinct(wires.flatMap(({ colour }) => colour ?? [])).join(', ');
}

function stepsIn(wires: readonly PlanWire[], stepOf: StepOf): string {
  const steps = distinct(wires.flatMap(({ id }) => stepOf(id) ?? []));
  return steps.length === 0 ? '' : `[${steps.join(', ')}]`;
}

function said(words: readonly string[]): string {
  return words.filter((word) => word !== '').join(' ');
}

function distinct<T>(values: readonly T[]): T[] {
  return [...new Set(values)];
}

/** Between what a tag names and what it tells of it, where it breaks into two lines. */
const gap = ': ';

/** The lines of a tag that stands by itself. */
export function tagLines(tag: string): string[] {
  return tag.split(gap);
}

/** `OUT2 / P9: 8 AWG RD [7]`: terminal, wire, size, colour, step. */
export function endTag({ wire, onBoard, terminal }: ConductorEnd, stepOf: StepOf): string {
  return `${shownTerminal(onBoard.item, terminal)} / ${shownLabel(wire)}${gap}${facts([wire], stepOf)}`;
}

/**
 * Tags of neighbours as they share a text: none, then those of one route, as in `CH1 +- / L1 +-: 16 AWG WH, WH/BK [17]`.
 * Conductors go by what `together` calls their route.
 */
export function tagMerges(
  ends: readonly ConductorEnd[],
  together: (wire: PlanWire) => string,
  stepOf: StepOf,
): readonly ((names: readonly string[]) => MergedName[])[] {
  const byTag = new Map(ends.map((end) => [endTag(end, stepOf), end]));
  return [single, (names) => sharedTags(names, byTag, together, stepOf)];
}

function sharedTags(
  names: readonly string[],
  byTag: ReadonlyMap<string, ConductorEnd>,
  together: (wire: PlanWire) => string,
  stepOf: StepOf,
): MergedName[] {
  const groups: { readonly route: string; readonly of: number[] }[] = [];
  names.forEach((name, index) => {
    const end = byTag.get(name);
    const route = end ? together(end.wire) : name;
    const last = groups.at(-1);
    if (last?.route === route) last.of.push(index);
    else groups.push({ route, of: [index] });
  });
  return groups.map(({ of }) => {
    const own = of.flatMap((index) => byTag.get(names[index] ?? '') ?? []);
    return { text: own.length < 2 ? (names[of[0] ?? 0] ?? '') : sharedTag(own, stepOf), of };
  });
}

function sharedTag(ends: readonly ConductorEnd[], stepOf: StepOf): string {
  const terminals = labelsText(distinct(ends.map((end) => shownTerminal(end.onBoard.item, end.terminal))));
  const wires = ends.map(({ wire }) => wire);
  return `${terminals} / ${labelsText(wires.map(shownLabel))}${gap}${facts(wires, stepOf)}`;
}

/** The tag of a route where it leaves the board, on two lines; of a cable of many conductors its name in place of their colours. */
export function exitTag(wires: readonly PlanWire[], stepOf: StepOf): string {
  const labels = labelsText(wires.map(shownLabel));
  const [first] = wires;
  const cable = first?.cable !== undefined && wires.length > 2 ? first.cable : null;
  const body = [sizesOf(wires), cable === null ? coloursOf(wires) : `in ${cable}`];
  return [said([labels, stepsIn(wires, stepOf)]), said(body)].filter((line) => line !== '').join('\n');
}
