import type { Job, ReadJob } from '../model/content/resolved-job.ts';
import { measuresAt } from '../model/content/written-measures.ts';
import type { Finding } from '../model/finding.ts';
import { isFigure as isReadBack } from '../model/finding-text.ts';
import { type Place, pointer } from '../model/place.ts';
import { type DimensionName, dimensionNames, dimensions, quantityIn } from '../model/quantity/quantity.ts';
import { catalogueSpot, deviceOf, deviceSpot, routeSpot, spaceSpot } from './look-up.ts';
import { placeOf, type Spot } from './rule.ts';

/** A finding with its value and its limit as they are written, where one of the spots that it rests on has them. */
export function withWritten(finding: Finding, job: Job): Finding {
  const { value, limit, unit = '', related } = finding;
  const dimension = dimensionOf(unit);
  if (dimension === null) return finding;
  const texts = [...related.flatMap((id) => spotsOf(job, id)), { path: '/rules', file: 'shop' as const }]
    .flatMap((spot) => measuresAt(job, spot))
    .map(({ text }) => text.trim().replace(/\s+/g, ' '));
  const textOf = (figure: Finding['value']): string | undefined =>
    typeof figure === 'number'
      ? texts.find((text) => isFigure(text, dimension, figure) && isReadBack(text, figure, unit))
      : undefined;
  const written = { value: textOf(value), limit: textOf(limit) };
  return written.value === undefined && written.limit === undefined ? finding : { ...finding, written };
}

/**
 * A finding with the places of the figures that it rests on, apart from its own place: where its value or its limit
 * stands in what it is about, and in the house rules of the shop. A figure that stands twice in one of these is not
 * guessed at.
 */
export function withData(finding: Finding, job: ReadJob): Finding {
  const { value, limit, unit = '', related, where } = finding;
  const figures = [value, limit].filter((figure): figure is number => typeof figure === 'number');
  const dimension = dimensionOf(unit);
  if (dimension === null || figures.length === 0) return finding;
  const spots: readonly DataSpot[] = [
    ...related.flatMap((id) => spotsOf(job, id)),
    { path: '/rules', file: 'shop' as const },
  ];
  const found = figures.flatMap((figure) => {
    const at = (spot: Spot): readonly string[] =>
      measuresAt(job, spot).flatMap(({ text, path }) => (isFigure(text, dimension, figure) ? [path] : []));
    return spots.flatMap((spot) => {
      // What a device is given itself decides; that its part has a like figure is chance.
      if (spot.behind?.some((before) => at(before).length > 0)) return [];
      const there = at(spot);
      const named = there.filter((path) => path.split('/').some((name) => spot.terminal === name));
      const [only, more] = named.length > 0 ? named : there;
      return only !== undefined && !more
        ? [placeOf({ path: only, ...(spot.file && { file: spot.file }) }, job)]
        : [];
    });
  });
  const data = distinct(found).filter((place) => !isSame(place, where));
  return data.length === 0 ? finding : { ...finding, data };
}

/** The dimension that a unit of a finding measures; null where it is none, or a plain share. */
function dimensionOf(unit: string): DimensionName | null {
  return (
    dimensionNames.find((name) => unit !== '' && name !== 'ratio' && dimensions[name].si === unit) ?? null
  );
}

function isFigure(text: string, dimension: DimensionName, figure: number): boolean {
  const read = quantityIn(text, dimension);
  return read !== null && figure !== 0 && Math.abs(read / figure - 1) < 1e-9;
}

/** Where a figure is looked for. */
interface DataSpot extends Spot {
  /** What decides before it, where the figure stands there. */
  readonly behind?: readonly Spot[];
  /** The terminal that is asked about: of several places that with its name. */
  readonly terminal?: string;
}

/** Where the data of what an id names was written: the device, its part, the space of a board, the route of a run, a link. */
function spotsOf(job: Job, id: string): readonly DataSpot[] {
  const [head = '', terminal] = id.split('.');
  const device = deviceOf(job, id) ?? deviceOf(job, head);
  const board = job.boards.find((one) => one.id === id);
  const run = job.runs.find((one) => one.id === id);
  const link = job.links.find((one) => one.id === id || one.id === `${id}.+`);
  const part = device?.part ?? (Object.hasOwn(job.parts, id) ? id : null);
  const own = device ? [deviceSpot(job, device.id)] : [];
  const asked = terminal === undefined || device?.id === id ? {} : { terminal };
  return [
    ...own.map((spot) => ({ ...spot, ...asked })),
    ...(part === null ? [] : [{ ...catalogueSpot(part), ...asked, behind: own }]),
    ...(board ? [{ path: board.path }, spaceSpot(board), catalogueSpot(board.sheetId)] : []),
    ...(run ? [{ path: run.path }, routeSpot(run)] : []),
    ...(link ? [{ path: link.path, file: link.origin }] : []),
    ...(Object.hasOwn(job.vehicle.places, id)
      ? [{ path: pointer(['places', id]), file: 'vehicle' as const }]
      : []),
  ];
}

const isSame = (a: Place, b: Place): boolean => a.file === b.file && a.path === b.path;

function distinct(places: readonly Place[]): readonly Place[] {
  return places.filter((place, at) => places.findIndex((other) => isSame(place, other)) === at);
}
