import type { RoomKind } from '../../board/layout/placed.ts';
import { type Device, type Job, terminalId } from '../../model/content/resolved-job.ts';
import { type HouseRuleName, houseRuleDefinition } from '../../model/house-rules.ts';
import type { KeepClearKind } from '../../model/plan/board.ts';
import { type Trace, type Traced, traced } from '../../model/trace.ts';
import type { ConductorRole, Edge } from '../../model/vocabulary.ts';

/** Room that one side of a part asks for, and who says so. The side is its own, before any turn. */
export interface AskedRoom {
  readonly kind: KeepClearKind;
  readonly side: Edge;
  /** Metres. */
  readonly depth: Traced<number>;
}

type Rules = Job['rules'];
type Wired = ReadonlyMap<string, ConductorRole>;

/** Which of an item's rooms holds which kind. */
export const roomOfKind: { readonly [K in KeepClearKind]: RoomKind } = {
  air: 'airM',
  connector: 'bendM',
  control: 'accessM',
  tool: 'toolM',
};

/** The same, the other way round. */
export const kindOfRoom: { readonly [K in RoomKind]: KeepClearKind } = {
  airM: 'air',
  bendM: 'connector',
  accessM: 'control',
  toolM: 'tool',
};

/**
 * Room that a side of a device asks for: air as its maker says, else by the house rules for fins and fans; then by
 * the house rules for knobs, set screws, plugs and bends, where it has them. A bend asks for more than a plug: the
 * greater counts. `wired`: roles of the conductors by terminal; a terminal without one asks for nothing.
 */
export function askedRooms(device: Device, side: Edge, rules: Rules, wired: Wired): AskedRoom[] {
  const ends = Object.entries(device.facts.terminals).filter(([, { panel }]) => panel === side);
  const needs = [
    { kind: 'air', depth: air(device, side, rules) },
    {
      kind: 'connector',
      depth: connector(
        device,
        ends.map(([name]) => name),
        rules,
        wired,
      ),
    },
    { kind: 'control', depth: isReached(device, side) ? byRule('tool-room-knob', rules) : null },
    {
      kind: 'tool',
      depth: ends.some(([, { joint }]) => joint === 'set-screw')
        ? byRule('tool-room-set-screw', rules)
        : null,
    },
  ] as const;
  return needs.flatMap(({ kind, depth }) => (depth && depth.value > 0 ? [{ kind, side, depth }] : []));
}

function isReached({ facts }: Device, side: Edge): boolean {
  return Object.values(facts.controls).some(({ panel, form }) => panel === side && form !== 'menu');
}

function air({ facts: { footprint }, part }: Device, side: Edge, rules: Rules): Traced<number> | null {
  const madeM = footprint?.airM[side];
  if (madeM !== undefined) return room(madeM, { origin: 'given', rule: 'air', citation: `part ${part}` });
  const cooling = footprint?.cooling[side];
  return cooling ? byRule(cooling === 'fan' ? 'gap-fan' : 'gap-fins', rules) : null;
}

function connector(
  { id }: Device,
  terminals: readonly string[],
  rules: Rules,
  wired: Wired,
): Traced<number> | null {
  const asked = terminals.flatMap((terminal) => {
    const role = wired.get(terminalId({ device: id, terminal }));
    if (!role) return [];
    return [byRule(role === 'power' || role === 'ground' ? 'gap-power-bend' : 'gap-signal-plug', rules)];
  });
  return asked.toSorted((a, b) => b.value - a.value)[0] ?? null;
}

function byRule(name: HouseRuleName, rules: Rules): Traced<number> {
  const { value, given } = rules[name];
  const { citation, mark } = houseRuleDefinition(name);
  if (given) return room(value, { origin: 'given', rule: name, citation: 'the shop' });
  return room(value, { origin: 'assumed', rule: name, citation, ...(mark ? { mark } : {}) });
}

function room(depthM: number, about: Pick<Trace, 'origin' | 'rule' | 'citation' | 'mark'>): Traced<number> {
  return traced(depthM, 'm', about);
}
