import type { Device, Job } from '../../model/content/resolved-job.ts';
import { pointer } from '../../model/place.ts';
import type { PlanHeat } from '../../model/plan/index.ts';
import { ambientRules } from '../../model/zone-ambient.ts';
import { houseRule, partData, type Source } from '../house-rule-of.ts';
import { deviceSpot, partOf } from '../look-up.ts';
import type { Rule, Verdict } from '../rule.ts';
import { celsius, celsiusAllowed, listed, wattsLost } from '../words.ts';
import { coolerSpace } from './cooler-space.ts';

/** What has heat of its own to lose, and counts by the house rule where its maker is silent. */
const electronics: ReadonlySet<string> = new Set(['amplifier', 'processor', 'source-unit', 'charger']);

/** The warmest air that a device bears; null for one that is silent and has no heat to lose. */
function bears(job: Job, { spec }: Device): { readonly mostC: number; readonly isMakers: boolean } | null {
  const own = spec !== null && 'most-ambient' in spec ? spec['most-ambient'] : undefined;
  if (own !== undefined) return { mostC: own, isMakers: true };
  return spec !== null && electronics.has(spec.kind)
    ? { mostC: houseRule(job, 'most-ambient').value, isMakers: false }
    : null;
}

interface TooWarm {
  readonly device: Device;
  readonly mostC: number;
  readonly isMakers: boolean;
}

/** The devices that the air is too warm for, those of a maker's limit first, then the most sensitive. */
function tooWarm(job: Job, devices: readonly Device[], airC: number): TooWarm[] {
  return devices
    .flatMap((device): TooWarm[] => {
      const limit = bears(job, device);
      return limit && airC > limit.mostC + 1e-9 ? [{ device, ...limit }] : [];
    })
    .toSorted((a, b) => Number(b.isMakers) - Number(a.isMakers) || a.mostC - b.mostC);
}

/** The gravest of what the air is too warm for, as one verdict: one cause gives one finding. */
function verdictOf(
  job: Job,
  found: readonly TooWarm[],
  airC: number,
): Pick<Verdict<'air-too-warm'>, 'level' | 'of' | 'value' | 'limit' | 'unit' | 'source' | 'mark'> | null {
  const [worst] = found;
  if (!worst) return null;
  const from: Source = worst.isMakers ? partData : houseRule(job, 'most-ambient').from;
  return {
    level: worst.isMakers ? 'stop' : 'caution',
    of: found.map(({ device }) => device.id),
    ...{ value: airC, limit: worst.mostC, unit: 'C' },
    ...from,
  };
}

/** What is allowed: by device where its maker says so, all others by the house rule together. */
function allowedText(found: readonly TooWarm[]): string {
  const silent = found.filter(({ isMakers }) => !isMakers);
  const names = listed(silent.map(({ device }) => device.id));
  const [makers, bear] = silent.length === 1 ? ['its maker is', 'bears'] : ['their makers are', 'bear'];
  return listed([
    ...found
      .filter(({ isMakers }) => isMakers)
      .map(({ device, mostC }) => `${device.id} bears ${celsiusAllowed(mostC)}`),
    ...(silent[0]
      ? [`${names} ${bear} ${celsiusAllowed(silent[0].mostC)} by the house rule: ${makers} silent`]
      : []),
  ]);
}

/** Spaces with boards: by the heat balance of the plan. */
function inSpaces(job: Job, heat: PlanHeat): Verdict<'air-too-warm'>[] {
  const boards = job.boards.filter(({ spaceId }) => spaceId === heat.space);
  const devices = job.devices.filter(({ board }) => boards.some(({ id }) => id === board));
  const found = tooWarm(job, devices, heat.airC);
  const verdict = verdictOf(job, found, heat.airC);
  if (!verdict) return [];
  const { lossW, surfaceM2, outsideC } = heat;
  return [
    {
      ...verdict,
      of: [...verdict.of, ...boards.map(({ id }) => id), heat.space],
      message: `the air of ${heat.space} gets to ${celsius(heat.airC)} while music plays: ${wattsLost(lossW)} of heat, ${Math.floor(surfaceM2 * 100) / 100} m2 of wall that gives it off, ${celsius(outsideC)} round it; ${allowedText(found)}`,
      ...coolerSpace(job, heat, Math.min(...found.map(({ mostC }) => mostC))),
      ...deviceSpot(job, found[0]?.device.id ?? ''),
    },
  ];
}

/** Devices on no board: by the air of their zone. */
function inZones(job: Job): Verdict<'air-too-warm'>[] {
  return job.devices
    .filter(({ board, origin }) => board === null && origin === 'job')
    .flatMap((device): Verdict<'air-too-warm'>[] => {
      const airC = job.rules[ambientRules[device.zone]].value;
      const found = tooWarm(job, [device], airC);
      const verdict = verdictOf(job, found, airC);
      if (!verdict) return [];
      return [
        {
          ...verdict,
          message: `the air round ${device.id} gets to ${celsius(airC)} in its zone, ${device.zone}; ${allowedText(found)}`,
          remedy: 'mount it in a cooler zone, or take what its maker allows there',
          ...deviceSpot(job, device.id),
        },
      ];
    });
}

const airTooWarm: Rule = {
  id: 'air-too-warm',
  judge: ({ job, plan }) => [...plan.heat.flatMap((heat) => inSpaces(job, heat)), ...inZones(job)],
};

const sheetTooWarm: Rule = {
  id: 'sheet-too-warm',
  judge({ job, plan }) {
    return plan.boards.flatMap(({ id, sheet, space }): Verdict<'sheet-too-warm'>[] => {
      const part = partOf(job, sheet);
      const board = job.boards.find((one) => one.id === id);
      if (part?.kind !== 'board-sheet' || part.withstands === undefined || !board) return [];
      const zoneC = job.rules[ambientRules[board.space.zone]].value;
      const airC = Math.max(zoneC, plan.heat.find((one) => one.space === space)?.airC ?? zoneC);
      if (airC <= part.withstands + 1e-9) return [];
      const byZone = zoneC > part.withstands + 1e-9;
      return [
        {
          level: byZone ? 'stop' : 'caution',
          of: [id, sheet],
          message: `${sheet} stands ${celsiusAllowed(part.withstands)}; ${byZone ? `${space} gets to ${celsius(zoneC)} by its zone, ${board.space.zone}` : `the air of ${space} gets to ${celsius(airC)} while music plays`}`,
          ...{ value: byZone ? zoneC : airC, limit: part.withstands, unit: 'C' },
          remedy: byZone
            ? 'take plywood or aluminium, or another place'
            : 'take plywood or aluminium, or cool the space with a fan or openings',
          path: pointer(['boards', id, 'sheet']),
        },
      ];
    });
  },
};

export const heatRules: readonly Rule[] = [airTooWarm, sheetTooWarm];
