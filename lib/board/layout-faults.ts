import { type BoardFault, geometry, mmText } from './fault.ts';

/** An item that fits nowhere by so many metres; beside others where these are in the way, even with some raised. */
export function noRoom(
  item: string,
  byM: number,
  beside: readonly string[] = [],
  raised: readonly string[] = [],
): BoardFault {
  const others = beside.length > 0 ? ` with ${beside.join(', ')}` : '';
  const even = raised.length > 0 ? `, even with ${raised.join(', ')} raised over others` : '';
  return {
    rule: 'item-does-not-fit',
    level: 'stop',
    of: [item, ...beside],
    message: `${item} does not fit on the board${others}: it is too large by ${mmText(byM)} where it fits best${even}`,
    value: byM,
    limit: 0,
    unit: 'm',
    remedy: `make the board larger by ${mmText(byM)} there, raise or stack the item, or leave it out`,
    ...geometry,
  };
}

/** Parts that would fit raised, were there sheet for their rails. */
export function noRails(raised: readonly string[]): BoardFault {
  return {
    rule: 'no-sheet-for-rails',
    level: 'stop',
    of: raised,
    message: `the parts fit on the board with ${raised.join(', ')} raised over others, but the stock of its sheet does not give their rails`,
    remedy: 'stock a sheet or an off-cut more, or make the board larger',
    source: "the shop's own stock",
  };
}
