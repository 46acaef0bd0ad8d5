import { type BuiltJob, builtBefore, inPlaceBefore, type ReleasedFacts } from '../../model/content/built.ts';
import type { JobFile, WrittenJob } from '../../model/content/job.ts';
import type { PromisedShelf } from '../../model/content/promised.ts';
import { type Device, type Link, type ReadJob, terminalId } from '../../model/content/resolved-job.ts';
import type { Shop } from '../../model/content/shop.ts';
import type { Vehicle } from '../../model/content/vehicle.ts';
import type { WrittenMeasures } from '../../model/content/written-measures.ts';
import type { HouseRules } from '../../model/house-rules.ts';
import type { Part } from '../../model/kinds/index.ts';
import type { Place } from '../../model/place.ts';
import { stemName } from '../../model/ports/pair-name.ts';
import { isPortPattern, matchesPattern } from '../../model/ports/port-pattern.ts';
import { withArticle } from '../../model/printed/with-article.ts';
import { asksForProposals, type CompletedJob, completeJob } from '../../propose/complete-job.ts';
import { checkAccepted } from '../names/accepted-names.ts';
import { checkAfter, checkAudioFields } from '../names/audio-names.ts';
import { checkShared } from '../names/joints.ts';
import { lookPart } from '../names/look-part.ts';
import { checkRevisionDays } from '../names/revision-days.ts';
import { checkShortNames } from '../names/short-job-names.ts';
import { privateLeaks } from '../private-leaks.ts';
import { rulesInVehicle } from '../read-house-rules.ts';
import { type Report, spotOf } from '../report.ts';
import { openNames } from '../schema/line-meant.ts';
import type { PlacedFile } from '../yaml/placed-file.ts';
import { checkLengths } from './check-lengths.ts';
import { withBuiltBoards, withBuiltPlaces, withBuiltWires } from './hold-values.ts';
import { openLinks } from './open-links.ts';
import { resolveBoards } from './resolve-boards.ts';
import { resolveDevices } from './resolve-devices.ts';
import { resolveRuns } from './resolve-runs.ts';

/** What the jobs of a shop share. */
export interface Surroundings {
  /** With what of its stock is offered to the job. */
  readonly shop: Shop;
  readonly promised: PromisedShelf;
  readonly shopFile: PlacedFile;
  readonly rules: HouseRules;
  readonly parts: Readonly<Record<string, Part>>;
  readonly partPlace: (path: string) => Place;
  readonly partMeasures: WrittenMeasures;
  readonly vehicles: Readonly<Record<string, ReadVehicle>>;
}

/** A vehicle as its file has it. */
export interface ReadVehicle {
  readonly vehicle: Vehicle;
  readonly placed: PlacedFile;
  /** True where every name in it stands for something. */
  readonly isWhole: boolean;
}

/**
 * Looks up every name of a job and opens its shorthand out. Reports what it can't find; the job is null
 * where anything was reported, since a sheet from half a job would be worse than none.
 */
export function resolveJob(
  asWritten: WrittenJob,
  placed: PlacedFile,
  around: Surroundings,
  released: ReleasedFacts,
  report: Report,
): ReadJob | null {
  const before = report.problems.length;
  const built = builtBefore(released, asWritten.revision);
  const written = built ? withBuiltBoards(asWritten, built) : asWritten;
  const found = lookVehicle(written.vehicle, around.vehicles, report);
  privateLeaks(written, report);
  if (!found) return null;
  const { vehicle } = found;
  const rules = rulesInVehicle(around.rules, vehicle);
  const completed = completeJob(written, { vehicle, parts: around.parts, rules, shop: around.shop }, built);
  const { proposals, spots } = completed;
  const file = built ? withBuiltPlaces(completed.job, built) : completed.job;
  checkShortNames(written, vehicle, around.parts, report);
  report.standsAt(spots);
  const isReadable = found.isWhole && hasEveryPart(written, vehicle, around.parts);
  tellUndecided(isReadable ? completed.undecided : null, report);
  const devices = resolveDevices(file, vehicle, around.parts, report);
  const boards = resolveBoards(file, vehicle, { parts: around.parts, devices }, report);
  checkCables(file, around.parts, report);
  const { runs, byLink } = resolveRuns(file, vehicle, around.parts, report);
  const opened = openLinks(file, vehicle, around.parts, devices, byLink, report);
  checkAudioFields(devices, report);
  const links = checkShared({ links: opened, runs, devices, parts: around.parts, report });
  checkWires(file, around.parts, report);
  checkOpen(file, devices, links, report);
  checkSaid(file, report);
  checkLengths({ links, devices, undecided: isReadable ? completed.undecided : [] }, around.parts, report);
  checkAnew(file, built, report);
  if (report.problems.length > before || report.incomplete) return null;
  const cut = built && withBuiltWires(links, built, { devices, runs, parts: around.parts, anew: file.anew });
  return {
    id: file.id,
    file,
    shop: around.shop,
    promised: around.promised,
    rules,
    ...{ proposals, asksForLinks: asksForProposals(written) },
    vehicle,
    parts: around.parts,
    devices,
    links: cut?.links ?? links,
    boards,
    runs,
    place: (path) => placed.placeOf(spotOf(path, spots)),
    span: placed.span,
    vehiclePlace: found.placed.placeOf,
    shopPlace: around.shopFile.placeOf,
    partPlace: around.partPlace,
    measures: measuresOf(placed, found.placed, around),
    releasedLabels: released.labels,
    ...takenBefore(written, released, built),
    held: cut?.held ?? null,
  };
}

/** What could not be decided; null where a part or the vehicle can't be read: that is told there, and what follows is no news. */
function tellUndecided(undecided: CompletedJob['undecided'] | null, report: Report): void {
  for (const { path, message, remedy } of undecided ?? []) report.at(path, message, remedy);
  if (undecided === null) report.hushProposed();
}

/** True where each device of a job and of its vehicle has its part in the catalogue. */
function hasEveryPart(job: WrittenJob, { fitted }: Vehicle, parts: Surroundings['parts']): boolean {
  const own = Object.values(job.devices).flatMap(({ part, box }) => [part, box ?? []].flat());
  const named = [...own, ...Object.values(fitted).map(({ part }) => part)];
  return named.every((part) => Object.hasOwn(parts, part));
}

/** What a revision is built on, and what of it is in place, as the list of revisions tells which are built in. */
function takenBefore(
  { revision, revisions }: Pick<WrittenJob, 'revision' | 'revisions'>,
  released: ReleasedFacts,
  built: BuiltJob | null,
): Pick<ReadJob, 'built' | 'inPlace'> {
  const installed = new Set(revisions.flatMap((one) => (one.installed === undefined ? [] : [one.revision])));
  const inPlace = inPlaceBefore(released, revision, installed);
  return { built, ...(inPlace && { inPlace }) };
}

/** What a job says of itself, as far as no equipment is asked for it. */
function checkSaid(file: JobFile, report: Report): void {
  checkAfter(file, report);
  checkAccepted(file, report);
  checkRevisionDays(file, report);
}

function measuresOf(
  job: PlacedFile,
  vehicle: PlacedFile,
  { shopFile, partMeasures }: Pick<Surroundings, 'shopFile' | 'partMeasures'>,
): ReadJob['measures'] {
  // Nothing that an estimate reckons with is told of a plan.
  const shop = Object.fromEntries(
    Object.entries(shopFile.measures).filter(([head]) => head.split('/')[1] !== 'estimate'),
  );
  return { job: job.measures, vehicle: vehicle.measures, shop, part: partMeasures };
}

/** Looks the vehicle up; where it is not known, says how one is written. */
function lookVehicle<V>(name: string, vehicles: Readonly<Record<string, V>>, report: Report): V | null {
  if (Object.hasOwn(vehicles, name)) return vehicles[name] ?? null;
  const orElse = `write it with rackleaf new vehicle ${name}`;
  report.unknown(['vehicle'], 'vehicle', name, Object.keys(vehicles), orElse);
  return null;
}

function checkCables(file: JobFile, parts: Surroundings['parts'], report: Report): void {
  for (const [id, cable] of Object.entries(file.cables)) {
    const path = ['cables', id, 'part'];
    const part = lookPart(report, path, cable.part, parts, 'cable');
    if (part && part.kind !== 'cable')
      report.at(path, `"${cable.part}" is not a cable but ${withArticle(part.kind)}`);
  }
}

function checkWires(file: JobFile, parts: Surroundings['parts'], report: Report): void {
  for (const [id, link] of Object.entries(file.links)) {
    if (link.wire === undefined) continue;
    const path = ['links', id, 'wire'];
    const part = lookPart(report, path, link.wire, parts, 'wire');
    if (!part) continue;
    if (part.kind !== 'wire')
      report.at(
        path,
        `"${link.wire}" is not wire but ${withArticle(part.kind)}`,
        'for a cable write cable: and conductors:',
      );
    else if (link.size && link.size.areaMm2 !== part.size.areaMm2)
      report.at(
        ['links', id, 'size'],
        `${id} asks for ${link.size.label}, but "${link.wire}" is ${part.size.label}`,
        'keep one of wire: and size:',
      );
    else if (link.colour !== undefined && link.colour !== part.colour)
      report.at(
        ['links', id, 'colour'],
        `${id} asks for ${link.colour}, but "${link.wire}" is ${part.colour}`,
        'keep one of wire: and colour:',
      );
  }
}

/** What is left open is there, and is open. */
function checkOpen(file: JobFile, devices: readonly Device[], links: readonly Link[], report: Report): void {
  checkLeftOpen(file, devices, report);
  checkOpenIsFree(file, links, report);
}

function checkLeftOpen(file: JobFile, devices: readonly Device[], report: Report): void {
  const byId = Object.fromEntries(devices.map((device) => [device.id, device]));
  for (const reference of Object.keys(file['left-open'])) {
    const dot = reference.indexOf('.');
    const path = ['left-open', reference];
    const device = report.look(path, 'device', reference.slice(0, dot), byId);
    const name = reference.slice(dot + 1);
    const isOpen =
      device !== null &&
      isPortPattern(name) &&
      Object.keys(device.facts.terminals).some((one) => matchesPattern(name, one));
    if (device && !isOpen && !Object.hasOwn(device.facts.terminals, name))
      tellUnknownOpen(path, device, name, report);
  }
}

/** A pair, or a range of terminals, that is meant to stay open is told as the names of its terminals. */
function tellUnknownOpen(path: readonly string[], device: Device, name: string, report: Report): void {
  const names = Object.keys(device.facts.terminals);
  const meant = openNames(`${device.id}.${name}`)?.slice(device.id.length + 1) ?? name;
  const each = meant.split('|').map((one) => names.filter((own) => own === one || stemName(own) === one));
  const what = `terminal of ${device.id}`;
  if (each.every((own) => own.length > 0))
    report.at(
      path,
      `there is no ${what} "${name}"`,
      `write ${device.id}.${each.flat().join('|')}: with the reason behind it`,
    );
  else report.look(path, what, name, device.facts.terminals);
}

/** What is left open by its own name has nothing linked to it; a pattern takes what the links leave. */
function checkOpenIsFree(file: JobFile, links: readonly Link[], report: Report): void {
  for (const reference of Object.keys(file['left-open'])) {
    const link = links.find(({ from, to, open = [] }) => {
      const isOpen = (end: 'from' | 'to') => open.some((one) => one.end === end);
      return (
        (terminalId(from) === reference && !isOpen('from')) || (terminalId(to) === reference && !isOpen('to'))
      );
    });
    if (link)
      report.atKey(
        ['left-open', reference],
        `${reference} is written as left open, but ${link.id} is linked to it`,
        'take one of them out',
      );
  }
}

/** What is named to be proposed anew is of this job, or was of the revision that it is built on. */
function checkAnew(file: JobFile, built: BuiltJob | null, report: Report): void {
  const known = { ...built?.items, ...file.devices, ...file.links, ...file.boards };
  for (const [index, id] of file.anew.entries())
    report.look(['anew', String(index)], 'device, link or board', id, known);
}
