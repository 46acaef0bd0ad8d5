import type { JobFile, JobLink } from '../../model/content/job.ts';
import type { Device, Link, LinkEnd, OpenEnd } from '../../model/content/resolved-job.ts';
import type { Vehicle } from '../../model/content/vehicle.ts';
import type { Part, PartOf } from '../../model/kinds/index.ts';
import { pointer } from '../../model/place.ts';
import { linkName } from '../../model/ports/pair-name.ts';
import { isPortPattern } from '../../model/ports/port-pattern.ts';
import type { Report } from '../report.ts';
import { OpenPorts } from './open-ports.ts';
import { withPairs } from './resolve-devices.ts';

type Parts = Readonly<Record<string, Part>>;
interface Lookup {
  readonly job: JobFile;
  readonly parts: Parts;
  readonly devices: ReadonlyMap<string, Device>;
  readonly report: Report;
  /** Run of each link. */
  readonly runs: ReadonlyMap<string, string>;
  readonly ports: OpenPorts;
}

/** A terminal, or both of a pair; or one of several like ports. */
type Reference = readonly [LinkEnd & { readonly ports?: readonly string[] }] | readonly [LinkEnd, LinkEnd];

/** The links of the vehicle and of the job, pairs opened out into one link a conductor. */
export function openLinks(
  job: JobFile,
  vehicle: Vehicle,
  parts: Parts,
  devices: readonly Device[],
  runs: ReadonlyMap<string, string>,
  report: Report,
): Link[] {
  const lookup: Lookup = {
    job,
    parts,
    devices: new Map(devices.map((device) => [device.id, device])),
    report,
    runs,
    ports: new OpenPorts(job),
  };
  const own = Object.entries(job.links).flatMap(([id, link]) => openLink(id, link, lookup));
  checkConductorsOnce(own, report);
  return [...own, ...fittedLinks(vehicle)];
}

function openLink(id: string, given: JobLink, lookup: Lookup): Link[] {
  const { report } = lookup;
  const path = ['links', id];
  checkNames(id, given, lookup);
  const from = readReference([...path, 'from'], given.from, lookup);
  const to = readReference([...path, 'to'], given.to, lookup);
  const conductors = conductorsOf(id, given, lookup);
  if (!from || !to || !conductors || !endsMatch(id, given, { from, to, conductors }, report)) return [];
  const open = [...openEnd('from', from), ...openEnd('to', to)];
  return from.map((end, index): Link => {
    const other = to[index] ?? end;
    const conductor = conductors[index];
    const cable = given.cable === undefined ? undefined : lookup.job.cables[given.cable];
    return {
      id: from.length === 1 ? id : `${id}.${index === 0 ? '+' : '-'}`,
      origin: 'job',
      path: pointer(path),
      from: { device: end.device, terminal: end.terminal },
      to: { device: other.device, terminal: other.terminal },
      given,
      fitted: null,
      cable:
        cable && given.cable !== undefined && conductor !== undefined
          ? { id: given.cable, part: cable.part, conductor }
          : null,
      run: lookup.runs.get(id) ?? null,
      ...(open.length > 0 && { open }),
    };
  });
}

/** Reports a link that goes by the name of a device, and a conductor of a cable with a wire of its own. */
function checkNames(id: string, given: JobLink, { devices, report }: Lookup): void {
  const path = ['links', id];
  // A fuse goes by the name of its holder: a wire of that name would pass for it.
  if (devices.has(id))
    report.atKey(path, `"${id}" is a device already: an id names one thing`, 'choose another id');
  if (
    given.cable !== undefined &&
    (given.wire !== undefined || given.size !== undefined || given.colour !== undefined)
  )
    report.at(
      path,
      `${id} is a conductor of a cable, so it has no wire, size or colour of its own`,
      'keep cable: or wire:, not both',
    );
}

/** True where the ends and the conductors of a link are of one number, and its ends not the same; else it is reported. */
function endsMatch(
  id: string,
  given: JobLink,
  {
    from,
    to,
    conductors,
  }: Readonly<Record<'from' | 'to', Reference>> & {
    readonly conductors: readonly string[];
  },
  report: Report,
): boolean {
  const path = ['links', id];
  if (from.length !== to.length) {
    const [pair, single] = from.length === 2 ? [given.from, given.to] : [given.to, given.from];
    report.at(
      path,
      `${pair} is a pair of terminals, but ${single} is one terminal`,
      `name one terminal, ${pair}+ or ${pair}-, or a pair at both ends`,
    );
    return false;
  }
  if (conductors.length > 0 && conductors.length !== from.length) {
    report.at(
      [...path, 'conductors'],
      `${id} joins ${from.length === 2 ? 'a pair' : 'one terminal'}, but names ${conductors.length} conductors`,
    );
    return false;
  }
  if (from.some((end, index) => isSameEnd(end, to[index]))) {
    report.at(path, `${id} joins ${given.from} to itself`, 'name the terminal at its other end');
    return false;
  }
  return true;
}

function isSameEnd(one: LinkEnd, other: LinkEnd | undefined): boolean {
  return one.device === other?.device && one.terminal === other.terminal;
}

function openEnd(end: OpenEnd['end'], [first]: Reference): OpenEnd[] {
  return 'ports' in first && first.ports ? [{ end, ports: first.ports }] : [];
}

/** A holder or a bar that is proposed has a name on the sheets, and none yet in the file. */
const ofProposals =
  'what is proposed has to be written before a link can name it: without this line rackleaf keep JOB links writes it; or write it under devices: yourself, such as main-fuse: { part: PART, in: PLACE }';

function readReference(
  path: readonly string[],
  reference: string,
  { devices, report, ports }: Lookup,
): Reference | null {
  const dot = reference.indexOf('.');
  const known = Object.fromEntries(devices);
  const device = report.look(path, 'device', reference.slice(0, dot), known, ofProposals);
  if (!device) return null;
  const name = reference.slice(dot + 1);
  const { terminals } = device.facts;
  const single = Object.hasOwn(terminals, name);
  const pair = Object.hasOwn(terminals, `${name}+`) && Object.hasOwn(terminals, `${name}-`);
  if (single && pair) {
    report.at(
      path,
      `"${reference}" is both a terminal and a pair of terminals`,
      'rename the terminal in its part',
    );
    return null;
  }
  if (single) return [{ device: device.id, terminal: name }];
  if (pair)
    return [
      { device: device.id, terminal: `${name}+` },
      { device: device.id, terminal: `${name}-` },
    ];
  if (isPortPattern(name)) {
    const open = ports.take(path, device, name, report);
    return open && [{ device: device.id, ...open }];
  }
  report.unknown(path, `terminal of ${device.id}`, name, Object.keys(withPairs(terminals)));
  return null;
}

/** The conductors that a link takes of its cable; empty for a link that is no part of one, null for a fault. */
function conductorsOf(id: string, given: JobLink, { job, parts, report }: Lookup): readonly string[] | null {
  const path = ['links', id];
  if (given.cable === undefined) {
    if (given.conductors)
      report.at(
        [...path, 'conductors'],
        `${id} names conductors, but no cable`,
        'write cable: with a cable of this job',
      );
    return given.conductors ? null : [];
  }
  const cable = report.look([...path, 'cable'], 'cable', given.cable, job.cables);
  if (!given.conductors) {
    report.at(
      path,
      `${id} takes conductors of ${given.cable}, but does not say which`,
      'write conductors: with their names',
    );
    return null;
  }
  const part = cable ? cablePart(parts, cable.part) : null;
  if (!part) return null;
  const found = given.conductors.map((name, index) =>
    report.look([...path, 'conductors', String(index)], `conductor of ${given.cable}`, name, part.conductors),
  );
  return found.every((conductor) => conductor !== null) ? given.conductors : null;
}

function cablePart(parts: Parts, name: string): PartOf<'cable'> | null {
  const part = parts[name];
  return part?.kind === 'cable' ? part : null;
}

/** A conductor of a cable has two ends, so it makes one link. */
function checkConductorsOnce(links: readonly Link[], report: Report): void {
  const seen = new Map<string, string>();
  for (const { id, cable, given } of links) {
    if (!cable) continue;
    const key = `${cable.id} ${cable.conductor}`;
    const first = seen.get(key);
    const name = given ? linkName(id) : id;
    if (first !== undefined)
      report.at(
        ['links', name, 'conductors'],
        `conductor ${cable.conductor} of ${cable.id} is taken by ${first} already`,
        'take a free conductor',
      );
    else seen.set(key, id);
  }
}

function fittedLinks(vehicle: Vehicle): Link[] {
  return Object.entries(vehicle.links).map(([id, fitted]): Link => {
    return {
      id: `vehicle.${id}`,
      origin: 'vehicle',
      path: pointer(['links', id]),
      from: splitEnd(fitted.from),
      to: splitEnd(fitted.to),
      given: null,
      fitted,
      cable: null,
      run: null,
    };
  });
}

function splitEnd(reference: string): LinkEnd {
  const dot = reference.indexOf('.');
  return { device: reference.slice(0, dot), terminal: reference.slice(dot + 1) };
}
