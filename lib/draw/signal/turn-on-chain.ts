import type { BuildPlan, PlanItem, PlanWire } from '../../model/plan/index.ts';
import { printed, printedNumber } from '../../model/printed/index.ts';
import type { TextMetrics } from '../lettering/text-metrics.ts';
import { feedParts, feedWidths, partHeightMm } from '../power/feed-geometry.ts';
import { feedGrid } from '../power/feed-grid.ts';
import type { FeedView } from '../power/feed-paint.ts';
import { cutToSheets } from '../power/feed-sheets.ts';
import { feedForest, splitTerminal } from '../power/feed-tree.ts';
import { atMostText } from '../power/feed-words.ts';

/** A sheet of the turn-on chain, and the room that it takes. */
export interface TurnOnView {
  readonly view: FeedView;
  readonly widthMm: number;
  readonly heightMm: number;
}

/** The turn-on chain of a job, from the unit that wakes the others: one view, or several where it is too wide. */
export function turnOnViews(
  plan: BuildPlan,
  metrics: TextMetrics,
  room: { readonly widthMm: number; readonly heightMm: number },
): TurnOnView[] {
  const forest = feedForest(plan, wakes(plan), carriesTurnOn(plan), (role) => role === 'relay-coil');
  const factsOf = (item: string): string[] => turnOnFacts(plan, item);
  const widthsOf = (tree: (typeof forest.roots)[number]) => {
    const grid = feedGrid(plan, { roots: [tree], rings: [] });
    return { grid, widths: feedWidths(grid, plan, metrics) };
  };
  return forest.roots
    .flatMap((root) => cutToSheets(root, (tree) => widthsOf(tree).widths.totalMm <= room.widthMm))
    .flatMap((tree) => {
      const { grid, widths } = widthsOf(tree);
      return feedParts(grid, room.heightMm, metrics).map((part): TurnOnView => {
        const view = { plan, grid, widths, part, factsOf };
        return { view, widthMm: widths.totalMm, heightMm: partHeightMm(grid, part, metrics).totalMm };
      });
    });
}

/** True for an item that gives a turn-on and gets none. */
function wakes({ wires }: Pick<BuildPlan, 'wires'>): (item: PlanItem) => boolean {
  return ({ id, terminals }) =>
    terminals.some(({ role }) => role === 'turn-on-out') &&
    !wires.some(({ role, from, to }) => {
      const ends = [from, to].map(splitTerminal).filter(({ item }) => item === id);
      const isIn = ends.some(
        ({ terminal }) => terminals.find(({ name }) => name === terminal)?.role === 'turn-on-in',
      );
      return role === 'turn-on' && isIn;
    });
}

/** Turn-on conductors, and those that a relay passes them on by. */
function carriesTurnOn({ items, wires }: Pick<BuildPlan, 'items' | 'wires'>): (wire: PlanWire) => boolean {
  const chain = new Set(
    wires
      .filter(({ role }) => role === 'turn-on')
      .flatMap(({ from, to }) => [splitTerminal(from).item, splitTerminal(to).item]),
  );
  const isRelay = (id: string): boolean => {
    const kind = items.find((item) => item.id === id)?.kind;
    return kind === 'relay' || kind === 'isolating-relay';
  };
  return ({ role, from, to }) => {
    const ends = [splitTerminal(from).item, splitTerminal(to).item];
    return (
      role === 'turn-on' || (role === 'power' && ends.every((id) => chain.has(id)) && ends.some(isRelay))
    );
  };
}

const drawnMilli = (currentA: number): string => printed('milliamperes-carried', currentA * 1000);

/** A sum without its unit where the limit behind it has the same one. */
function sumText(sumA: number, limitA: number | null): string {
  if (limitA === null) return drawnMilli(sumA);
  return limitA < 1
    ? printedNumber('milliamperes-carried', sumA * 1000)
    : printedNumber('current-carried', sumA);
}

const mostText = (limitA: number): string =>
  limitA < 1 ? printed('milliamperes-allowed', limitA * 1000) : atMostText(limitA);

/** What a unit draws at its turn-on input, and what it gives of what it may give. */
function turnOnFacts({ power: { turnOn } }: Pick<BuildPlan, 'power'>, item: string): string[] {
  const drawn = turnOn.flatMap(({ loads }) => loads).find((load) => load.item === item)?.currentA ?? null;
  const given = turnOn.filter(({ source }) => splitTerminal(source).item === item);
  return [
    ...(drawn === null ? [] : [`takes ${drawnMilli(drawn)}`]),
    ...given.map(({ sumA, limitA, within }) => {
      const of = limitA === null ? '' : ` of ${mostText(limitA)}`;
      const sum = sumA === null ? 'not known' : sumText(sumA, limitA);
      return `gives ${sum}${of}${within === false ? ', TOO MUCH' : ''}`;
    }),
  ];
}
