import type { Item, ItemTerminal, Side, SideRoom, WireLayer } from '../board/item.ts';
import type { HouseRules } from '../model/house-rules.ts';
import type { TerminalSpec } from '../model/kinds/kind.ts';
import { type Device, type Job, terminalId } from '../model/resolved-job.ts';
import type { ConductorRole, Panel } from '../model/vocabulary.ts';

const edges = ['left', 'right', 'top', 'bottom'] as const;

/** Layer that a conductor is laid in on the board. Control wires go with the signal; a turn-on wire disturbs nothing. */
export const layerOfRole: Readonly<Record<ConductorRole, WireLayer>> = {
  power: 'power',
  ground: 'ground',
  speaker: 'speaker',
  signal: 'signal',
  'turn-on': 'speaker',
  control: 'signal',
};

/** The devices on a board as the layout sees them: footprint, rooms at each side, terminals that are wired. */
export function boardItems(job: Job, board: string, roles: ReadonlyMap<string, ConductorRole>): Item[] {
  const wired = wiredRoles(job, roles);
  return job.devices
    .filter((device) => device.board === board)
    .flatMap((device) => {
      const item = boardItem(device, job.rules, wired);
      return item ? [item] : [];
    });
}

/** Role of the first wire at each terminal. */
function wiredRoles(job: Job, roles: ReadonlyMap<string, ConductorRole>): ReadonlyMap<string, ConductorRole> {
  const wired = new Map<string, ConductorRole>();
  for (const link of job.links) {
    for (const end of [link.from, link.to]) {
      const role = roles.get(link.id);
      if (role && !wired.has(terminalId(end))) wired.set(terminalId(end), role);
    }
  }
  return wired;
}

function boardItem(
  device: Device,
  rules: HouseRules,
  wired: ReadonlyMap<string, ConductorRole>,
): Item | null {
  const print = device.facts.footprint;
  if (!print) return null;
  const terminals = Object.entries(device.facts.terminals).flatMap(([name, spec]): ItemTerminal[] => {
    const role = wired.get(terminalId({ device: device.id, terminal: name }));
    const side = sideOf(spec.panel);
    if (!role || !side) return [];
    return [
      { id: `${device.id}.${name}`, side, alongM: alongM(spec, side, print), layer: layerOfRole[role] },
    ];
  });
  return {
    id: device.id,
    widthM: print.widthM,
    depthM: print.depthM,
    heightM: print.heightM,
    massKg: print.massKg,
    rooms: Object.fromEntries(edges.map((side) => [side, roomAt(device, side, rules, wired)])),
    gapM: rules['gap-parts'].value,
    faceAccess: Object.values(device.facts.controls).some(({ panel }) => panel === 'face'),
    terminals,
    mountingHoles: print.holes.map((hole, index) => ({ id: `${device.id}.hole-${index + 1}`, ...hole })),
  };
}

/** A terminal on the face is reached over the lower edge, where its conductor leaves. */
function sideOf(panel: Panel | undefined): Side | null {
  return panel === undefined || panel === 'face' ? 'bottom' : panel;
}

/** Where the part does not say, the middle of its side. */
function alongM(
  { at }: TerminalSpec,
  side: Side,
  { widthM, depthM }: { widthM: number; depthM: number },
): number {
  return at ?? (side === 'top' || side === 'bottom' ? widthM : depthM) / 2;
}

/** Room that a side asks for: what its maker says first, then the house rules for fins, fans, knobs, screws and plugs. */
function roomAt(
  device: Device,
  side: Side,
  rules: HouseRules,
  wired: ReadonlyMap<string, ConductorRole>,
): SideRoom {
  const { footprint, controls, terminals } = device.facts;
  const cooling = footprint?.cooling[side];
  const airM =
    footprint?.airM[side] ?? (cooling ? rules[cooling === 'fan' ? 'gap-fan' : 'gap-fins'].value : 0);
  const hasControl = Object.values(controls).some(({ panel, form }) => panel === side && form !== 'menu');
  const ends = Object.entries(terminals).filter(([, { panel }]) => panel === side);
  const hasSetScrew = ends.some(([, { joint }]) => joint === 'set-screw');
  const bends = ends.flatMap(([name]) => {
    const role = wired.get(terminalId({ device: device.id, terminal: name }));
    if (!role) return [];
    return [
      role === 'power' || role === 'ground' ? rules['gap-power-bend'].value : rules['gap-signal-plug'].value,
    ];
  });
  const accessM = Math.max(
    hasControl ? rules['tool-room-knob'].value : 0,
    hasSetScrew ? rules['tool-room-set-screw'].value : 0,
  );
  return { airM, accessM, bendM: Math.max(0, ...bends) };
}
