import type { Item, ItemTerminal, Side, SideRoom } from '../../board/layout/item.ts';
import { type Device, type Job, terminalId } from '../../model/content/resolved-job.ts';
import type { HouseRules } from '../../model/house-rules.ts';
import type { TerminalSpec } from '../../model/kinds/fields/terminal-spec.ts';
import { type ConductorRole, type Edge, edgeSchema, type Panel } from '../../model/vocabulary.ts';
import type { PlanBook } from '../plan-book.ts';
import { beneathOf, raisingOf } from './board-stacking.ts';
import { askedRooms, roomOfKind } from './side-rooms.ts';
import { layerOfRole } from './wire-layer.ts';

const edges = edgeSchema.options;

type Wired = ReadonlyMap<string, ConductorRole>;

/** The devices on a board as the layout sees them: footprint, rooms at each side, terminals that are wired. */
export function boardItems(
  job: Job,
  board: string,
  roles: ReadonlyMap<string, ConductorRole>,
  book: PlanBook,
): Item[] {
  const wired = wiredRoles(job, roles);
  return job.devices
    .filter((device) => device.board === board)
    .flatMap((device) => {
      const item = boardItem(job, device, wired, book);
      return item ? [item] : [];
    });
}

/** Role of the first wire at each terminal. */
function wiredRoles(job: Job, roles: ReadonlyMap<string, ConductorRole>): Wired {
  const wired = new Map<string, ConductorRole>();
  for (const link of job.links) {
    for (const end of [link.from, link.to]) {
      const role = roles.get(link.id);
      if (role && !wired.has(terminalId(end))) wired.set(terminalId(end), role);
    }
    // A port that a wire may still take is looked at as if it did.
    for (const { end, ports } of link.open ?? [])
      for (const terminal of ports) {
        const role = roles.get(link.id);
        const id = terminalId({ device: link[end].device, terminal });
        if (role && !wired.has(id)) wired.set(id, role);
      }
  }
  return wired;
}

function boardItem(job: Job, device: Device, wired: Wired, book: PlanBook): Item | null {
  const { rules } = job;
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
  const shares = sharesOf(device, terminals);
  const raising = raisingOf(device, { clearanceM: partGapM(rules), railWidthM: rules['riser-rail'].value });
  const beneath = beneathOf(job, device);
  return {
    id: device.id,
    widthM: print.widthM,
    depthM: print.depthM,
    heightM: print.heightM,
    massKg: print.massKg,
    rooms: sideRooms(device, rules, wired, book),
    gapM: partGapM(rules),
    ...(print.airM.face !== undefined && { airOverM: print.airM.face }),
    faceAccess: Object.values(device.facts.controls).some(({ panel }) => panel === 'face'),
    terminals,
    mountingHoles: [...print.holes, ...print.bracketHoles].map((hole, index) => ({
      id: `${device.id}.hole-${index + 1}`,
      ...hole,
    })),
    ...(device.spec ? { kind: device.spec.kind } : {}),
    ...(shares ? { shares } : {}),
    ...(raising ? { raising } : {}),
    ...(beneath ? { beneath } : {}),
  };
}

/** What a distribution part shares out, by the wires that it has: a ground bar has no other. */
function sharesOf({ spec }: Device, terminals: readonly ItemTerminal[]): Item['shares'] {
  if (spec?.kind !== 'distribution' || terminals.length === 0) return undefined;
  if (terminals.every(({ layer }) => layer === 'ground')) return 'ground';
  return terminals.some(({ layer }) => layer === 'power') ? 'feed' : undefined;
}

/** Parts stand no nearer than the house gap, and never so near that the tolerance of their size could close it. */
export function partGapM(rules: HouseRules): number {
  return Math.max(rules['gap-parts'].value, rules['part-tolerance'].value);
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

const noRoom = { airM: 0, accessM: 0, toolM: 0, bendM: 0 } as const satisfies SideRoom;

/** The rooms of a device's four sides; how each came about goes into the book. */
function sideRooms(device: Device, rules: HouseRules, wired: Wired, book: PlanBook): Item['rooms'] {
  return Object.fromEntries(
    edges.map((side): [Edge, SideRoom] => {
      const asked = askedRooms(device, side, rules, wired).map(({ kind, depth }) => {
        const id = `boards.${device.board}.placements.${device.id}.keepClear.${side}.${kind}`;
        return [roomOfKind[kind], book.trace(id, depth)] as const;
      });
      return [side, { ...noRoom, ...Object.fromEntries(asked) }];
    }),
  );
}
