import type { JobDevice, JobFile } from '../../model/content/job.ts';
import { partAsUsed } from '../../model/content/part-as-used.ts';
import { bodyId, type Device } from '../../model/content/resolved-job.ts';
import type { Vehicle } from '../../model/content/vehicle.ts';
import type { TerminalSpec } from '../../model/kinds/fields/terminal-spec.ts';
import { isMounted, type Part, partFacts } from '../../model/kinds/index.ts';
import { pointer } from '../../model/place.ts';
import { writeQuantity } from '../../model/quantity/quantity.ts';
import { untoldSide } from '../../model/vocabulary.ts';
import { type AskedPart, lookPart } from '../names/look-part.ts';
import type { Report } from '../report.ts';
import { checkInputUse } from './input-use.ts';

type Parts = Readonly<Record<string, Part>>;

/** Every device of the job and of its vehicle, by the order of the files, the body last. */
export function resolveDevices(job: JobFile, vehicle: Vehicle, parts: Parts, report: Report): Device[] {
  const own: Device[] = [];
  for (const [id, given] of Object.entries(job.devices)) {
    const device = jobDevice(id, given, job, vehicle, parts, report);
    if (device) own.push(device);
  }
  return [...own, ...fittedDevices(vehicle, parts, report), body(vehicle)];
}

/** The kind of part that a device must be by what the job says of it, where only one kind has that. */
function askedOf(given: JobDevice): AskedPart {
  if (given.fuse !== undefined) return 'fuse-holder';
  if (Object.keys(given.fuses).length > 0) return 'distribution';
  return given.box !== undefined || given.plays !== undefined || given.channels !== undefined
    ? 'speaker'
    : 'mounted';
}

function jobDevice(
  id: string,
  given: JobDevice,
  job: JobFile,
  vehicle: Vehicle,
  parts: Parts,
  report: Report,
): Device | null {
  const path = ['devices', id];
  if (id === bodyId || Object.hasOwn(vehicle.fitted, id))
    report.atKey(
      path,
      `the vehicle has a device "${id}" already: an id names one thing`,
      'choose another id',
    );
  const part = lookPart(report, [...path, 'part'], given.part, parts, askedOf(given));
  if (!part) {
    report.lose('device', id);
    return null;
  }
  checkInputUse(id, given, part, report);
  const spec = partAsUsed(part, given);
  const facts = partFacts(spec);
  if (!isMounted(spec)) {
    report.at(
      [...path, 'part'],
      `"${given.part}" is stock (${spec.kind}) and can't be a device`,
      'name a part that is mounted',
    );
    report.lose('device', id);
    return null;
  }
  if (!facts.footprint)
    report.at(
      [...path, 'part'],
      `"${given.part}" has no size: and mass: in its part, and ${id} is built in`,
      `write both in the part ${given.part}: size: { width: , depth: , height: } and mass:`,
    );
  for (const key of ['settings', 'after-commissioning', 'filters', 'equalising', 'mix'] as const)
    checkKeys(key, id, given, facts, report);
  checkFuses(id, given, spec, { job, parts, report });
  checkReserve(id, given, spec, report);
  const where = placeOf(id, given, job, vehicle, report);
  return {
    id,
    origin: 'job',
    path: pointer(path),
    title: given.title ?? spec.title,
    part: given.part,
    spec,
    facts,
    given,
    groundZones: {},
    leftOpen: {},
    ...where,
  };
}

type Where = Pick<Device, 'board' | 'seat' | 'zone' | 'side'>;
const nowhere: Where = { board: null, seat: null, zone: 'cabin', side: 'middle' };

function placeOf(id: string, given: JobDevice, job: JobFile, vehicle: Vehicle, report: Report): Where {
  const path = ['devices', id];
  if (given.on !== undefined && given.in !== undefined)
    report.at(path, `${id} is both on a board and in a place`, 'keep one of on: and in:');
  if (given.on !== undefined) {
    if (Object.hasOwn(vehicle.places, given.on) && !Object.hasOwn(job.boards, given.on)) {
      const remedy = `${given.on} is a place of ${vehicle.id}: write in: ${given.on}`;
      report.at([...path, 'on'], `there is no board "${given.on}"`, remedy);
      return nowhere;
    }
    const board = report.look([...path, 'on'], 'board', given.on, job.boards);
    const space = board && vehicle.spaces[board.space ?? job.space ?? ''];
    return space ? { board: given.on, seat: null, zone: space.zone, side: space.side } : nowhere;
  }
  if (given.in === undefined) {
    report.at(
      path,
      `${id} has no place`,
      'write on: with a board of this job, or in: with a place of the vehicle',
    );
    return nowhere;
  }
  if (given.at)
    report.at(
      [...path, 'at'],
      `${id} is on no board, so it has no position on one`,
      'leave out at:, or write on:',
    );
  const seat = report.look([...path, 'in'], `place of ${vehicle.id}`, given.in, vehicle.places);
  return seat ? { board: null, seat: given.in, zone: seat.zone, side: seat.side } : nowhere;
}

/** A rating is written at what holds the fuse: `fuse:` at a holder, `fuses:` at the fused ways of a block. */
function checkFuses(
  id: string,
  given: JobDevice,
  spec: Part,
  { job, parts, report }: { readonly job: JobFile; readonly parts: Parts; readonly report: Report },
): void {
  const path = ['devices', id];
  const held = () => heldWhere(given.fuse ?? 0, job, parts);
  const isBlock = spec.kind === 'distribution';
  if (given.fuse !== undefined && spec.kind !== 'fuse-holder')
    report.at(
      [...path, 'fuse'],
      `${id} is no fuse holder (${spec.kind}), so it has no fuse: of its own`,
      isBlock ? 'write fuses: with the terminal of each fused way' : held(),
    );
  for (const name of Object.keys(given.fuses))
    if (isBlock)
      report.look<unknown>([...path, 'fuses', name], `fused way of ${id}`, name, spec['fused-ways']);
    else
      report.atKey(
        [...path, 'fuses'],
        `${id} has no fused ways (${spec.kind})`,
        spec.kind === 'fuse-holder' ? 'write fuse: with the rating alone' : 'write it at what holds the fuse',
      );
}

/** What holds fuses in a job, each with the line that gives a rating there: that before a device is chosen where none does. */
function heldWhere(ratingA: number, { devices }: JobFile, parts: Parts): string {
  const rating = writeQuantity(ratingA, 'current');
  const lines = Object.entries(devices).flatMap(([id, { part }]) => {
    const spec = parts[part];
    if (spec?.kind === 'fuse-holder') return [`${id}: { part: ${part}, fuse: ${rating} }`];
    const [way] = spec?.kind === 'distribution' ? Object.keys(spec['fused-ways']) : [];
    return way === undefined ? [] : [`${id}: { part: ${part}, fuses: { ${way}: ${rating} } }`];
  });
  return lines.length === 0
    ? 'leave it out: the fuse before it is chosen; its own fuses stand in its part, under supply:'
    : `write it at what holds the fuse, such as ${lines.join(' or ')}; or leave it out: it is chosen`;
}

/** Only a battery has a reserve. */
function checkReserve(id: string, given: JobDevice, spec: Part, report: Report): void {
  if (given['reserve-end'] !== undefined && spec.kind !== 'battery')
    report.at(
      ['devices', id, 'reserve-end'],
      `${id} is no battery (${spec.kind}), so it has no reserve`,
      'write reserve-end: at a battery',
    );
}

/** Settings go by control; filters, equalising and mix by output (terminal or pair). */
function checkKeys(
  key: 'settings' | 'after-commissioning' | 'filters' | 'equalising' | 'mix',
  id: string,
  given: JobDevice,
  facts: Device['facts'],
  report: Report,
): void {
  const isControl = key === 'settings' || key === 'after-commissioning';
  const known = isControl ? facts.controls : withPairs(facts.terminals);
  for (const name of Object.keys(given[key]))
    report.look<unknown>(
      ['devices', id, key, name],
      isControl ? `control of ${id}` : `terminal of ${id}`,
      name,
      known,
    );
}

/** Terminals together with the names of the pairs among them: `CH1` for `CH1+` and `CH1-`. */
export function withPairs(terminals: Readonly<Record<string, TerminalSpec>>): Record<string, true> {
  const names: Record<string, true> = {};
  for (const name of Object.keys(terminals)) {
    names[name] = true;
    const stem = name.endsWith('+') ? name.slice(0, -1) : '';
    if (stem !== '' && Object.hasOwn(terminals, `${stem}-`)) names[stem] = true;
  }
  return names;
}

function fittedDevices(vehicle: Vehicle, parts: Parts, report: Report): Device[] {
  return Object.entries(vehicle.fitted).flatMap(([id, fitted]): Device[] => {
    const spec = parts[fitted.part];
    if (!spec) {
      // The vehicle's own file has the problem.
      report.lose('device', id);
      return [];
    }
    return [
      {
        id,
        origin: 'vehicle',
        path: pointer(['fitted', id]),
        title: spec.title,
        part: fitted.part,
        spec,
        facts: partFacts(spec),
        fittedFuses: fitted.fuses,
        ...(fitted['reserve-end'] !== undefined && { fittedReserveEnd: fitted['reserve-end'] }),
        given: null,
        board: null,
        seat: null,
        zone: fitted.zone,
        side: fitted.side ?? untoldSide,
        ...(fitted.side === undefined && { sideOpen: true }),
        groundZones: {},
        leftOpen: fitted['left-open'],
      },
    ];
  });
}

function body(vehicle: Vehicle): Device {
  const terminals: Record<string, TerminalSpec> = {};
  for (const [name, point] of Object.entries(vehicle.grounds))
    terminals[name] = { role: 'body', joint: 'body-bolt', stud: point.stud, conductors: 4, ferrule: 'no' };
  return {
    id: bodyId,
    origin: 'vehicle',
    path: '/grounds',
    title: 'Body of the vehicle',
    part: null,
    spec: null,
    facts: { terminals, controls: {}, footprint: null, elements: [] },
    given: null,
    board: null,
    seat: null,
    zone: 'cabin',
    side: 'middle',
    groundZones: Object.fromEntries(Object.entries(vehicle.grounds).map(([name, { zone }]) => [name, zone])),
    leftOpen: {},
  };
}
