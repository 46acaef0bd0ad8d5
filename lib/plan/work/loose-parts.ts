import type { Device, Job } from '../../model/content/resolved-job.ts';
import type { PlanPick } from '../../model/plan/index.ts';
import { madeMm, printedMade } from '../../model/printed/holes.ts';
import { standardGravity } from '../../model/quantity/gravity.ts';

/** A part of the job that stands on no board, by the holes that it is screwed down through. */
export interface LoosePart {
  readonly item: string;
  /** How wide each of its holes is, those of its bracket too (m). */
  readonly holesM: readonly number[];
}

/** The parts that a job puts at places of the vehicle and that have holes for screws. */
export function looseParts({ devices }: Pick<Job, 'devices'>): readonly LoosePart[] {
  return looseDevices({ devices }).flatMap(({ id, facts }): LoosePart[] => {
    const { holes = [], bracketHoles = [] } = facts.footprint ?? {};
    const holesM = [...holes, ...bracketHoles].map(({ diameterM }) => diameterM);
    return holesM.length === 0 ? [] : [{ item: id, holesM }];
  });
}

/** What straps hold off the boards, boxes apart: the load forward of each, F = m * n * g (N), n the house rule `retention`. */
export function strappedParts({
  devices,
  rules,
}: Pick<Job, 'devices' | 'rules'>): readonly { readonly item: string; readonly forceN: number }[] {
  return looseDevices({ devices }).flatMap(({ id, spec, given, facts }) => {
    const massKg = facts.footprint?.massKg ?? 0;
    if (spec?.kind === 'enclosure' || spec?.kind === 'speaker' || given?.held !== 'strap' || massKg <= 0)
      return [];
    return [{ item: id, forceN: massKg * rules.retention.value * standardGravity }];
  });
}

/** What a job puts at places of the vehicle. */
export function looseDevices({ devices }: Pick<Job, 'devices'>): readonly Device[] {
  return devices.filter(({ origin, board, seat }) => origin === 'job' && board === null && seat !== null);
}

/**
 * Screws for parts off the boards, by the holes that they go through. What they go into is not told, sheet metal, wood or
 * plastic, so that they have no part of the catalogue, and none is told as short: they are chosen where the part goes.
 */
export function looseScrews(job: Pick<Job, 'devices'>): PlanPick[] {
  const counts = new Map<number, number>();
  for (const diameterM of looseParts(job).flatMap(({ holesM }) => holesM))
    counts.set(madeMm(diameterM), (counts.get(madeMm(diameterM)) ?? 0) + 1);
  return [...counts].map(([mm, quantity]): PlanPick => {
    return {
      part: `screw-for-hole-${mm}-mm`,
      title: `Screw through a hole of ${mm} mm, chosen by what it goes into`,
      ...{ kind: 'fixing', quantity, unit: 'piece', stockQuantity: 0, short: 0 },
    };
  });
}

/**
 * What speakers are screwed in by of whose frame no holes are told: their makers put it into the box, a set for each. It is
 * none of the shelf's; where a box has none, it is chosen by what it goes into.
 */
export function frameScrews(job: Pick<Job, 'devices'>): PlanPick[] {
  const counts = new Map<string, number>();
  for (const { spec, part, facts } of looseDevices(job)) {
    const { holes = [], bracketHoles = [] } = facts.footprint ?? {};
    if (spec?.kind !== 'speaker' || part === null || holes.length + bracketHoles.length > 0) continue;
    counts.set(part, (counts.get(part) ?? 0) + 1);
  }
  return [...counts].map(([part, quantity]): PlanPick => {
    return {
      ...{
        part: `${part}-screws`,
        title: `Screws or clips for the frame of ${part}, a set for each`,
        kind: 'fixing',
      },
      ...{ quantity, unit: 'piece', stockQuantity: quantity, short: 0, suppliedWith: part },
    };
  });
}

/** The screws of a part in words: `2 screws through its holes of 4.8 mm`. */
export function screwsText({ holesM }: LoosePart): string {
  const widths = [...new Set(holesM.map(printedMade))];
  const one = holesM.length === 1;
  return `${holesM.length} ${one ? 'screw' : 'screws'} through its ${one ? 'hole' : 'holes'} of ${widths.join(' and ')}`;
}
