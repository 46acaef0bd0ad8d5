import type { PlanPick, PlanWire } from '../../model/plan/index.ts';

/**
 * The wires of a size that is written and that no reel of the catalogue has. A conductor of a cable comes with the cable,
 * and a lead of a maker with its device.
 */
export function wiresToBuy(wires: readonly PlanWire[]): readonly PlanWire[] {
  return wires.filter(
    ({ origin, part, cable, size, ends }) =>
      origin === 'job' &&
      part === null &&
      cable === undefined &&
      size.areaMm2 > 0 &&
      ends.every(({ form }) => form !== 'supplied-lead'),
  );
}

const colourOf = ({ colour }: PlanWire): string => (colour ? ` ${colour}` : '');

/** What such wire is called on the pick list: by its size and its colour, `wire-10-awg-red`. */
export function wireToBuyId(wire: PlanWire): string {
  return `wire-${wire.size.label}${colourOf(wire)}`.toLowerCase().replace(/[^a-z0-9]+/g, '-');
}

/** Wire that no reel of the catalogue is of: it has no part, and is to be bought all the same. */
export function wireToBuy(wires: readonly PlanWire[]): PlanPick[] {
  const rows = new Map<string, { readonly title: string; lengthM: number }>();
  for (const wire of wiresToBuy(wires)) {
    const row = rows.get(wireToBuyId(wire)) ?? {
      title: `Wire ${wire.size.label}${colourOf(wire) || ', any colour'}, not in the catalogue`,
      lengthM: 0,
    };
    row.lengthM += wire.lengthM;
    rows.set(wireToBuyId(wire), row);
  }
  return [...rows].map(([part, { title, lengthM }]): PlanPick => {
    const quantity = Number(lengthM.toFixed(3));
    return { part, title, kind: 'wire', quantity, unit: 'm', stockQuantity: 0, short: quantity };
  });
}
