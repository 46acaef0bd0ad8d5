import { z } from 'zod';
import { everyone } from '../audience.ts';
import type { Edge, SupplyType } from '../vocabulary.ts';
import type { ControlSpecs } from './fields/control-spec.ts';
import type { equipmentBase, fittedBase } from './fields/equipment.ts';
import type { TerminalSpec, TerminalSpecs } from './fields/terminal-spec.ts';

/** The field that names the kind of a part. */
export function kindField<K extends string>(kind: K): z.ZodLiteral<K> {
  return everyone(z.literal(kind), 'What kind of part it is. The fields of a part follow from it.');
}

/** What drives current into the network: only a battery gives it for long with the engine off. */
export type SourceType = 'battery' | 'alternator' | 'charger' | 'capacitor-bank';

/** A part of the network that stands between two terminals of a part. */
export type PartElement =
  | {
      readonly kind: 'source';
      readonly from: string;
      readonly to: string;
      readonly source: SourceType;
    }
  | { readonly kind: 'fuse'; readonly from: string; readonly to: string; readonly way: string }
  | {
      readonly kind: 'joint';
      readonly from: string;
      readonly to: string;
      readonly ohm?: number;
      /** When it joins its ends; always where left out. */
      readonly closed?: 'engine-on';
    }
  | { readonly kind: 'load'; readonly from: string; readonly to: string; readonly type: SupplyType };

/** A hole for a screw, from the lower left corner of a foot, metres. */
interface Hole {
  readonly xM: number;
  readonly yM: number;
  readonly diameterM: number;
  /** Of the foot that a screw goes through before the board; left out where its maker is silent. */
  readonly footM?: number;
}

/** The space that a part takes on a board. Edges and positions before any turn. */
export interface Footprint {
  readonly widthM: number;
  readonly depthM: number;
  readonly heightM: number;
  readonly massKg: number;
  readonly holes: readonly Hole[];
  /** Those of what holds it; they may lie beside its foot. */
  readonly bracketHoles: readonly Hole[];
  readonly airM: Readonly<Partial<Record<Edge | 'face', number>>>;
  readonly cooling: Readonly<Partial<Record<Edge, 'fins' | 'fan' | undefined>>>;
}

/** What the project needs to know of one kind of part. One file a kind; the table in `index.ts` is complete. */
export interface Kind<S extends z.ZodObject = z.ZodObject> {
  /** Plural name, as the parts index prints it. */
  readonly plural: string;
  readonly schema: S;
  /** True for what is built in as a device; what is stock is cut, crimped or screwed. */
  readonly isMounted: boolean;
  terminals(part: z.output<S>): TerminalSpecs;
  controls(part: z.output<S>): ControlSpecs;
  footprint(part: z.output<S>): Footprint | null;
  elements(part: z.output<S>): readonly PartElement[];
}

/** A kind of part that is stock: cut, crimped or screwed, with no terminals of its own. */
export function stockKind<S extends z.ZodObject>(plural: string, schema: S): Kind<S> {
  return {
    plural,
    schema,
    isMounted: false,
    terminals: () => ({}),
    controls: () => ({}),
    footprint: () => null,
    elements: () => [],
  };
}

type Equipment = z.output<z.ZodObject<typeof fittedBase>>;

/** A kind of part that is mounted: its terminals, controls and footprint come from its own data. */
export function equipmentKind<S extends z.ZodObject<typeof equipmentBase | typeof fittedBase>>(
  plural: string,
  schema: S,
  elements: (part: z.output<S>) => readonly PartElement[],
): Kind<S> {
  return {
    plural,
    schema,
    isMounted: true,
    terminals: (part) => part.terminals,
    controls: (part) => part.controls,
    footprint: (part) => footprintOf(part),
    elements,
  };
}

function holeOf({ x, y, diameter }: Equipment['mounting-holes'][number], footM?: number): Hole {
  return { xM: x, yM: y, diameterM: diameter, ...(footM !== undefined && { footM }) };
}

/** The footprint of a mounted part, from its own data; null where its size or its mass is not told. */
function footprintOf(part: Equipment): Footprint | null {
  const { size, mass } = part;
  if (size === undefined || mass === undefined) return null;
  return {
    widthM: size.width,
    depthM: size.depth,
    heightM: size.height,
    massKg: mass,
    holes: part['mounting-holes'].map((hole) => holeOf(hole, part.foot)),
    bracketHoles: part['bracket-holes'].map((hole) => holeOf(hole)),
    airM: part.air ?? {},
    cooling: part.cooling ?? {},
  };
}

/** The terminals of a role, in the order of the file. */
export function terminalsOf(terminals: TerminalSpecs, ...roles: readonly TerminalSpec['role'][]): string[] {
  return Object.keys(terminals).filter((name) => {
    const role = terminals[name]?.role;
    return role !== undefined && roles.includes(role);
  });
}

/** The load of a device between its supply terminals; none where it has not both. */
export function supplyElement(terminals: TerminalSpecs, type: SupplyType): readonly PartElement[] {
  const [from] = terminalsOf(terminals, 'supply-positive');
  const [to] = terminalsOf(terminals, 'supply-negative');
  return from && to ? [{ kind: 'load', from, to, type }] : [];
}
