import type { Item, ItemTerminal, Side, WireLayer } from '../../board/layout/item.ts';
import { layoutHouse } from '../../board/layout/score/layout-house.ts';
import type { Link } from '../../board/layout/score/links.ts';
import { proposeBoard } from '../../board/propose/propose-board.ts';
import { routingHouse } from '../../board/route/routing-house.ts';
import { type BoardShape, drawOutline } from '../../board/shape/outline.ts';
import { houseRuleDefinition } from '../../model/house-rules.ts';
import { outlineSchema } from '../../model/outline.ts';
import { madeUpBoard } from './made-up-board.ts';

/** A board to lay out and wire: so many groups of three amplifiers and eight parts. */
export interface BenchBoard {
  readonly shape: BoardShape;
  readonly items: readonly Item[];
  readonly links: readonly Link[];
}

/** What the boards are laid out by: the table's own values. */
const usual = {
  partGapM: houseRuleDefinition('gap-parts').value,
  powerToSignalM: houseRuleDefinition('power-signal-distance').value,
  house: layoutHouse((name) => houseRuleDefinition(name).value),
  routing: routingHouse((name) => houseRuleDefinition(name).value),
};

/** Parts of one group, and of those how many are amplifiers. */
const groupSize = 11;
const amplifiers = 3;

/** A board of groups of three amplifiers and eight parts, as wide as they need. Null where it can't be drawn: a bug. */
export function benchBoard(groups: number): BenchBoard | null {
  const outline = outlineSchema.parse({ rectangle: { width: `${1.5 * groups} m`, height: '600 mm' } });
  const { shape } = drawOutline(outline);
  if (!shape) return null;
  const items: Item[] = [];
  const links: Link[] = [];
  for (let group = 1; group <= groups; group += 1)
    for (let k = 1; k <= groupSize; k += 1) {
      const id = `part-${group}-${k}`;
      items.push(k <= amplifiers ? amplifier(id) : smallPart(id));
      links.push(...linksOf(group, k));
    }
  return { shape, items, links };
}

function terminal(item: string, name: string, side: Side, alongM: number, layer: WireLayer): ItemTerminal {
  return { id: `${item}.${name}`, side, alongM, layer };
}

function amplifier(id: string): Item {
  return {
    id,
    widthM: 0.26,
    depthM: 0.18,
    heightM: 0.05,
    massKg: 2.5,
    rooms: { bottom: { bendM: 0.05 }, top: { bendM: 0.04 } },
    terminals: [
      terminal(id, 'B+', 'bottom', 0.05, 'power'),
      terminal(id, 'GND', 'bottom', 0.08, 'ground'),
      terminal(id, 'IN', 'top', 0.05, 'signal'),
    ],
  };
}

function smallPart(id: string): Item {
  return {
    id,
    widthM: 0.08,
    depthM: 0.07,
    heightM: 0.04,
    massKg: 0.3,
    rooms: {},
    terminals: [
      terminal(id, 'A', 'left', 0.03, 'power'),
      terminal(id, 'B', 'right', 0.03, 'power'),
      terminal(id, 'S', 'top', 0.04, 'signal'),
    ],
  };
}

/** Part k of a group hangs on the one before it; amplifiers take power, ground and signal from the small parts. */
function linksOf(group: number, k: number): Link[] {
  const end = (n: number, name: string) => {
    const item = `part-${group}-${n}`;
    return { item, terminal: `${item}.${name}` };
  };
  const id = `wire-${group}-${k}`;
  if (k <= amplifiers)
    return [
      { id: `${id}-feed`, from: end(k + amplifiers, 'B'), to: end(k, 'B+'), layer: 'power' },
      { id: `${id}-ground`, from: end(k, 'GND'), to: { exit: 'bottom' }, layer: 'ground' },
      { id: `${id}-signal`, from: end(k + 2 * amplifiers, 'S'), to: end(k, 'IN'), layer: 'signal' },
    ];
  if (k === amplifiers + 1) return [{ id, from: { exit: 'left' }, to: end(k, 'A'), layer: 'power' }];
  return k <= 2 * amplifiers ? [{ id, from: end(k - 1, 'B'), to: end(k, 'A'), layer: 'power' }] : [];
}

/** Lays a board out and wires it: how many wires found a way. */
export function layOutAndRoute({ shape, items, links }: BenchBoard): number {
  return proposeBoard({ board: { shape }, items, given: [], links }, usual, 0.006).routing.routes.length;
}

/** The made-up boards that are measured: the first of those that the tests wire. */
const madeUpFrom = 4711;
export const madeUpCount = 10;

/** Lays out and wires made-up boards: how many wires there are, and how many of them found no way. */
export function layOutMadeUp(): { readonly wires: number; readonly unwired: number } {
  const sum = { wires: 0, unwired: 0 };
  for (let n = 0; n < madeUpCount; n += 1) {
    const board = madeUpBoard(madeUpFrom + n);
    if (!board) continue;
    const { shape, items, links } = board;
    const { routing } = proposeBoard({ board: { shape }, items, given: [], links }, usual, 0.004);
    sum.wires += links.length;
    sum.unwired += links.length - routing.routes.length;
  }
  return sum;
}
