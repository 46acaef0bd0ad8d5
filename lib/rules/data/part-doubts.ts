import type { Part, PartFacts, PartOf } from '../../model/kinds/index.ts';
import type { Footprint } from '../../model/kinds/kind.ts';
import type { Panel } from '../../model/vocabulary.ts';
import { amps, figure, hertz, kilograms, listed, ohms, volts } from '../words.ts';
import type { Doubt } from './doubt.ts';
import { amplifierDoubts } from './part-doubts-amplifier.ts';

/** What a job's lengths look like in a message. */
export type LengthWords = (lengthM: number) => string;
/** What a part's torques look like. */
export type TorqueWords = (torqueNm: number) => string;

const check = 'check the number and its unit against the maker’s sheet';

/** Figures of a part that can hardly be right together, each told once. */
export function partDoubts(
  part: Part,
  facts: PartFacts,
  length: LengthWords,
  torque: TorqueWords,
  isOnBoard: boolean,
): readonly Doubt[] {
  return [
    ...(isOnBoard ? pileDoubts(facts) : []),
    ...(facts.footprint ? bodyDoubts(facts.footprint, facts, length) : []),
    ...torqueDoubts(facts, torque),
    ...('supply' in part ? supplyDoubts(part) : []),
    ...(part.kind === 'amplifier' ? amplifierDoubts(part) : []),
    ...(part.kind === 'speaker' ? speakerDoubts(part, length) : []),
    ...(part.kind === 'battery' ? batteryDoubts(part) : []),
    ...controlDoubts(facts),
  ];
}

/** Kilograms a litre over the whole body: less than any foam, more than steel through and through (7.85, EN 1993-1-1). */
const lightest = 0.02;
const heaviest = 7.85;

function bodyDoubts(body: Footprint, facts: PartFacts, length: LengthWords): readonly Doubt[] {
  const litres = 1000 * body.widthM * body.depthM * body.heightM;
  const kgPerLitre = body.massKg / litres;
  const isHeavy = kgPerLitre > heaviest;
  const mass: readonly Doubt[] =
    isHeavy || kgPerLitre < lightest
      ? [
          {
            keys: ['mass'],
            message: `weighs ${kilograms(body.massKg)} at ${figure(litres)} L: ${figure(kgPerLitre)} kg a litre, ${isHeavy ? 'more than steel' : 'less than foam'}`,
            remedy: 'check mass: and size: and their units',
          },
        ]
      : [];
  const holes = body.holes.flatMap(({ xM, yM }, n): Doubt[] =>
    isWithin(xM, body.widthM) && isWithin(yM, body.depthM)
      ? []
      : [
          {
            keys: ['mounting-holes', String(n)],
            message: `has a mounting hole at ${length(xM)}, ${length(yM)}, outside its foot of ${length(body.widthM)} by ${length(body.depthM)}`,
            remedy: 'measure it from the lower left corner of the foot',
          },
        ],
  );
  return [...mass, ...holes, ...placeDoubts(body, facts, length)];
}

const isWithin = (atM: number, lengthM: number) => atM >= -1e-9 && atM <= lengthM + 1e-9;

/** Terminals and controls lie on their panel. */
function placeDoubts(
  body: Footprint,
  { terminals, controls }: PartFacts,
  length: LengthWords,
): readonly Doubt[] {
  const panelM = (panel: Panel) =>
    ({
      left: body.depthM,
      right: body.depthM,
      top: body.widthM,
      bottom: body.widthM,
      face: Math.max(body.widthM, body.depthM),
    })[panel];
  return [
    ...Object.entries(terminals).map(([name, spec]) => ['terminals', name, spec] as const),
    ...Object.entries(controls).map(([name, spec]) => ['controls', name, spec] as const),
  ].flatMap(([group, name, { panel, at }]): Doubt[] =>
    panel === undefined || at === undefined || isWithin(at, panelM(panel))
      ? []
      : [
          {
            keys: [group, name, 'at'],
            message: `has ${name} at ${length(at)} of a ${panel} panel that is ${length(panelM(panel))} long`,
            remedy:
              'measure it from the left end of a top or bottom panel, from the lower end of a left or right one',
          },
        ],
  );
}

/** Terminals without a place lie in the middle of their panel: several of them on one point, where no wires can be laid. */
function pileDoubts({ terminals }: PartFacts): readonly Doubt[] {
  const piles = new Map<Panel, string[]>();
  for (const [name, { panel = 'bottom', at }] of Object.entries(terminals))
    if (at === undefined) piles.set(panel, [...(piles.get(panel) ?? []), name]);
  return [...piles].flatMap(([panel, names]): Doubt[] => {
    const [first] = names;
    if (first === undefined || names.length < 2) return [];
    return [
      {
        keys: ['terminals', first],
        message: `does not say where ${listed(names)} lie: all are drawn and wired on one point, in the middle of the ${panel} panel`,
        remedy:
          'measure the first of each row and the way from one to the next, and write panel:, at: and pitch:',
      },
    ];
  });
}

/** What the screws of small terminals bear at most (N m); common practice, no source. */
const mostScrewNm = 15;

function torqueDoubts({ terminals }: PartFacts, torqueText: TorqueWords): readonly Doubt[] {
  return Object.entries(terminals).flatMap(([name, { joint, torque }]): Doubt[] =>
    torque === undefined || !['set-screw', 'screw-clamp'].includes(joint) || torque <= mostScrewNm
      ? []
      : [
          {
            keys: ['terminals', name, 'torque'],
            message: `asks for ${torqueText(torque)} at the screw of ${name}, which strips it: ${mostScrewNm} N m is much`,
            remedy: `${check}: 35 lbf in are 4 N m`,
          },
        ],
  );
}

/** What a device draws at rest, or in all, is less than its fuse. */
function supplyDoubts({ supply }: PartOf<'amplifier' | 'processor' | 'source-unit'>): readonly Doubt[] {
  const drawn = [
    ['idle', supply.idle],
    ['music-current', supply['music-current']],
    ['draw', supply.draw],
  ] as const;
  const over = drawn.flatMap(([key, currentA]): Doubt[] =>
    currentA === undefined || currentA < supply.fuse
      ? []
      : [
          {
            keys: ['supply', key],
            message: `draws ${amps(currentA)} (${key}:) behind a fuse of ${amps(supply.fuse)}`,
            remedy: check,
          },
        ],
  );
  const { 'cut-out': cutOutV, range, idle: idleA, 'music-current': musicA } = supply;
  const underIdle: readonly Doubt[] =
    idleA === undefined || musicA === undefined || musicA >= idleA
      ? []
      : [
          {
            keys: ['supply', 'music-current'],
            message: `draws ${amps(musicA)} with music (music-current:), and ${amps(idleA)} without (idle:)`,
            remedy: check,
          },
        ];
  const offV = range?.to ?? 32;
  return cutOutV === undefined || cutOutV < offV
    ? [...over, ...underIdle]
    : [
        ...over,
        ...underIdle,
        {
          keys: ['supply', 'cut-out'],
          message: `cuts out below ${volts(cutOutV)}, above all that it is fed`,
          remedy: check,
        },
      ];
}

/** What a speaker of a band plays down to at most, and at least (Hz); common practice, no source. */
const lowestOf: Readonly<Record<PartOf<'speaker'>['band'], readonly [leastHz: number, mostHz: number]>> = {
  tweeter: [500, 20_000],
  midrange: [50, 1500],
  midbass: [20, 400],
  'full-range': [20, 500],
  coaxial: [20, 500],
  subwoofer: [5, 100],
};

/**
 * The direct-current resistance of a coil lies below its nominal load, of which its impedance may fall to 80 % (IEC
 * 60268-5); half of it is left for odd coils.
 */
function speakerDoubts(part: PartOf<'speaker'>, length: LengthWords): readonly Doubt[] {
  const coils = Object.entries(part.coils).flatMap(([name, coil]): Doubt[] => {
    const ohm = coil['direct-current'];
    if (ohm === undefined || (ohm >= 0.5 * coil.nominal && ohm <= 1.1 * coil.nominal)) return [];
    return [
      {
        keys: ['coils', name, 'direct-current'],
        message: `has a coil ${name} of ${ohms(coil.nominal)} nominal whose direct-current resistance is ${ohms(ohm)}`,
        remedy: 'measure it with a meter: it is somewhat below the nominal load',
      },
    ];
  });
  const lowestHz = part['lowest-frequency'];
  const [leastHz, mostHz] = lowestOf[part.band];
  const band: readonly Doubt[] =
    lowestHz === undefined || (lowestHz >= leastHz && lowestHz <= mostHz)
      ? []
      : [
          {
            keys: ['lowest-frequency'],
            message: `is a ${part.band} that may play from ${hertz(lowestHz)}`,
            remedy: 'correct band: or lowest-frequency:, whichever is wrong; the filters hang on both',
          },
        ];
  const frameM = Math.max(part.size.width, part.size.depth);
  const cutOutM = part['cut-out'];
  const cutOut: readonly Doubt[] =
    cutOutM === undefined || (cutOutM < frameM && cutOutM > 0.6 * frameM)
      ? []
      : [
          {
            keys: ['cut-out'],
            message: `has a frame of ${length(frameM)} and asks for a hole of ${length(cutOutM)}`,
            remedy: 'the frame covers the rim of the hole: check both',
          },
        ];
  return [...coils, ...band, ...cutOut];
}

/**
 * A starter battery gives 3 to 25 A of cold cranking for each ampere-hour (common practice, no source), more than that
 * into a dead short, and keeps 7.5 V at it (EN 50342-1): its resistance is below (12.6 - 7.5) V over that current, here
 * with half as much again for the cold.
 */
function batteryDoubts(part: PartOf<'battery'>): readonly Doubt[] {
  const { 'cold-cranking': crankingA, 'short-circuit': shortA, resistance, capacity } = part;
  if (crankingA === undefined) return [];
  const perAh = crankingA / (capacity / 3600);
  const doubts: Doubt[] = [];
  if (perAh < 3 || perAh > 25)
    doubts.push({
      keys: ['capacity'],
      message: `starts an engine with ${amps(crankingA)} and holds ${figure(capacity / 3600)} Ah: ${figure(perAh)} A for each`,
      remedy: 'check capacity: and cold-cranking: against its label',
    });
  if (shortA !== undefined && shortA < crankingA)
    doubts.push({
      keys: ['short-circuit'],
      message: `gives ${amps(shortA)} into a dead short and ${amps(crankingA)} to a starter`,
      remedy: check,
    });
  if (resistance !== undefined && resistance * crankingA > 1.5 * (12.6 - 7.5) * ((part.voltage ?? 12) / 12))
    doubts.push({
      keys: ['resistance'],
      message: `has ${figure(1000 * resistance)} mohm inside, behind which ${amps(crankingA)} can't be drawn`,
      remedy: check,
    });
  return doubts;
}

/** A subsonic filter lies below the band of a subwoofer; common practice, no source. */
const highestSubsonicHz = 120;

function controlDoubts({ controls }: PartFacts): readonly Doubt[] {
  return Object.entries(controls).flatMap(([name, { what, filter }]): Doubt[] => {
    const isSubsonic = what === 'subsonic' || filter?.pass === 'subsonic';
    const hz = filter?.corner ?? filter?.range?.to;
    if (!isSubsonic || hz === undefined || hz <= highestSubsonicHz) return [];
    return [
      {
        keys: ['controls', name, 'filter'],
        message: `has a subsonic filter ${name} that reaches ${hertz(hz)}`,
        remedy: check,
      },
    ];
  });
}
