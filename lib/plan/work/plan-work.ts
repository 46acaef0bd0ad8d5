import type { Job } from '../../model/content/resolved-job.ts';
import type { BuildPlan, PlanPower } from '../../model/plan/index.ts';
import { lengthStyle } from '../../model/quantity/length-text.ts';
import { systemVoltageOf } from '../../model/system-voltage.ts';
import { screwsThrough } from '../board/screws/screws-through.ts';
import type { PlanBook } from '../plan-book.ts';
import { fittedFans } from '../power/fans.ts';
import { groundBolts } from '../wiring/ground-bolts.ts';
import { firstPowers } from './bench-supply-limit.ts';
import { boxesAtPlaces } from './boxes-at-places.ts';
import { looseParts } from './loose-parts.ts';
import { sourcesAt } from './readings/sources-at.ts';
import { orderOfWork } from './steps/order-of-work.ts';
import { itemsSetLate } from './steps/steps-on-board.ts';
import type { Wait, Work } from './work.ts';

/** Tweeters that are alone on their channel: no crossover of their own keeps the bass from them. */
function activeTweeters(job: Job, { audio }: Pick<Work['plan'], 'audio'>): readonly string[] {
  const passive = audio.speakers.flatMap((one) => (one.passive ? [one.id] : []));
  const alone = audio.channels
    .flatMap(({ speakers }) => (speakers.length === 1 ? speakers : []))
    .filter((id) => !passive.includes(id));
  return job.devices.flatMap(({ id, spec }) =>
    spec?.kind === 'speaker' && spec.band === 'tweeter' && alone.includes(id) ? [id] : [],
  );
}

/** Openings that the vehicle's file tells as still to be cut, for the speakers of the job that go into them. */
function openingsToCut({ devices, vehicle }: Pick<Job, 'devices' | 'vehicle'>): Work['openings'] {
  return devices.flatMap(({ id, origin, seat, spec }) =>
    origin === 'job' &&
    seat !== null &&
    spec?.kind === 'speaker' &&
    vehicle.places[seat]?.opening === 'to-cut'
      ? [{ item: id, seat, cutOutM: spec['cut-out'] ?? null }]
      : [],
  );
}

/** Speakers of the job at places of the vehicle, but for those in a box. */
function speakersLetIn({ devices }: Pick<Job, 'devices'>): Work['letIn'] {
  const boxed = new Set(
    devices.flatMap(({ seat, spec }) => (spec?.kind === 'enclosure' && seat !== null ? [seat] : [])),
  );
  return devices.flatMap(({ id, origin, seat, spec }) =>
    origin === 'job' && seat !== null && spec?.kind === 'speaker' && !boxed.has(seat)
      ? [{ item: id, cutOutM: spec['cut-out'] ?? null, depthM: spec.size.height }]
      : [],
  );
}

/** What the job says must be in place before a device. */
function declaredWaits({ devices }: Pick<Job, 'devices'>): readonly Wait[] {
  return devices.flatMap(({ id, given }) =>
    Object.entries(given?.after ?? {}).map(([after, why]) => ({ item: id, after, why })),
  );
}

/** The supply with the first power of each board on the bench, once it is known what stands on it there. */
export function withFirstPower(
  job: Job,
  power: PlanPower,
  plan: Pick<BuildPlan, 'items' | 'wires' | 'boards'>,
): PlanPower {
  const late = itemsSetLate({ plan, declared: declaredWaits(job) });
  return { ...power, firstPower: firstPowers(job, power.loads, late) };
}

/** The order of work of a job, with the shop's own times; what waits for each other stops the job. */
export function planWork(
  job: Job,
  plan: Work['plan'],
  book: PlanBook,
): Pick<BuildPlan, 'steps' | 'schedule'> {
  const { steps, schedule, rings } = orderOfWork({
    plan,
    times: job.shop.times,
    declared: declaredWaits(job),
    tape: lengthStyle(job.shop),
    tiesM: {
      board: job.rules['tie-spacing-board'].value,
      vehicle: job.rules['tie-spacing-vehicle'].value,
    },
    bankWithinV: job.rules['bank-charged-within'].value,
    continuityOhm: {
      ground: job.rules['continuity-ground'].value,
      wire: job.rules['continuity-wire'].value,
    },
    gainUnder: job.rules['gain-under'].value,
    systemV: systemVoltageOf(job.vehicle['system-voltage']),
    sourcesAt: sourcesAt(job),
    activeTweeters: activeTweeters(job, plan),
    openings: openingsToCut(job),
    letIn: speakersLetIn(job),
    reachable: job.boards.map(({ id, space }) => ({
      board: id,
      things: Object.keys(space['keep-reachable']),
    })),
    boxes: boxesAtPlaces(job),
    loose: looseParts(job),
    groundBolts: groundBolts(job),
    fans: fittedFans(job),
    screwsOut: plan.boards.flatMap((planned) => {
      const board = job.boards.find(({ id }) => id === planned.id);
      return board ? screwsThrough(job, board, planned).flatMap(({ items }) => items) : [];
    }),
  });
  for (const { items, message, remedy } of rings) {
    const path = job.devices.find(({ id }) => id === items[0])?.path ?? '';
    book.remark(
      {
        rule: 'steps-wait-for-each-other',
        level: 'stop',
        of: items,
        message,
        remedy,
      },
      { path },
    );
  }
  return { steps, schedule };
}
