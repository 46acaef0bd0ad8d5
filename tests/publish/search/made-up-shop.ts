import { type Random, seeded } from '../../../lib/board/random.ts';
import type { Vehicle } from '../../../lib/model/content/vehicle.ts';
import type { Part } from '../../../lib/model/kinds/index.ts';
import type { BuildPlan, PlanBoard, PlanItem, PlanWire } from '../../../lib/model/plan/index.ts';
import { awgSize } from '../../../lib/model/quantity/wire-size.ts';
import type { FuseForm } from '../../../lib/model/vocabulary.ts';
import type { ShopSite } from '../../../lib/publish/site/shop-site.ts';
import { fixedContent } from '../../boards/fixed-jobs.ts';
import { samplePlan } from '../sample/sample-plan.ts';
import { sampleSite } from '../sample/sample-site.ts';

/* A shop of two hundred jobs that nobody has built: made by chance with a seed, of plans that no layout was searched for. */

/** What was drawn for a job, before any text was made of it. */
export interface DrawnJob {
  readonly id: string;
  readonly vehicle: string;
  readonly space: string;
  /** Ids of parts of the fixed shop. */
  readonly amplifiers: readonly string[];
  readonly processor: string | null;
  readonly subwoofer: string | null;
  readonly sheet: string;
  readonly feedAwg: '1/0' | '4' | '8';
  readonly fuse: { readonly form: FuseForm; readonly ratingA: number };
  readonly fabricator: string;
  readonly year: number;
  readonly hasSecondBattery: boolean;
  /** How many wires of each letter are labelled: `P1` to `P9`. */
  readonly labels: Readonly<Record<'P' | 'G' | 'L' | 'T', number>>;
  readonly note: string | null;
}

export interface MadeUpShop {
  readonly site: ShopSite;
  readonly jobs: readonly DrawnJob[];
}

const vehicles: readonly (readonly [id: string, title: string, spaces: readonly string[]])[] = [
  ['hatchback-3', 'Small hatchback, three doors', ['Floor under the left front seat', 'Spare wheel well']],
  ['hatchback-5', 'Hatchback, five doors', ['Floor under the right front seat', 'Cargo floor']],
  [
    'estate',
    'Estate car, five doors, long cargo floor',
    ['Left side well of the cargo area', 'Spare wheel well'],
  ],
  ['saloon', 'Saloon, four doors', ['Rear seat back', 'Spare wheel well', 'Left side well']],
  ['coupe', 'Coupé, two doors', ['Spare wheel well', 'Rear seat back']],
  ['roadster', 'Roadster, two seats', ['Rear bulkhead', 'Cargo floor']],
  ['pickup-crew', 'Pickup, crew cab', ['Rear wall behind the seat', 'Floor under the rear seat']],
  ['pickup-single', 'Pickup, single cab', ['Rear wall behind the seat']],
  ['van-long', 'Panel van, long body, steel bulkhead', ['Cargo side of the bulkhead', 'Left cargo wall']],
  ['van-short', 'Panel van, short body', ['Cargo side of the bulkhead', 'Floor under the passenger bench']],
  ['minibus', 'Minibus, nine seats', ['Floor under the second bench', 'Rear quarter panel']],
  ['camper', 'Camper, high roof', ['Wardrobe floor', 'Right cargo wall']],
  ['off-roader', 'Off-roader, three doors, hard top', ['Cargo floor', 'Rear quarter panel']],
  ['limousine', 'Limousine, long wheelbase', ['Rear parcel shelf', 'Rear seat back']],
];

const sheets = { 'birch-12': 0.012, 'birch-18': 0.018, 'fibreboard-19': 0.01905, 'polyethylene-13': 0.0127 };
const fabricators = ['L. S.', 'P. T.', 'R. K.', 'M. O.'];
const notes = [
  'Wheelchair ramp stays clear of the board.',
  'Roof bars hum above walking pace.',
  'Dog cage rests on the cover.',
  'Tow bar socket shares the left grommet.',
  'Owner wants the spare wheel reachable without tools.',
];
const amplifiers: readonly (readonly string[])[] = [
  ['amp-five'],
  ['amp-four'],
  ['amp-four', 'amp-mono-400'],
  ['amp-four', 'amp-mono-1000'],
  ['amp-six', 'amp-mono-400'],
  ['amp-two', 'amp-four', 'amp-mono-1000'],
];
const channelsOf: Readonly<Record<string, number>> = {
  'amp-five': 5,
  'amp-four': 4,
  'amp-six': 6,
  'amp-two': 2,
  'amp-mono-400': 1,
  'amp-mono-1000': 1,
};
const ratings = { '1/0': [150, 200, 250], '4': [80, 100, 125], '8': [40, 50, 60] } as const;

const pick = <T>(random: Random, from: readonly T[]): T => {
  const found = from[Math.floor(random() * from.length)];
  if (found === undefined) throw new Error('Nothing to draw from.');
  return found;
};
const upTo = (random: Random, least: number, most: number): number =>
  least + Math.floor(random() * (most - least + 1));

function draw(random: Random, nth: number): DrawnJob {
  const [vehicle, , spaces] = pick(random, vehicles);
  const feedAwg = pick(random, ['1/0', '4', '4', '8'] as const);
  const ratingA = pick(random, ratings[feedAwg]);
  const form: FuseForm =
    feedAwg === '1/0'
      ? pick(random, ['large-bolt-in', 'class-t'] as const)
      : pick(random, ['small-bolt-in', 'maxi-blade'] as const);
  return {
    id: `${vehicle}-${String(nth).padStart(3, '0')}`,
    vehicle,
    space: pick(random, spaces),
    amplifiers: pick(random, amplifiers),
    processor: pick(random, ['processor-six', 'processor-ten', null]),
    subwoofer: pick(random, ['subwoofer-10-single-4', 'subwoofer-12-dual-4', 'subwoofer-10-dual-2', null]),
    sheet: pick(random, Object.keys(sheets)),
    feedAwg,
    fuse: { form, ratingA },
    fabricator: pick(random, fabricators),
    year: upTo(random, 2021, 2026),
    hasSecondBattery: random() < 0.15,
    labels: { P: upTo(random, 3, 14), G: upTo(random, 3, 15), L: upTo(random, 4, 12), T: upTo(random, 1, 6) },
    note: random() < 0.1 ? pick(random, notes) : null,
  };
}

function item(parts: Readonly<Record<string, Part>>, id: string, part: string, title: string): PlanItem {
  const [first] = samplePlan().items;
  const known = parts[part];
  if (!first || !known) throw new Error(`The fixed shop has no ${part}.`);
  return { ...first, id, part, kind: known.kind, title, partTitle: known.title };
}

function itemsOf(drawn: DrawnJob, parts: Readonly<Record<string, Part>>): PlanItem[] {
  const many = drawn.amplifiers.map((part, nth) =>
    item(parts, `amp-${nth + 1}`, part, `Amplifier ${nth + 1}`),
  );
  return [
    ...many,
    ...(drawn.processor ? [item(parts, 'dsp', drawn.processor, 'Processor')] : []),
    ...(drawn.subwoofer ? [item(parts, 'sub', drawn.subwoofer, 'Subwoofer')] : []),
    ...(drawn.hasSecondBattery ? [item(parts, 'second-battery', 'battery-agm-60', 'Second battery')] : []),
    item(parts, 'front-left', 'coaxial-65', 'Front left'),
    item(parts, 'front-right', 'coaxial-65', 'Front right'),
    item(parts, 'ground-bar', 'ground-bar-4', 'Ground bar'),
  ];
}

function boardOf(drawn: DrawnJob, random: Random, parts: Readonly<Record<string, Part>>): PlanBoard {
  const [board] = samplePlan().boards;
  const sheet = parts[drawn.sheet];
  if (!board || sheet?.kind !== 'board-sheet') throw new Error('The fixed shop has no such sheet.');
  const [widthM, heightM] = [upTo(random, 40, 120) / 100, upTo(random, 30, 60) / 100];
  const at = (xM: number, yM: number) => ({ xM, yM, bulge: 0 });
  return {
    ...board,
    spaceTitle: drawn.space,
    sheet: drawn.sheet,
    material: sheet.material,
    thicknessM: sheet.thickness,
    widthM,
    heightM,
    outline: [at(0, 0), at(widthM, 0), at(widthM, heightM), at(0, heightM)],
  };
}

function wiresOf({ labels, feedAwg }: DrawnJob): PlanWire[] {
  const [sample] = samplePlan().wires;
  if (!sample) throw new Error('The sample has no wire.');
  const roles = { P: 'power', G: 'ground', L: 'speaker', T: 'turn-on' } as const;
  const awg = { P: feedAwg, G: feedAwg, L: '16', T: '18' } as const;
  return (['P', 'G', 'L', 'T'] as const).flatMap((letter) =>
    Array.from({ length: labels[letter] }, (_, nth): PlanWire => {
      const size = letter === 'P' && nth > 1 ? '16' : awg[letter];
      const label = `${letter}${nth + 1}${letter === 'L' ? '+' : ''}`;
      return { ...sample, id: label, label, role: roles[letter], size: awgSize(size) };
    }),
  );
}

function planOf(drawn: DrawnJob, random: Random, parts: Readonly<Record<string, Part>>): BuildPlan {
  const plain = samplePlan();
  const title = vehicles.find(([id]) => id === drawn.vehicle)?.[1] ?? '';
  const [fuse] = plain.power.fuses;
  const [channel] = plain.audio.channels;
  if (!fuse || !channel) throw new Error('The sample has no fuse or no channel.');
  const channels = drawn.amplifiers.reduce((sum, part) => sum + (channelsOf[part] ?? 0), 0);
  const count = ['no', 'one', 'two', 'three'][drawn.amplifiers.length];
  return {
    ...plain,
    job: {
      ...plain.job,
      id: drawn.id,
      title: `Board with ${count} ${drawn.amplifiers.length === 1 ? 'amplifier' : 'amplifiers'}${drawn.processor ? ' and a processor' : ''}`,
      issuedOn: `${drawn.year}-${String(upTo(random, 1, 12)).padStart(2, '0')}-15`,
      fabricator: drawn.fabricator,
      notes: drawn.note === null ? [] : [drawn.note],
      revisions: [],
    },
    vehicle: { ...plain.vehicle, id: drawn.vehicle, title },
    findings: [],
    items: itemsOf(drawn, parts),
    boards: [boardOf(drawn, random, parts)],
    wires: wiresOf(drawn),
    power: { ...plain.power, fuses: [{ ...fuse, ...drawn.fuse }] },
    audio: {
      ...plain.audio,
      channels: Array.from({ length: channels }, (_, n) => ({ ...channel, id: `c${n}` })),
    },
  };
}

function vehicleNamed([id, title, spaces]: (typeof vehicles)[number]): Vehicle {
  const { van } = fixedContent().vehicles;
  const [space] = Object.values(van?.spaces ?? {});
  if (!van || !space) throw new Error('The fixed shop has no van.');
  const own = spaces.map((one, nth) => [`space-${nth + 1}`, { ...space, title: one }] as const);
  return { ...van, id, title, spaces: Object.fromEntries(own), routes: {}, cautions: [] };
}

/** The shop: always the same of the same seed. */
export function madeUpShop(seed: number, count = 200): MadeUpShop {
  const random = seeded(seed);
  const { parts } = fixedContent();
  const jobs = Array.from({ length: count }, (_, nth) => draw(random, nth + 1));
  const plans = jobs.map((job) => planOf(job, random, parts));
  const site = {
    ...sampleSite(
      plans.map((plan) => ({ plan, customer: {}, worked: [], handOver: null, serials: {}, revisions: [] })),
    ),
    parts,
    vehicles: Object.fromEntries(vehicles.map((one) => [one[0], vehicleNamed(one)])),
  };
  return { site, jobs };
}
