import type { WrittenBoard, WrittenDevice, WrittenJob } from '../../model/content/job.ts';
import type { Vehicle } from '../../model/content/vehicle.ts';
import { inLineFilter } from '../../model/kinds/crossover.ts';
import type { Part } from '../../model/kinds/index.ts';
import { listed } from '../../model/printed/listed.ts';
import { withArticle } from '../../model/printed/with-article.ts';
import type { Report } from '../report.ts';
import { lookPart } from './look-part.ts';

type Parts = Readonly<Record<string, Part>>;

/**
 * Looks up the names that speak to the rules of proposing: what drives, feeds and boxes a device, its place and its
 * ground point. A place that the vehicle has not is told here, where it is written; nothing that follows tells it again.
 */
export function checkShortNames(job: WrittenJob, vehicle: Vehicle, parts: Parts, report: Report): void {
  const kinds = kindsOf(job, vehicle, parts);
  for (const [id, device] of Object.entries(job.devices)) {
    const path = ['devices', id];
    checkFeedAndGround(path, device, kinds, vehicle, report);
    checkCooled([...path, 'cools'], device, vehicle, parts, report);
    const driver = device['driven-by'];
    if (driver !== undefined) {
      const isFed = isPassedOn(job, id, driver, parts);
      checkDriver([...path, 'driven-by'], driver, parts[device.part], { kinds, isFed }, report);
    }
    if (device.box !== undefined) {
      const box = lookPart(report, [...path, 'box'], device.box, parts, 'enclosure');
      if (box && box.kind !== 'enclosure')
        report.at([...path, 'box'], `"${device.box}" is no enclosure but ${withArticle(box.kind)}`);
    }
  }
  checkPlaces(job, vehicle, report);
  for (const [id, board] of Object.entries(job.boards))
    checkFeedAndGround(['boards', id], board, kinds, vehicle, report);
}

function checkPlaces(
  { devices, boards }: WrittenJob,
  { id: vehicle, places: known }: Vehicle,
  report: Report,
): void {
  const what = `place of ${vehicle}`;
  const written = Object.entries(devices).flatMap(([id, { on, in: places = [] }]) => {
    if (on !== undefined) return [];
    const path = ['devices', id, 'in'];
    return Array.isArray(places)
      ? places.map((name, index) => ({ name, path: [...path, String(index)] }))
      : [{ name: places, path }];
  });
  const strange = written.filter(({ path, name }) => {
    if (Object.hasOwn(known, name) || !Object.hasOwn(boards, name))
      return report.look(path, what, name, known) === null;
    report.at(path, `there is no ${what} "${name}"`, `${name} is a board of this job: write on: ${name}`);
    return true;
  });
  for (const { name } of strange) report.lose(what, name);
}

type Kinds = Readonly<Record<string, Part['kind']>>;

/** The kinds of the devices that are written and fitted. */
function kindsOf({ devices }: WrittenJob, { fitted }: Vehicle, parts: Parts): Kinds {
  return Object.fromEntries(
    [...Object.entries(devices), ...Object.entries(fitted)].flatMap(([id, { part }]) => {
      const kind = parts[part]?.kind;
      return kind === undefined ? [] : [[id, kind] as const];
    }),
  );
}

/** What may drive a device of a kind: a signal goes from the source over processors and amplifiers to speakers. */
const drivers: Readonly<Partial<Record<Part['kind'], readonly Part['kind'][]>>> = {
  speaker: ['amplifier', 'source-unit', 'crossover'],
  crossover: ['amplifier', 'source-unit', 'speaker'],
  amplifier: ['processor', 'source-unit'],
  processor: ['source-unit'],
};

/**
 * True for an amplifier with line outputs before another amplifier, which plays what they pass on. Of amplifiers that would
 * drive each other in a ring none does.
 */
function isPassedOn({ devices }: WrittenJob, own: string, driver: string, parts: Parts): boolean {
  const spec = (id: string) => parts[devices[id]?.part ?? ''];
  const passed = new Set([own]);
  for (let at: string | undefined = driver; at !== undefined; at = devices[at]?.['driven-by']) {
    if (passed.has(at)) return false;
    passed.add(at);
  }
  const feeder = spec(driver);
  return (
    spec(own)?.kind === 'amplifier' &&
    feeder?.kind === 'amplifier' &&
    Object.values(feeder.terminals).some(({ role }) => role === 'signal-out')
  );
}

function checkDriver(
  path: readonly string[],
  name: string,
  part: Part | undefined,
  { kinds, isFed }: { readonly kinds: Kinds; readonly isFed: boolean },
  report: Report,
): void {
  const may: readonly Part['kind'][] = part
    ? [...(drivers[part.kind] ?? []), ...(isFed ? (['amplifier'] as const) : [])]
    : [];
  const found = report.look(path, 'device', name, kinds);
  if (part && may.length === 0)
    report.atKey(
      path,
      `nothing drives ${withArticle(part.kind)}`,
      'leave driven-by: to speakers, passive crossovers, amplifiers and processors',
    );
  else if (found === 'crossover' && part?.kind === 'crossover')
    report.at(
      path,
      `${name} is a crossover, which drives no crossover: one parts the band already`,
      `take this one out, and write driven-by: ${name} at the woofers and tweeters behind it`,
    );
  else if (found && part && !may.includes(found))
    report.at(
      path,
      `${name} is ${withArticle(found)}, which drives no ${part.kind}`,
      `name a device that is ${listed(may.map(withArticle), 'or')}`,
    );
  else if (found === 'speaker' && part?.kind === 'crossover' && inLineFilter(part) === null)
    report.at(
      path,
      `${name} is a speaker, and only a filter in the lead of another speaker hangs beside it: this crossover parts the band of its channel`,
      'name its amplifier; or, where it is one capacitor or filter before the tweeter, write that way alone in its part, such as ways: { T: from 4 kHz }',
    );
}

/** A fan alone moves the air of a space, and one that the vehicle has. */
function checkCooled(
  path: readonly string[],
  { cools, part }: WrittenDevice,
  vehicle: Vehicle,
  parts: Parts,
  report: Report,
): void {
  if (cools === undefined) return;
  const kind = parts[part]?.kind;
  if (kind !== undefined && kind !== 'fan')
    report.atKey(path, `${withArticle(kind)} moves no air through a space`, 'leave cools: to fans');
  report.look(path, `space of ${vehicle.id}`, cools, vehicle.spaces);
}

function checkFeedAndGround(
  path: readonly string[],
  { 'fed-by': battery, ground }: Pick<WrittenDevice | WrittenBoard, 'fed-by' | 'ground'>,
  kinds: Kinds,
  vehicle: Vehicle,
  report: Report,
): void {
  if (battery !== undefined) {
    const kind = report.look([...path, 'fed-by'], 'device', battery, kinds);
    if (kind && kind !== 'battery')
      report.at(
        [...path, 'fed-by'],
        `${battery} is no battery but ${withArticle(kind)}`,
        'name the battery that feeds it',
      );
  }
  if (ground !== undefined)
    report.look([...path, 'ground'], `ground point of ${vehicle.id}`, ground, vehicle.grounds);
}
