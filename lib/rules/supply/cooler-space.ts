import { fanFor, type WarmCavity } from '../../heat/cavity-air.ts';
import { type OpeningRoom, openingsFor } from '../../heat/openings-for.ts';
import { partsOfKind } from '../../model/content/parts-of-kind.ts';
import type { Job } from '../../model/content/resolved-job.ts';
import type { VehicleSpace } from '../../model/content/vehicle-space.ts';
import { pointer } from '../../model/place.ts';
import type { PlanHeat } from '../../model/plan/index.ts';
import { tapeText } from '../../model/quantity/tape-text.ts';
import type { Advice } from '../../model/remark.ts';
import { boxOfSpace, movingAir } from '../../plan/power/space-heat.ts';
import { flowText } from '../../read/yaml/write-value.ts';
import { shelvedFirst } from '../../shelf/shelf-lengths.ts';
import { m3hNeeded } from './air-words.ts';

interface WayOut {
  readonly text: string;
  readonly advice: Advice;
}

/** What helps a space whose air gets too warm for what bears so much: in words, and as lines to write. */
export function coolerSpace(
  job: Job,
  heat: PlanHeat,
  mostC: number,
): { readonly remedy: string; readonly advice?: readonly Advice[] } {
  const riseK = mostC - heat.outsideC;
  if (riseK <= 0) return { remedy: 'mount it in a cooler zone, or take what its maker allows there' };
  const space = job.boards.find(({ spaceId }) => spaceId === heat.space)?.space;
  const opened = space && takesOpenings(space) ? withOpenings(job, heat, riseK, space) : null;
  const fan = space ? [`${withFan(job, heat, riseK, space)}${throughLid(space)}`] : [];
  return {
    remedy: [...fan, ...(opened ? [opened.text] : []), measuredText(heat, riseK, space)].join('; or '),
    ...(opened && { advice: [opened.advice] }),
  };
}

/**
 * True where upright openings have a place: before a space that stands, or at both ends of one that lies. One that is
 * told to lie between walls has none.
 */
function takesOpenings(space: VehicleSpace): boolean {
  const { left, right, top, bottom } = space.bounds;
  const isFree = (...ends: readonly unknown[]) => ends.every((end) => end !== 'wall');
  return boxOfSpace(space).plane === 'standing' || isFree(left, right) || isFree(top, bottom);
}

/** Holes that lie level have no height by which warm air would leave and cool air come in. */
function throughLid(space: VehicleSpace): string {
  return boxOfSpace(space).plane === 'lying' && space.bounds.front === 'lid'
    ? ' (round vents in its lid are its way in and out: lying level they draw nothing without it)'
    : '';
}

/** A fan of so much air, beside the openings and the fans that are there. */
function withFan(job: Job, heat: PlanHeat, riseK: number, space: VehicleSpace): string {
  const { thereM3S, statedM3S, delivers } = movingAir(job, heat.space, space);
  // What the vehicle's file only wishes for does not count beside one that is fitted.
  const keptM3S = delivers * statedM3S + (space.fan?.there ? thereM3S : 0);
  return fitFan(job, heat.space, Math.max(0, fanFor({ ...heat }, riseK) - keptM3S));
}

/**
 * How a fan is fitted that moves so much air in place (m3/s): the smallest of the catalogue that does, one on the shelf
 * first, on the first board of its space; where the catalogue has none, what its part must tell.
 */
export function fitFan(job: Job, space: string, airM3S: number): string {
  const statedM3S = airM3S / job.rules['fan-delivers'].value;
  const asked = `move ${m3hNeeded(airM3S)} through ${space} with a fan`;
  const inOrder = shelvedFirst(job.shop);
  const [best] = partsOfKind(job.parts, 'fan')
    .filter(([, { airflow }]) => airflow >= statedM3S - 1e-12)
    .toSorted(([a, one], [b, other]) => inOrder(a, b) || one.airflow - other.airflow || (a < b ? -1 : 1));
  const board = job.boards.find(({ spaceId }) => spaceId === space)?.id;
  if (!best || board === undefined)
    return `${asked}: write its part, of the kind fan with an airflow: of ${m3hNeeded(statedM3S)} or more, and the fan among the devices`;
  return `${asked}: write ${freeName(job, 'fan')}: ${flowText({ part: best[0], on: board })} under devices:`;
}

/** A name that no device has. */
function freeName({ devices }: Pick<Job, 'devices'>, name: string): string {
  const isFree = (id: string) => devices.every((device) => device.id !== id);
  for (let at = 1; ; at += 1) {
    const id = at === 1 ? name : `${name}-${at}`;
    if (isFree(id)) return id;
  }
}

/** One opening low and one high, or on a space that lies one at each end. */
const count = 2;

/** Openings beside those that are there, as the list that the vehicle's file then has. */
function withOpenings(job: Job, heat: PlanHeat, riseK: number, space: VehicleSpace): WayOut | null {
  const { units } = job.shop;
  const cavity: WarmCavity = { ...heat };
  const opening = openingsFor(cavity, riseK, roomOf(job, space), count);
  if (!opening) return null;
  const [width, height] = [tapeText(opening.widthM, units), tapeText(opening.heightM, units)];
  const there = space.openings.map((one) => ({
    width: tapeText(one.width, units),
    height: tapeText(one.height, units),
  }));
  const value = [...there, ...Array.from({ length: count }, () => ({ width, height }))];
  const areaCm2 = Math.ceil(count * opening.widthM * opening.heightM * 1e4);
  const where = boxOfSpace(space).plane === 'standing' ? 'one low and one high' : 'one at each end';
  return {
    text: `give it ${count} upright openings, ${where}, each ${width} wide and ${height} high (${areaCm2} cm2 together), and write openings: ${flowText(value)} under it in the vehicle's file`,
    advice: [{ path: pointer(['spaces', heat.space, 'openings']), file: 'vehicle', value }],
  };
}

/** The trim beside openings keeps a web on both sides, and one between a low and a high one. */
function roomOf({ shop, rules }: Pick<Job, 'shop' | 'rules'>, space: VehicleSpace): OpeningRoom {
  const { widthM, heightM, depthM, plane } = boxOfSpace(space);
  const webM = rules['web-good'].value;
  return {
    widthM: widthM - 2 * webM,
    heightM: plane === 'standing' ? (heightM - webM) / count : depthM,
    stepM: shop.units === 'inch' ? 0.0254 / shop.fraction : 0.001,
  };
}

/** The surface that would give the heat off by itself: what is measured may turn out larger than its box tells. */
function measuredText(heat: PlanHeat, riseK: number, space?: VehicleSpace): string {
  const lies = space !== undefined && boxOfSpace(space).plane === 'lying';
  const shares = lies
    ? ', of which the one above gives off seven tenths of its area, each side half and the floor nothing,'
    : '';
  const surfaceM2 = Math.ceil((heat.lossW / (heat.passesWM2K * riseK)) * 100 - 1e-9) / 100;
  return `measure its walls${shares} and write surface: with what gives off heat (from ${surfaceM2} m2 on they do alone)`;
}
