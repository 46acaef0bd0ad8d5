import { groundRefs } from '../../model/content/resolved-job.ts';
import type { Vehicle } from '../../model/content/vehicle.ts';
import { type KindName, type Part, type PartFacts, partFacts } from '../../model/kinds/index.ts';
import { rowNames } from '../../model/short-forms/row-names.ts';
import { withPairs } from '../../read/resolve/resolve-devices.ts';
import { valueAt } from '../../read/schema/schema-walk.ts';
import { anyName, atWays, type JsonSchema, offeredKeys, type SchemaAt } from './json-schema.ts';
import type { ShopNames } from './shop-names.ts';

/** A device that a file names, with its part where the catalogue has it. */
interface NamedDevice {
  readonly id: string;
  readonly part: Part | undefined;
}

/**
 * The names that a job gives itself, offered where it uses them: its devices and their ports, boards, cables, links. They
 * are taken from the data as it stands, however much is still missing, and any other name may be written as well: it may
 * be the next to be given.
 */
export function namesOfJob(data: unknown, { parts, vehicles }: ShopNames): JsonSchema {
  const vehicle = named(vehicles, valueAt(data, ['vehicle']));
  const own = devicesIn(data, 'devices', parts);
  const all = [...own, ...(vehicle ? fittedIn(vehicle, parts) : [])];
  return {
    allOf: [
      atWays(placesOfNames(data, all, vehicle)),
      atWays(own.flatMap(({ id, part }) => (part ? keysOfDevice(id, part) : []))),
      atWays(conductorsOfLinks(data, parts)),
    ],
  };
}

function placesOfNames(data: unknown, all: readonly NamedDevice[], vehicle: Vehicle | undefined): SchemaAt[] {
  const refs = [
    ...all.flatMap((device) => portsOf(device)),
    ...groundRefs(Object.keys(vehicle?.grounds ?? {})),
  ];
  const ofKind = (...kinds: KindName[]) =>
    all.flatMap(({ id, part }) => (part && kinds.includes(part.kind) ? [id] : []));
  const links = keysIn(data, 'links');
  const batteries = anyName(ofKind('battery'));
  return [
    [['devices', '*', 'on'], anyName(keysIn(data, 'boards'))],
    [
      ['devices', '*', 'driven-by'],
      anyName(ofKind('source-unit', 'processor', 'amplifier', 'crossover', 'speaker')),
    ],
    [['devices', '*', 'fed-by'], batteries],
    [['devices', '*', 'after'], offeredKeys([...all.map(({ id }) => id), ...links])],
    [['boards', '*', 'fed-by'], batteries],
    [['links', '*', 'from'], anyName(refs)],
    [['links', '*', 'to'], anyName(refs)],
    [['links', '*', 'cable'], anyName(keysIn(data, 'cables'))],
    [['links', '*', 'branch', 'from'], anyName(links)],
    [['links', '*', 'joint', 'with'], anyName(links)],
    [['runs', '*', 'links', '[]'], anyName(links)],
    [['left-open'], offeredKeys(refs)],
  ];
}

/** What stands under the keys of one device: its controls with their positions, its outputs, channels and fused ways. */
function keysOfDevice(id: string, part: Part): readonly SchemaAt[] {
  const { terminals, controls } = partFacts(part);
  const states: JsonSchema = {
    properties: Object.fromEntries(
      Object.entries(controls).map(([name, { positions = [] }]) => [name, anyName(positions)]),
    ),
  };
  const outputs = offeredKeys(Object.keys(withPairs(outputsOf(terminals))));
  const at = (key: string, schema: JsonSchema): SchemaAt => [['devices', id, key], schema];
  return [
    at('settings', states),
    at('after-commissioning', states),
    at('filters', outputs),
    at('equalising', outputs),
    ...(part.kind === 'processor' ? [at('mix', outputs)] : []),
    ...(part.kind === 'amplifier' ? keysOfAmplifier(id, part) : []),
    ...(part.kind === 'distribution' ? [at('fuses', offeredKeys(Object.keys(part['fused-ways'])))] : []),
  ];
}

/** The channels of an amplifier, and the inputs and channels that may take their signal in another way by its part. */
function keysOfAmplifier(id: string, part: Extract<Part, { kind: 'amplifier' }>): readonly SchemaAt[] {
  const { terminals } = partFacts(part);
  const byLead = Object.entries(terminals).flatMap(([name, spec]) => (spec['speaker-level'] ? [name] : []));
  const inside = Object.entries(part.channels).flatMap(([name, { 'also-takes': takes }]) =>
    takes.length > 0 ? [name] : [],
  );
  const list = (key: string, names: readonly string[]): SchemaAt[] =>
    names.length === 0 ? [] : [[['devices', id, key, '[]'], anyName(names)]];
  return [
    [['devices', id, 'loads'], offeredKeys(channelsOf(part))],
    ...list('speaker-level', byLead),
    ...list('summed-inside', inside),
  ];
}

function channelsOf({ channels, bridges }: Extract<Part, { kind: 'amplifier' }>): readonly string[] {
  return [...Object.keys(channels), ...Object.keys(bridges)];
}

function outputsOf(terminals: PartFacts['terminals']): PartFacts['terminals'] {
  return Object.fromEntries(
    Object.entries(terminals).filter(
      ([, { role }]) => role === 'signal-out' || role.startsWith('speaker-out'),
    ),
  );
}

/** The conductors of the cable that a link names. */
function conductorsOfLinks(data: unknown, parts: ShopNames['parts']): SchemaAt[] {
  return keysIn(data, 'links').flatMap((link): SchemaAt[] => {
    const cable = valueAt(data, ['links', link, 'cable']);
    const part =
      typeof cable === 'string' ? named(parts, valueAt(data, ['cables', cable, 'part'])) : undefined;
    return part?.kind === 'cable'
      ? [[['links', link, 'conductors', '[]'], anyName(Object.keys(part.conductors))]]
      : [];
  });
}

/** The ports of a device as links name them; of a pair by its own name too. */
export function portsOf({ id, part }: NamedDevice): readonly string[] {
  return part ? Object.keys(withPairs(partFacts(part).terminals)).map((port) => `${id}.${port}`) : [];
}

/** The devices under a key of a file, as far as they are written. */
export function devicesIn(data: unknown, key: string, parts: ShopNames['parts']): NamedDevice[] {
  return keysIn(data, key).map((id) => ({ id, part: named(parts, valueAt(data, [key, id, 'part'])) }));
}

function fittedIn({ fitted }: Vehicle, parts: ShopNames['parts']): NamedDevice[] {
  return Object.entries(fitted).map(([id, { part }]) => ({ id, part: named(parts, part) }));
}

/** The names under a key of a file, those of a row one by one. */
export function keysIn(data: unknown, key: string): readonly string[] {
  const value = valueAt(data, [key]);
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return [];
  return Object.keys(value).flatMap((name) => {
    const names = rowNames(name);
    return 'unreadable' in names ? [] : names;
  });
}

function named<T>(known: Readonly<Record<string, T>>, name: unknown): T | undefined {
  return typeof name === 'string' && Object.hasOwn(known, name) ? known[name] : undefined;
}
