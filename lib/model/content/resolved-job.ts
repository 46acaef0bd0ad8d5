import type { HouseRules } from '../house-rules.ts';
import type { Part, PartFacts } from '../kinds/index.ts';
import type { Place } from '../place.ts';
import type { JobRib } from '../rib.ts';
import type { Origin, VehicleSide, ZoneKind } from '../vocabulary.ts';
import type { BuiltJob, HeldValues, InPlace } from './built.ts';
import type { JobBoard, JobDevice, JobFile, JobLink } from './job.ts';
import type { PromisedShelf } from './promised.ts';
import type { Proposal } from './proposal.ts';
import type { RunWay } from './run-ways.ts';
import type { Shop } from './shop.ts';
import type { Vehicle } from './vehicle.ts';
import type { VehicleRoute } from './vehicle-route.ts';
import type { VehicleSpace } from './vehicle-space.ts';
import type { JobMeasures } from './written-measures.ts';

/** One end of a link. */
export interface LinkEnd {
  readonly device: string;
  readonly terminal: string;
}

/** The id of a terminal: `amp-front.B+`. */
export function terminalId(end: LinkEnd): string {
  return `${end.device}.${end.terminal}`;
}

/** Device and terminal of a terminal's id. Device ids have no dot; the names of terminals may. */
export function linkEndOf(id: string): LinkEnd {
  const dot = id.indexOf('.');
  return dot < 0 ? { device: id, terminal: '' } : { device: id.slice(0, dot), terminal: id.slice(dot + 1) };
}

/** A device of the job or of the vehicle, with its part looked up. */
export interface Device {
  readonly id: string;
  readonly origin: Origin;
  /** JSON Pointer into the file of its origin. */
  readonly path: string;
  readonly title: string;
  /** Part id; the body of the vehicle is no part. */
  readonly part: string | null;
  readonly spec: Part | null;
  readonly facts: PartFacts;
  /** Ratings of fuses that came with the vehicle: by outgoing terminal, `fuse` for a holder. */
  readonly fittedFuses?: Readonly<Record<string, number>>;
  /** Of a battery that came with the vehicle: the charge at which its reserve ends. */
  readonly fittedReserveEnd?: number;
  /** True for one of the vehicle whose side nobody told: its side is the middle until then. */
  readonly sideOpen?: boolean;
  /** As the job wrote it. */
  readonly given: JobDevice | null;
  readonly board: string | null;
  /** Place in the vehicle, for a device that is on no board. */
  readonly seat: string | null;
  readonly zone: ZoneKind;
  readonly side: VehicleSide;
  /** Zones of the ground points; for the body alone, whose terminals stand in several. */
  readonly groundZones: Readonly<Record<string, ZoneKind>>;
  /** Terminals that the vehicle leaves open, with the reason. */
  readonly leftOpen: Readonly<Record<string, string>>;
}

/** The id of the vehicle's body among the devices: its terminals are the ground points. */
export const bodyId = 'body';

/** Ground points as the ends of links name them. */
export function groundRefs(points: readonly string[]): readonly string[] {
  return points.map((point) => `${bodyId}.${point}`);
}

/** One conductor between two terminals: pairs are opened out, each conductor with an id of its own. */
export interface Link {
  /** The link's id, with `.+` or `.-` behind it where a pair was opened out. */
  readonly id: string;
  readonly origin: Origin;
  /** JSON Pointer of the link as written. */
  readonly path: string;
  readonly from: LinkEnd;
  readonly to: LinkEnd;
  readonly given: JobLink | null;
  /** Size and length of a conductor that the vehicle came with. */
  readonly fitted: Vehicle['links'][string] | null;
  readonly cable: { readonly id: string; readonly part: string; readonly conductor: string } | null;
  readonly run: string | null;
  /** Ends whose port the job leaves open, each with all the ports that would do; the one it has stands in for them. */
  readonly open?: readonly OpenEnd[];
}

/** The terminal that two links share; null where they share none. */
export function sharedTerminal(link: Link, other: Link): string | null {
  const own = [link.from, link.to].map(terminalId);
  return [other.from, other.to].map(terminalId).find((terminal) => own.includes(terminal)) ?? null;
}

/** An end of a link that may be at any of several like ports of its device. */
export interface OpenEnd {
  readonly end: 'from' | 'to';
  readonly ports: readonly string[];
}

/** A part that boards and ribs are cut from. */
export type SheetPart = Extract<Part, { kind: 'board-sheet' }>;

/** A stiffening rib, with its sheet looked up; null where it is cut from the sheet of its board. */
export interface BoardRib {
  readonly id: string;
  readonly given: JobRib;
  readonly sheet: { readonly id: string; readonly part: SheetPart } | null;
}

export interface Board {
  readonly id: string;
  readonly path: string;
  readonly given: JobBoard;
  readonly spaceId: string;
  readonly space: VehicleSpace;
  /** Its sheet. Where the job leaves it open, any of the catalogue, until the plan has chosen one. */
  readonly sheetId: string;
  readonly sheet: SheetPart;
  readonly ribs: readonly BoardRib[];
  /** Where its datum corner stands in the space, chosen by the plan; left out where the job says it. */
  readonly place?: { readonly xM: number; readonly yM: number };
}

export interface Run {
  readonly id: string;
  readonly path: string;
  /** Of several routes all their ids. */
  readonly routeId: string;
  /** Of several routes all their stretches. */
  readonly route: VehicleRoute;
  /** The routes that it goes by, one after another. */
  readonly ways: readonly RunWay[];
  readonly links: readonly string[];
  readonly covering: string | null;
}

/**
 * A job with every name looked up and every shorthand opened out, as far as its plan follows from it: plain data,
 * without titles, texts and places in files.
 */
export interface Job {
  readonly id: string;
  readonly file: Pick<JobFile, 'cables' | 'left-open' | 'as-built'>;
  /** The shop, with what of its stock is offered to this job: what is promised to others is taken out. */
  readonly shop: Shop;
  /** What of the stock is promised to other jobs. */
  readonly promised: PromisedShelf;
  readonly rules: HouseRules;
  readonly vehicle: Vehicle;
  readonly parts: Readonly<Record<string, Part>>;
  readonly devices: readonly Device[];
  readonly links: readonly Link[];
  readonly boards: readonly Board[];
  readonly runs: readonly Run[];
  /** What the file leaves out and rules propose: it stands in the fields above as if it were written. */
  readonly proposals: readonly Proposal[];
  /** True for a job that asks for links which it leaves out: one of them may come to be written at any time. */
  readonly asksForLinks: boolean;
  readonly measures: JobMeasures;
  /** Wire labels of the revision that was released last, by wire id. */
  readonly releasedLabels: Readonly<Record<string, string>>;
  /** The released revision that this one is built on; none of a first one. */
  readonly built: BuiltJob | null;
  /** What an earlier revision that is built in has in place; left out where none is. */
  readonly inPlace?: InPlace;
  /** What is taken from it, and stands in the fields above as if it were written. */
  readonly held: HeldValues | null;
}

/** A job as it was written: with all of its file, and where it stands in the files. What `lib/read` gives. */
export interface ReadJob extends Job {
  readonly file: JobFile;
  /** Where a value of the job file stands, by JSON Pointer; the nearest given ancestor of one that is not there. */
  readonly place: (path: string) => Place;
  /** The offsets of a value of the job file; null where the file does not have it. */
  readonly span: (path: string) => { readonly start: number; readonly end: number } | null;
  readonly vehiclePlace: (path: string) => Place;
  readonly shopPlace: (path: string) => Place;
  /** Where a value of the catalogue stands, by JSON Pointer from `/parts`. */
  readonly partPlace: (path: string) => Place;
}
