/** What taking a port costs: wires without a way, then crossings, then length, packed into one number. */
export interface PortCosts {
  /** Of the wire by itself, at one of its options. */
  readonly alone: (wire: number, option: number) => number;
  /** Of two wires beside each other, each at one of its options. */
  readonly pair: (wire: number, option: number, other: number, otherOption: number) => number;
}

/** The ports that each option of each wire takes: no port is taken twice. */
export type PortOptions = readonly (readonly (readonly string[])[])[];

/** The option of each wire, by its place. */
export type PortAssignment = readonly number[];

/** Up to so many wires every assignment is tried. */
export const exhaustiveWires = 8;

/**
 * The assignment of least cost. Up to eight wires every one is looked at (what costs as much as the best already is
 * not followed further, so that the result is that of trying them all). Beyond, from the first assignment on: the one
 * change that helps most, of one wire to free ports or of two wires with each other, until none helps. Never more than
 * the first costs; of equal ones the first found stays.
 */
export function searchPorts(options: PortOptions, first: PortAssignment, costs: PortCosts): PortAssignment {
  return options.length <= exhaustiveWires
    ? everyOne(options, first, costs)
    : improved(options, first, costs);
}

/** The cost of a whole assignment. */
export function assignmentCost(assignment: PortAssignment, costs: PortCosts): number {
  return assignment.reduce(
    (sum, option, wire) => sum + added(assignment.slice(0, wire), wire, option, costs),
    0,
  );
}

/** What one more wire adds to those before it. */
function added(before: PortAssignment, wire: number, option: number, costs: PortCosts): number {
  return before.reduce(
    (sum, other, at) => sum + costs.pair(at, other, wire, option),
    costs.alone(wire, option),
  );
}

function everyOne(options: PortOptions, first: PortAssignment, costs: PortCosts): PortAssignment {
  let best = { assignment: first, cost: assignmentCost(first, costs) };
  const taken = new Set<string>();
  const follow = (before: PortAssignment, cost: number): void => {
    if (cost >= best.cost - 1e-9) return;
    const own = options[before.length];
    if (!own) {
      best = { assignment: before, cost };
      return;
    }
    own.forEach((ports, option) => {
      if (ports.some((port) => taken.has(port))) return;
      for (const port of ports) taken.add(port);
      follow([...before, option], cost + added(before, before.length, option, costs));
      for (const port of ports) taken.delete(port);
    });
  };
  follow([], 0);
  return best.assignment;
}

function improved(options: PortOptions, first: PortAssignment, costs: PortCosts): PortAssignment {
  let best = { assignment: first, cost: assignmentCost(first, costs) };
  for (let helped = true; helped; ) {
    helped = false;
    for (const assignment of changes(options, best.assignment)) {
      const cost = assignmentCost(assignment, costs);
      if (cost >= best.cost - 1e-9) continue;
      best = { assignment, cost };
      helped = true;
    }
  }
  return best.assignment;
}

/** Every assignment that is one change away: one wire at another option, or two wires at each other's ports. */
function changes(options: PortOptions, from: PortAssignment): PortAssignment[] {
  const moved = from.flatMap((_, wire) =>
    (options[wire] ?? []).map((_ports, option) => from.with(wire, option)),
  );
  return [...moved.filter((assignment) => isFree(options, assignment)), ...exchanges(options, from)];
}

function isFree(options: PortOptions, assignment: PortAssignment): boolean {
  const used = assignment.flatMap((option, wire) => options[wire]?.[option] ?? []);
  return new Set(used).size === used.length;
}

/** Every assignment with two wires at each other's ports. */
export function exchanges(options: PortOptions, from: PortAssignment): PortAssignment[] {
  const portsOf = (wire: number, option: number) => options[wire]?.[option] ?? [];
  const swapped = from.flatMap((option, wire) =>
    from.slice(wire + 1).flatMap((otherOption, beyond): PortAssignment[] => {
      const other = wire + 1 + beyond;
      const find = (at: number, ports: readonly string[]) =>
        (options[at] ?? []).findIndex((own) => own.join(' ') === ports.join(' '));
      const [mine, theirs] = [find(wire, portsOf(other, otherOption)), find(other, portsOf(wire, option))];
      return mine < 0 || theirs < 0 ? [] : [from.with(wire, mine).with(other, theirs)];
    }),
  );
  return swapped.filter((assignment) => isFree(options, assignment));
}
