import { z } from 'zod';
import { alternator, alternatorSchema } from './alternator.ts';
import { amplifier, amplifierSchema } from './amplifier.ts';
import { battery, batterySchema } from './battery.ts';
import { boardSheet, boardSheetSchema } from './board-sheet.ts';
import { cable, cableSchema } from './cable.ts';
import { capacitorBank, capacitorBankSchema } from './capacitor-bank.ts';
import { charger, chargerSchema } from './charger.ts';
import { covering, coveringSchema } from './covering.ts';
import { crossover, crossoverSchema, inLineFilter } from './crossover.ts';
import { distribution, distributionSchema } from './distribution.ts';
import { enclosure, enclosureSchema } from './enclosure.ts';
import type { ControlSpecs } from './fields/control-spec.ts';
import type { TerminalSpecs } from './fields/terminal-spec.ts';
import { fixing, fixingSchema } from './fixing.ts';
import { fuse, fuseSchema } from './fuse.ts';
import { fuseHolder, fuseHolderSchema } from './fuse-holder.ts';
import { grommet, grommetSchema } from './grommet.ts';
import type { Footprint, PartElement } from './kind.ts';
import { levelControl, levelControlSchema } from './level-control.ts';
import { processor, processorSchema } from './processor.ts';
import { sourceUnit, sourceUnitSchema } from './source-unit.ts';
import { speaker, speakerSchema } from './speaker.ts';
import { fan, fanSchema } from './switched/fan.ts';
import { isolatingRelay, isolatingRelaySchema } from './switched/isolating-relay.ts';
import { relay, relaySchema } from './switched/relay.ts';
import { terminal, terminalSchema } from './terminal.ts';
import { wire, wireSchema } from './wire.ts';

/** One catalogue entry of any kind. */
export const partSchema = z.discriminatedUnion('kind', [
  amplifierSchema,
  processorSchema,
  sourceUnitSchema,
  speakerSchema,
  enclosureSchema,
  batterySchema,
  alternatorSchema,
  fuseHolderSchema,
  fuseSchema,
  distributionSchema,
  wireSchema,
  cableSchema,
  relaySchema,
  terminalSchema,
  coveringSchema,
  grommetSchema,
  boardSheetSchema,
  fixingSchema,
  levelControlSchema,
  isolatingRelaySchema,
  chargerSchema,
  capacitorBankSchema,
  crossoverSchema,
  fanSchema,
]);
export type Part = z.output<typeof partSchema>;
export type KindName = Part['kind'];
export type PartOf<K extends KindName> = Extract<Part, { kind: K }>;

/** True for what is cut to length; a made-up lead is taken as it is. */
export function isOnReel(part: Part): boolean {
  return part.kind === 'cable'
    ? part['made-length'] === undefined
    : part.kind === 'wire' || part.kind === 'covering';
}

/** True for a part with a coil and a contact that it moves. */
export function isRelay(part: Part | null | undefined): part is PartOf<'relay' | 'isolating-relay'> {
  return part?.kind === 'relay' || part?.kind === 'isolating-relay';
}

/** True for a crossover that only keeps bass from one speaker: a filter in its lead. */
export function isInLineFilter(part: Part | null | undefined): boolean {
  return part?.kind === 'crossover' && inLineFilter(part) !== null;
}

/** What the contact of a relay carries for as long as it is closed (A). */
export function contactCurrentA(part: PartOf<'relay' | 'isolating-relay'>): number {
  return part.kind === 'relay' ? part['contact-current'] : part['continuous-current'];
}

type KindEntry<K extends KindName> = {
  readonly plural: string;
  readonly schema: z.ZodObject;
  /** True for what is built in as a device. */
  readonly isMounted: boolean;
  terminals(part: PartOf<K>): TerminalSpecs;
  controls(part: PartOf<K>): ControlSpecs;
  footprint(part: PartOf<K>): Footprint | null;
  elements(part: PartOf<K>): readonly PartElement[];
};
type KindTable = { readonly [K in KindName]: KindEntry<K> };

/** Every kind of part. A kind that is missing here does not compile. */
export const kinds: KindTable = {
  amplifier,
  processor,
  'source-unit': sourceUnit,
  speaker,
  enclosure,
  battery,
  alternator,
  'fuse-holder': fuseHolder,
  fuse,
  distribution,
  wire,
  cable,
  relay,
  terminal,
  covering,
  grommet,
  'board-sheet': boardSheet,
  fixing,
  'level-control': levelControl,
  'isolating-relay': isolatingRelay,
  charger,
  'capacitor-bank': capacitorBank,
  crossover,
  fan,
};

/** True for the name of a kind. */
export function isKindName(name: string): name is KindName {
  return Object.hasOwn(kinds, name);
}

/** What the rest of the project asks of a part, whatever its kind. */
export interface PartFacts {
  readonly terminals: TerminalSpecs;
  readonly controls: ControlSpecs;
  readonly footprint: Footprint | null;
  readonly elements: readonly PartElement[];
}

function factsOfKind<K extends KindName>(kind: K, part: PartOf<K>): PartFacts {
  const entry = kinds[kind];
  return {
    terminals: entry.terminals(part),
    controls: entry.controls(part),
    footprint: entry.footprint(part),
    elements: entry.elements(part),
  };
}

/** True for a part that is built in as a device; what is stock is cut, crimped or screwed. */
export function isMounted({ kind }: Part): boolean {
  return kinds[kind].isMounted;
}

/** The facts of a part, by its kind's entry in the table. */
export function partFacts(part: Part): PartFacts {
  return factsOfKind(part.kind, part);
}
