import { cavityAir, type WarmCavity } from '../../heat/cavity-air.ts';
import { type CavityBox, coolingSurface } from '../../heat/cooling-surface.ts';
import { deviceLoss, measuredPlaying, type PlayingDevice } from '../../heat/device-loss.ts';
import { type MovingAir, movedAir } from '../../heat/moved-air.ts';
import type { Board, Device, Job } from '../../model/content/resolved-job.ts';
import type { OperatingPoint, PlanHeat, PlanPower } from '../../model/plan/index.ts';
import { ambientRules } from '../../model/zone-ambient.ts';
import { amplifierEfficiency } from '../../power/network/amplifier-efficiency.ts';
import { powerShare } from '../../power/network/load-current.ts';
import { ratedSupplyV } from '../../power/network/rated-voltage.ts';
import type { PlanBook } from '../plan-book.ts';
import type { CircuitPaths } from './circuit/circuit-paths.ts';
import { supplyOf } from './device-loads.ts';
import { fansThrough, fittedFans } from './fans.ts';
import { systemShare } from './sizing-voltage.ts';

/**
 * How warm the air of each space with boards gets at the operating point of music: the losses of its devices against
 * its walls, its openings and its fan. None where that point has no solution: what it draws is not known then.
 */
export function planHeat(job: Job, paths: CircuitPaths, power: PlanPower, book: PlanBook): PlanHeat[] {
  const music = power.points.find(({ name }) => name === 'music');
  if (!music || music.state === 'no-solution') return [];
  const spaces = new Map(job.boards.map((board) => [board.spaceId, board]));
  return [...spaces.values()].map((board) => heatOfSpace(board, { job, paths, power, music }, book));
}

interface PlayedPower {
  readonly job: Job;
  readonly paths: CircuitPaths;
  readonly power: PlanPower;
  readonly music: OperatingPoint;
}

function heatOfSpace({ spaceId, space }: Board, played: PlayedPower, book: PlanBook): PlanHeat {
  const { job } = played;
  const at = `heat.${spaceId}`;
  const boards = job.boards.filter((board) => board.spaceId === spaceId).map(({ id }) => id);
  const fans = fittedFans(job).flatMap(({ item, space: own }) => (own === spaceId ? [item] : []));
  const items = job.devices
    .filter(({ id, board }) => (board !== null && boards.includes(board)) || fans.includes(id))
    .flatMap((device) => heatOfDevice(played, device, book, at));
  const lossW = items.reduce((sum, item) => sum + item.lossW, 0);
  const walls = { box: boxOfSpace(space), airM3: space.air ?? null, surfaceM2: space.surface ?? null };
  const cavity: WarmCavity = {
    lossW,
    outsideC: job.rules[ambientRules[space.zone]].value,
    surfaceM2: book.trace(`${at}.surfaceM2`, coolingSurface(walls)),
    passesWM2K: job.rules['cavity-passes'].value,
    fanM3S: book.trace(`${at}.fanM3S`, movedAir(movingAir(job, spaceId, space))),
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

/**
 * What moves the air of a space. A fan that only the vehicle's file tells, and that nothing says to be there, counts until
 * the job fits one: what is known of it then goes before what was wished for.
 */
export function movingAir(
  job: Pick<Job, 'devices' | 'boards' | 'rules'>,
  spaceId: string,
  { fan }: Board['space'],
): MovingAir {
  const fitted = fittedFans(job).filter(({ space }) => space === spaceId);
  const counts = fan !== undefined && (fan.there || fitted.length === 0);
  return {
    thereM3S: counts ? fan.air : 0,
    statedM3S: fitted.reduce((sum, { airflowM3S }) => sum + airflowM3S, 0),
    delivers: job.rules['fan-delivers'].value,
  };
}

/** The box round the outline of a space, before its mounting plane. */
export function boxOfSpace({ outline, depth, right, upward }: Board['space']): CavityBox {
  const [xs, ys] = [outline.map(([x]) => x), outline.map(([, y]) => y)];
  const span = (values: readonly number[]): number => Math.max(...values) - Math.min(...values);
  const stands = [right, upward].some((way) => way === 'up' || way === 'down');
  // A plane on its side stands as high as it is wide.
  const [widthM, heightM] = right === 'up' || right === 'down' ? [span(ys), span(xs)] : [span(xs), span(ys)];
  return { widthM, heightM, depthM: depth, plane: stands ? 'standing' : 'lying' };
}

/** What a device takes at the solved point and gives as sound; none where it takes nothing. */
function heatOfDevice(played: PlayedPower, device: Device, book: PlanBook, at: string): PlanHeat['items'] {
  const { music } = played;
  const load = music.elements.find(({ kind, of }) => kind === 'load' && of === device.id);
  const voltageV = Math.abs(load?.dropV ?? 0);
  // What a fan draws through it warms the air at the fan.
  const fansA = fansThrough(played.job, device.id).reduce((sum, [, fanA]) => sum + fanA, 0);
  const inputW = voltageV * Math.max(0, Math.abs(load?.currentA ?? 0) - fansA);
  if (!(inputW > 0)) return heatOfFan(played.job, device, book, at);
  const playing = measuredOf(played, device) ?? {
    inputW,
    outputW: outputOf(played, device, inputW, voltageV),
  };
  const lossW = book.trace(`${at}.items.${device.id}.lossW`, deviceLoss(playing));
  return [{ item: device.id, inputW: playing.inputW, outputW: playing.outputW, lossW }];
}

/** What an amplifier takes and gives with music as its maker measured it, which goes before the duty of the house. */
function measuredOf({ job, paths, power }: PlayedPower, { id, spec }: Device): PlayingDevice | null {
  const supply = supplyOf(spec);
  const fed = paths.fed.find(({ device }) => device.id === id);
  const ratedPowerW = power.loads.find(({ item }) => item === id)?.powerW ?? 0;
  const musicA = supply?.['music-current'];
  if (!supply || !fed || musicA === undefined || ratedPowerW === 0) return null;
  const ratedV = ratedSupplyV(supply, job.rules, systemShare(job, paths.islands, fed.from));
  return measuredPlaying({
    ...{ musicA, ratedV, ratedPowerW },
    fullEfficiency: amplifierEfficiency(supply, job.rules).full,
  });
}

/** All that a fan draws warms its air; its turn-on lead is no part of the network, so that the voltage is the highest. */
function heatOfFan(
  { rules }: Pick<Job, 'rules'>,
  { id, spec }: Device,
  book: PlanBook,
  at: string,
): PlanHeat['items'] {
  if (spec?.kind !== 'fan') return [];
  const inputW = spec.draw * rules['voltage-rated'].value;
  const lossW = book.trace(`${at}.items.${id}.lossW`, deviceLoss({ inputW, outputW: 0 }));
  return [{ item: id, inputW, outputW: 0, lossW }];
}

/**
 * What leaves a device while music plays, W: of an amplifier its duty of the rated power that its supply leaves it; of a
 * charger what it gives the battery behind it.
 */
function outputOf(
  { job, paths, power }: PlayedPower,
  device: Device,
  inputW: number,
  voltageV: number,
): number {
  const { spec } = device;
  if (spec?.kind === 'charger') return inputW * spec.input.efficiency;
  const supply = supplyOf(spec);
  const fed = paths.fed.find((one) => one.device.id === device.id);
  const load = power.loads.find(({ item }) => item === device.id);
  const { powerW: ratedW = 0, musicDuty: duty = 0 } = load ?? {};
  if (!supply || !fed || ratedW === 0) return 0;
  const ratedV = ratedSupplyV(supply, job.rules, systemShare(job, paths.islands, fed.from));
  return duty * ratedW * powerShare(supply.type, voltageV, ratedV);
}
