import { jobSchema } from '../../../lib/model/content/job.ts';
import { shopSchema } from '../../../lib/model/content/shop.ts';
import { vehicleSchema } from '../../../lib/model/content/vehicle.ts';
import { type Part, partSchema } from '../../../lib/model/kinds/index.ts';
import type { DrawingsOf, PublishedJob, ShopSite } from '../../../lib/publish/site/shop-site.ts';
import { samplePlan } from './sample-plan.ts';

/** Words that stand for private values: made so that they can't occur by chance. */
export const secrets = {
  name: 'Zyxname Qwerowner',
  contact: 'zyx-contact-555',
  plate: 'ZYX-PLATE-1',
  vin: 'ZYXVIN0000000001',
  'key-location': 'zyx hook 4',
  price: 'zyx 1234 price',
} as const;

const parts: Record<string, unknown> = {
  'amp-4x75': {
    kind: 'amplifier',
    title: 'Four-channel amplifier, 4 x 75 W',
    notes: 'Fins on the long sides.',
    size: { width: '12 in', depth: '8 in', height: '2 1/8 in' },
    mass: '3.1 kg',
    cooling: { top: 'fins', bottom: 'fins' },
    supply: { type: 'unregulated', fuse: '60 A', 'cut-out': '10.5 V', 'amplifier-class': 'class-d' },
    channels: {
      '1': {
        positive: 'CH1+',
        negative: 'CH1-',
        input: 'IN1',
        minimum: '2 ohm',
        powers: [{ load: '4 ohm', power: '75 W' }],
      },
    },
    terminals: {
      'B+': {
        role: 'supply-positive',
        panel: 'bottom',
        at: '1 in',
        joint: 'set-screw',
        takes: { from: '8 AWG', to: '4 AWG' },
        torque: '4 N m',
      },
      GND: { role: 'supply-negative', panel: 'bottom', at: '2 in', joint: 'set-screw' },
    },
    controls: {
      GAIN: {
        what: 'gain',
        form: 'knob',
        panel: 'top',
        safe: 'fully counter-clockwise',
        why: 'no signal yet',
      },
    },
  },
  'wire-4-red': { kind: 'wire', title: 'Wire, 4 AWG, red', size: '4 AWG', colour: 'RD', for: ['power'] },
  'birch-12': {
    kind: 'board-sheet',
    title: 'Birch plywood, 12 mm',
    material: 'birch-plywood',
    thickness: '12 mm',
    width: '1220 mm',
    height: '2440 mm',
    density: '680 kg/m3',
    modulus: '9 GPa',
  },
};

const vehicle = {
  rackleaf: 1,
  id: 'sample-estate',
  title: 'Estate car, five doors',
  cautions: ['Curtain airbags run along both roof rails.'],
  fitted: { amplifier: { part: 'amp-4x75', zone: 'cargo' } },
  grounds: { 'ground-left': { zone: 'cargo', side: 'left', stud: 'M8' } },
  spaces: {
    'side-well': {
      title: 'Left side well',
      zone: 'cargo',
      side: 'left',
      outline: [
        ['0 in', '0 in'],
        ['26 in', '0 in'],
        ['26 in', '18 in'],
      ],
      depth: '6 in',
      right: 'front',
      upward: 'up',
      'sound-points': {},
    },
  },
  routes: {
    'left-sill': {
      title: 'Battery to left side well',
      side: 'left',
      passes: [
        { zone: 'engine-bay', length: '4 ft' },
        { zone: 'sill', length: '9 ft' },
      ],
    },
  },
};

/** A shop's site with one job, or with jobs of one's own. */
export function sampleSite(jobs: readonly PublishedJob[] = [sampleJob()]): ShopSite {
  const read = vehicleSchema.parse(vehicle);
  return {
    shop: shopSchema.parse({
      rackleaf: 1,
      name: 'Sample Shop',
      address: ['1 Sample Street'],
      stock: { 'wire-4-red': { reels: ['9.1 m'] }, 'fuse-60': { pieces: 4 } },
    }),
    promised: {},
    parts: Object.fromEntries(
      Object.entries(parts).map(([id, part]): [string, Part] => [id, partSchema.parse(part)]),
    ),
    vehicles: { [read.id]: read },
    jobs,
    guides: [
      {
        slug: 'bench-test',
        title: 'Bench test',
        summary: 'What is shown before the vehicle.',
        body: '# Bench test\n\n## Before power\n\nMain fuses out.\n\n- [ ] <script>alert(1)</script>\n',
      },
    ],
  };
}

/** The sample job with its private values and one frozen revision. */
export function sampleJob(plan = samplePlan()): PublishedJob {
  const earlier = samplePlan({ job: { ...plan.job, revision: 'A', status: 'superseded' } });
  return {
    plan,
    customer: jobSchema.shape.customer.parse({ ...secrets }),
    worked: [],
    handOver: null,
    serials: {},
    revisions: [{ revision: 'A', plan: earlier }],
  };
}

/** Two drawings for show: one upright, one that is a lying sheet of Letter paper. */
export const sampleDrawings: DrawingsOf = (plan) => [
  drawing(plan.job.id, 'cut-and-drill', 'Main board, cut', 180, 130),
  drawing(plan.job.id, 'power-diagram', 'Power diagram', 279.4, 215.9),
];

function drawing(job: string, sheet: string, title: string, widthMm: number, heightMm: number) {
  const id = `${job}__${sheet}`;
  const svg = [
    `<svg xmlns="http://www.w3.org/2000/svg" id="${id}" role="img" aria-labelledby="${id}__title"`,
    ` width="${widthMm}mm" height="${heightMm}mm" viewBox="0 0 ${widthMm} ${heightMm}">`,
    `<title id="${id}__title">${title}</title>`,
    `<rect x="5" y="5" width="${widthMm - 10}" height="${heightMm - 10}" fill="none"`,
    ' stroke="var(--draw-line, #000)" stroke-width="0.7"/></svg>',
  ].join('');
  return { sheet, id: sheet, title, svg };
}
