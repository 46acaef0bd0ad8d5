import { hasFields, type WrittenValue } from '../../../model/content/proposal.ts';
import { linkEndOf } from '../../../model/content/resolved-job.ts';
import type { Vehicle } from '../../../model/content/vehicle.ts';

/** Fields of a job by their names. */
export type JobFields = { readonly [name: string]: WrittenValue };

/** Where a job like another is to go. */
export interface NewPlace {
  readonly vehicle: Vehicle;
  readonly space: string | null;
  /** Whether the other is of the same vehicle, and of the same space of it. */
  readonly isSameVehicle: boolean;
  readonly isSameSpace: boolean;
  /** Where the datum of each board goes in the space, as it is written; none of one that does not go in as it is. */
  readonly boardsAt: JobFields;
}

/**
 * What of a job is of the space and the vehicle that it was measured in goes: where boards stand and what they are fixed to,
 * lengths and ways through the vehicle.
 *
 * @param linked Whether its links stay; else all of its wiring is left to be proposed.
 */
export function forSpace(fields: JobFields, place: NewPlace, linked: boolean): JobFields {
  if (place.isSameSpace) return fields;
  const { links, cables, runs, 'left-open': open, ...others } = fields;
  const boards = eachOf(others.boards, ({ at: _, space: __, fixings: ___, ...board }, id) => {
    const at = place.boardsAt[id];
    // Fixings are proposed where the board stands; of one that stands nowhere yet none can be told.
    return at === undefined ? { ...board, fixings: {} } : { ...board, at };
  });
  const moved = { ...others, ...(boards && { boards }) };
  if (!linked) return moved;
  const onBoard = boardOf(fields.devices);
  return {
    ...moved,
    ...(cables !== undefined && { cables }),
    ...(links !== undefined && {
      links: place.isSameVehicle ? links : (eachOf(links, unmeasured(onBoard)) ?? links),
    }),
    ...(runs !== undefined && place.isSameVehicle && { runs: reaching(runs, place) }),
    ...(open !== undefined && { 'left-open': open }),
  };
}

/** The same fields with each value of a record made anew. */
function eachOf(
  record: WrittenValue | undefined,
  anew: (one: JobFields, name: string) => JobFields,
): JobFields | undefined {
  if (!hasFields(record)) return undefined;
  return Object.fromEntries(
    Object.entries(record).map(([name, one]): [string, WrittenValue] => [
      name,
      hasFields(one) ? anew(one, name) : one,
    ]),
  );
}

/** The board that each device stands on. */
function boardOf(devices: WrittenValue | undefined): ReadonlyMap<string, string> {
  if (!hasFields(devices)) return new Map();
  return new Map(
    Object.entries(devices).flatMap(([id, one]) =>
      hasFields(one) && typeof one.on === 'string' ? [[id, one.on] as const] : [],
    ),
  );
}

/** A link without the lengths that were measured in another vehicle: those on one board stay. */
function unmeasured(onBoard: ReadonlyMap<string, string>): (link: JobFields) => JobFields {
  const board = (end: WrittenValue | undefined) =>
    typeof end === 'string' ? onBoard.get(linkEndOf(end).device) : undefined;
  return (link) => {
    const own = board(link.from);
    if (own !== undefined && own === board(link.to)) return link;
    const { length: _, branch: __, ...others } = link;
    return others;
  };
}

/** Runs along ways that do not end at another space than the new one. */
function reaching(runs: WrittenValue, { vehicle, space }: NewPlace): WrittenValue {
  if (!hasFields(runs)) return runs;
  return Object.fromEntries(
    Object.entries(runs).filter(([, run]) => {
      const given = hasFields(run) ? run.route : undefined;
      const routes = (Array.isArray(given) ? given : [given]).flatMap((id) =>
        typeof id === 'string' ? (vehicle.routes[id] ?? []) : [],
      );
      return routes.every(({ reaches }) => !reaches || reaches.space === space);
    }),
  );
}
