import { fanFor, type WarmCavity } from '../../heat/cavity-air.ts';
import { type OpeningRoom, openingsFor } from '../../heat/openings-for.ts';
import type { Job } from '../../model/content/resolved-job.ts';
import type { VehicleSpace } from '../../model/content/vehicle-space.ts';
import { pointer } from '../../model/place.ts';
import type { PlanHeat } from '../../model/plan/index.ts';
import type { Advice } from '../../model/remark.ts';
import { tapeText } from '../../plan/keeping/tape-text.ts';
import { boxOfSpace } from '../../plan/power/heat.ts';
import { flowText } from '../../read/yaml/write-value.ts';

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
  const opened = space ? withOpenings(job, heat, riseK, space) : null;
  const ways = [withFan(heat, riseK), ...(opened ? [opened] : [])];
  return {
    remedy: [...ways.map(({ text }) => text), measuredText(heat, riseK)].join('; or '),
    advice: ways.map(({ advice }) => advice),
  };
}

/** A fan of so much air, beside the openings that are there. */
function withFan(heat: PlanHeat, riseK: number): WayOut {
  const m3h = Math.ceil((fanFor({ ...heat }, riseK) * 3600) / 5) * 5;
  const value = `${m3h} m3/h`;
  return {
    text: `move ${m3h} m3/h through ${heat.space} with a fan and write fan: ${value} under it in the vehicle's file`,
    advice: [{ path: pointer(['spaces', heat.space, 'fan']), file: 'vehicle', value }],
  };
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
function measuredText(heat: PlanHeat, riseK: number): string {
  const surfaceM2 = Math.ceil((heat.lossW / (heat.passesWM2K * riseK)) * 100 - 1e-9) / 100;
  return `measure its walls and write surface: (from ${surfaceM2} m2 on they do alone)`;
}
