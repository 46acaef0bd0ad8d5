import { cavityAir, type WarmCavity } from '../heat/cavity-air.ts';
import { deviceLoss } from '../heat/device-loss.ts';
import { type CavityBox, coolingSurface } from '../heat/surface.ts';
import type { OperatingPoint, PlanHeat, PlanPower } from '../model/plan/index.ts';
import type { Board, Device, Job } from '../model/resolved-job.ts';
import { ambientRules } from '../model/zone-ambient.ts';
import { powerShare } from '../power/load-current.ts';
import { supplyOf } from './device-loads.ts';
import type { PlanBook } from './plan-book.ts';

/**
 * How warm the air of each space with boards gets at the operating point of music: the losses of its devices against
 * its walls, its openings and its fan. None where that point has no solution: what it draws is not known then.
 */
export function planHeat(job: Job, power: PlanPower, book: PlanBook): PlanHeat[] {
  const music = power.points.find(({ name }) => name === 'music');
  if (!music || music.state === 'no-solution') return [];
  const spaces = new Map(job.boards.map((board) => [board.spaceId, board]));
  return [...spaces.values()].map((board) => heatOfSpace(job, board, { power, music }, book));
}

interface PlayedPower {
  readonly power: PlanPower;
  readonly music: OperatingPoint;
}

function heatOfSpace(job: Job, { spaceId, space }: Board, played: PlayedPower, book: PlanBook): PlanHeat {
  const at = `heat.${spaceId}`;
  const boards = job.boards.filter((board) => board.spaceId === spaceId).map(({ id }) => id);
  const items = job.devices
    .filter(({ board }) => board !== null && boards.includes(board))
    .flatMap((device) => heatOfDevice(job, device, played, book, at));
  const lossW = items.reduce((sum, item) => sum + item.lossW, 0);
  const walls = { box: boxOfSpace(space), airM3: space.air ?? null, surfaceM2: space.surface ?? null };
  const cavity: WarmCavity = {
    lossW,
    outsideC: job.rules[ambientRules[space.zone]].value,
    surfaceM2: book.trace(`${at}.surfaceM2`, coolingSurface(walls)),
    passesWM2K: job.rules['cavity-passes'].value,
    fanM3S: space.fan ?? 0,
    openings: space.openings.map(({ width, height }) => ({ widthM: width, heightM: height })),
  };
  const { airC, ...rest } = cavityAir(cavity);
  return {
    ...{ space: spaceId, spaceTitle: space.title, zone: space.zone },
    items,
    ...cavity,
    openings: [...cavity.openings],
    ...rest,
    airC: book.trace(`${at}.airC`, airC),
  };
}

/** The box round the outline of a space, before its mounting plane. */
function boxOfSpace({ outline, depth, right, upward }: Board['space']): CavityBox {
  const [xs, ys] = [outline.map(([x]) => x), outline.map(([, y]) => y)];
  const span = (values: readonly number[]): number => Math.max(...values) - Math.min(...values);
  const stands = [right, upward].some((way) => way === 'up' || way === 'down');
  // A plane on its side stands as high as it is wide.
  const [widthM, heightM] = right === 'up' || right === 'down' ? [span(ys), span(xs)] : [span(xs), span(ys)];
  return { widthM, heightM, depthM: depth, plane: stands ? 'standing' : 'lying' };
}

/** What a device takes at the solved point and gives as sound; none where it takes nothing. */
function heatOfDevice(
  job: Job,
  device: Device,
  { power, music }: PlayedPower,
  book: PlanBook,
  at: string,
): PlanHeat['items'] {
  const load = music.elements.find(({ kind, of }) => kind === 'load' && of === device.id);
  const voltageV = Math.abs(load?.dropV ?? 0);
  const inputW = voltageV * Math.abs(load?.currentA ?? 0);
  if (!(inputW > 0)) return [];
  const outputW = soundOf(job, device, power, voltageV);
  const lossW = book.trace(`${at}.items.${device.id}.lossW`, deviceLoss({ inputW, outputW }));
  return [{ item: device.id, inputW, outputW, lossW }];
}

/** Average audio power of a device with music, W: its duty of the rated power that its supply leaves it. */
function soundOf({ rules }: Job, device: Device, { loads }: PlanPower, voltageV: number): number {
  const supply = supplyOf(device.spec);
  const ratedW = loads.find(({ item }) => item === device.id)?.powerW ?? 0;
  if (!supply || ratedW === 0) return 0;
  const duty = rules[supply['amplifier-class'] === 'bass-class-d' ? 'music-duty-bass' : 'music-duty'].value;
  return duty * ratedW * powerShare(supply.type, voltageV, rules['voltage-rated'].value);
}
