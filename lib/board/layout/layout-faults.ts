import { type BoardRemark, length, phrase } from '../remark.ts';
import type { Stand } from './layout-moves.ts';
import { placedAll, raisedOf, type Setting } from './layout-setting.ts';
import type { PlacedItem } from './placed.ts';
import { scoreLayout } from './score/score-ledger.ts';

/** What stands in others most in a layout, with whom, and by how much. */
export function blockedIn(setting: Setting, sites: Stand): BoardRemark[] {
  const { board, rules, open } = setting;
  const placed = placedAll(setting, sites);
  const raised = raisedOf(setting, sites).map(({ item }) => item);
  const without = (id: string, some: readonly PlacedItem[]) => some.filter((one) => one.id !== id);
  const brokenOf = (some: readonly PlacedItem[]): number => scoreLayout(board, some, [], rules).broken;
  const all = brokenOf(placed);
  const amounts = open.map(({ item: { id } }) => ({ id, broken: all - brokenOf(without(id, placed)) }));
  const [worst] = amounts.toSorted((a, b) => b.broken - a.broken);
  if (!worst) return [];
  if (worst.broken <= 1e-9) return [noRails(raised)];
  const others = without(worst.id, placed);
  const left = brokenOf(others);
  // What goes when either leaves is between the two.
  const beside = others.filter(
    ({ id }) => all - brokenOf(without(id, placed)) - (left - brokenOf(without(id, others))) > 1e-9,
  );
  return [
    noRoom(
      worst.id,
      worst.broken,
      beside.map(({ id }) => id),
      raised,
    ),
  ];
}

/** An item that fits nowhere by so many metres; beside others where these are in the way, even with some raised. */
export function noRoom(
  item: string,
  byM: number,
  beside: readonly string[] = [],
  raised: readonly string[] = [],
): BoardRemark {
  const others = beside.length > 0 ? ` with ${beside.join(', ')}` : '';
  const even = raised.length > 0 ? `, even with ${raised.join(', ')} raised over others` : '';
  return {
    rule: 'item-does-not-fit',
    level: 'stop',
    of: [item, ...beside],
    message: phrase`${item} does not fit on the board${others}: it is too large by ${length('overlap', byM)} where it fits best${even}`,
    value: byM,
    limit: 0,
    unit: 'm',
    remedy: phrase`make the board larger by ${length('overlap', byM)} there, raise or stack the item, or leave it out`,
  };
}

/** An item that is small enough for the board, but has openings, holes or heads of fixings wherever it could stand. */
export function noClearPlace(item: string): BoardRemark {
  return {
    rule: 'item-does-not-fit',
    level: 'stop',
    of: [item],
    message: `${item} has no place on the board that is clear of its openings, holes and fixings`,
    remedy: 'move an opening, a hole or a fixing, raise the item on spacers, or leave it out',
  };
}

/** Parts that would fit raised, were there sheet for their rails. */
export function noRails(raised: readonly string[]): BoardRemark {
  return {
    rule: 'no-sheet-for-rails',
    level: 'stop',
    of: raised,
    message: `the parts fit on the board with ${raised.join(', ')} raised over others, but the stock of its sheet does not give their rails`,
    remedy: 'stock a sheet or an off-cut more, or make the board larger',
  };
}
