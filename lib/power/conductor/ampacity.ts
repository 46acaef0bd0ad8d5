import { type Fault, faultOf, positiveFault } from '../../model/fault.ts';
import {
  ampacityCitation,
  ampacityRow,
  engineSpaceAmbientC,
  engineSpaceFactors,
  type InsulationRatingC,
  insulationColumn,
  tableAmbientC,
  thinWireSize,
} from '../../model/tables/ampacity.ts';
import { awgAreaMm2 } from '../../model/tables/awg-sizes.ts';
import { commonPractice, type Mark, type Traced, traced, type Working } from '../../model/trace.ts';
import type { ConductorMaterial } from '../../model/vocabulary.ts';
import type { PowerRules } from '../power-rules.ts';

/** What the ampacity of a conductor depends on, apart from where it runs. */
export interface InsulatedConductor {
  readonly areaMm2: number;
  readonly material: ConductorMaterial;
  /** Temperature rating of the insulation (C); null where it bears no mark. */
  readonly insulationC: number | null;
}

/** A stretch of a run. */
export interface RunZone {
  readonly zone: string;
  readonly ambientC: number;
  readonly engineSpace: boolean;
  /** Under loom or carpet. */
  readonly covered: boolean;
  /** Loaded conductors in the bundle, this one included. */
  readonly bundleCount: number;
  /** Length in it (m); ampacity goes by the worst zone, however short. */
  readonly lengthM?: number;
}

/** What lowered a figure under the table's. */
export type Derating =
  | 'insulation'
  | 'material'
  | 'ambient'
  | 'engine-space'
  | 'covered'
  | 'bundle'
  | 'thin-wire';

/** The two figures of one zone (A, rounded down): past `stopA` a job stops, past `cautionA` it is to be read. */
export interface ZoneLimit {
  readonly zone: string;
  readonly stopA: Traced<number>;
  readonly cautionA: Traced<number>;
  /** What lowered each of them under the table's figure. */
  readonly stopGoverned: readonly Derating[];
  readonly cautionGoverned: readonly Derating[];
}

/** Ampacity of a conductor over its whole run: the least of its zones. */
export interface Ampacity {
  readonly ampacityA: Traced<number>;
  readonly cautionA: Traced<number>;
  readonly limits: readonly ZoneLimit[];
}

interface Factor {
  readonly name: string;
  readonly why: Derating;
  readonly factor: number;
  readonly mark?: Mark;
  /** How the factor comes about, where it is not a table's or a house rule's. */
  readonly says?: string;
  /** Counts for the caution figure alone. */
  readonly cautionOnly: boolean;
}

/**
 * Ampacity (A) of a conductor through the zones of its run: the figure of 33 CFR 183.425, Table 5 (the AWG row at
 * or below its area, the insulation column at or below its rating), times, outside an engine space, the smaller of
 * sqrt((Tins - Tamb) / (Tins - 30)) and from 50 C up the table's engine-space factor; in an engine space that
 * factor alone. The caution figure also counts the true ambient of an engine space, loom or carpet and bundling.
 * Copper-clad aluminium: times sqrt of its conductivity. Insulation rated at or below the ambient carries nothing.
 * Under 18 AWG the trade's fuse ceilings stand in, but never more than 18 AWG carries there. Rounded down to whole
 * amperes (thin wire: to the ceiling). Fault where no zone is given, a number is no number, or the conductor is thinner than 24 AWG.
 */
export function ampacity(
  conductor: InsulatedConductor,
  zones: readonly RunZone[],
  rules: PowerRules,
): Ampacity | Fault {
  const { areaMm2 } = conductor;
  const bad = positiveFault({ area: areaMm2 });
  if (bad) return bad;
  const strange = zones.find(({ ambientC, bundleCount }) => !Number.isFinite(ambientC + bundleCount));
  if (strange)
    return faultOf(
      'zone-unclear',
      [strange.zone],
      `the ambient or the bundle of ${strange.zone} is not a number`,
      'correct the zone of the run, or its ambient in the house rules',
    );
  if (!ampacityRow(areaMm2) && !thinWireSize(areaMm2))
    return faultOf(
      'thinner-than-24-awg',
      ['area'],
      `${areaMm2} mm2 is thinner than 24 AWG: no ampacity is known`,
      'use a conductor of 24 AWG or larger',
    );
  const limits = zones.map((zone) => zoneLimit(conductor, zone, rules));
  const [first] = limits;
  if (!first)
    return faultOf(
      'zone-unclear',
      ['zones'],
      'no zone is given: the ambient of a run decides its ampacity',
      'write the zones that the run goes through',
    );
  const least = (read: (limit: ZoneLimit) => Traced<number>): Traced<number> =>
    limits.map(read).reduce((a, b) => (b.value < a.value ? b : a), read(first));
  return { ampacityA: least(({ stopA }) => stopA), cautionA: least(({ cautionA }) => cautionA), limits };
}

function zoneLimit(conductor: InsulatedConductor, zone: RunZone, rules: PowerRules): ZoneLimit {
  const ratingC = conductor.insulationC ?? rules.unmarkedInsulationC;
  const column = insulationColumn(ratingC);
  const row = ampacityRow(conductor.areaMm2);
  if (column === null || column <= zone.ambientC) return nothing(zone, ratingC);
  if (!row) return thinLimit(conductor, zone, rules);
  const factors = [
    ...materialFactors(conductor.material, rules),
    ...ambientFactors(zone, column),
    ...cautionFactors(zone, rules),
  ];
  const base = [
    ['table', row.amperageA(column), 'A'] as const,
    ['row', `${row.awg} AWG`, ''] as const,
    ['rated', ratingC, 'C'] as const,
    ['Tins', column, 'C'] as const,
    ['Tamb', zone.ambientC, 'C'] as const,
    ['zone', zone.zone, ''] as const,
  ];
  const figure = (kept: readonly Factor[]) => figureOf(row.amperageA(column), kept, base);
  const stopFactors = factors.filter(({ cautionOnly }) => !cautionOnly);
  // In an engine space the caution figure puts the true ambient in the place of the published factor.
  const hotter = factors.some(({ why, cautionOnly }) => why === 'ambient' && cautionOnly);
  const cautionFactorsKept = hotter ? factors.filter(({ why }) => why !== 'engine-space') : factors;
  return {
    zone: zone.zone,
    stopA: figure(stopFactors),
    cautionA: figure(cautionFactorsKept),
    stopGoverned: loweredBy(stopFactors),
    cautionGoverned: loweredBy(cautionFactorsKept),
  };
}

const loweredBy = (factors: readonly Factor[]): Derating[] =>
  factors.filter(({ factor }) => factor < 1).map(({ why }) => why);

/** The table's figure times factors, rounded down to whole amperes, with its working. */
function figureOf(
  tableA: number,
  kept: readonly Factor[],
  base: NonNullable<Working['inputs']>,
): Traced<number> {
  const exact = kept.reduce((value, { factor }) => value * factor, tableA);
  const mark = kept.some((factor) => factor.mark === 'mem')
    ? 'mem'
    : kept.find((factor) => factor.mark)?.mark;
  return traced(Math.floor(exact + 1e-9), 'A', {
    rule: 'ampacity',
    formula: [
      ['table', ...kept.map(({ name }) => name)].join(' * ').concat(', rounded down'),
      ...kept.flatMap(({ says }) => says ?? []),
    ].join('; '),
    citation: ampacityCitation,
    ...(mark && { mark }),
    inputs: [...base, ...kept.map(({ name, factor }) => [name, factor, ''] as const)],
  });
}

function materialFactors(material: ConductorMaterial, rules: PowerRules): Factor[] {
  if (material === 'copper') return [];
  // The trade quotes 0.79; unrounded it is 0.787, which is the safe side.
  const factor = Math.sqrt(rules.claddedConductivity);
  const says = `kCCA = sqrt(${rules.claddedConductivity}), its conductivity against copper`;
  return [{ name: 'kCCA', why: 'material', factor, mark: 'mem', says, cautionOnly: false }];
}

const rootFactor = (ratingC: number, ambientC: number): number =>
  Math.min(1, Math.sqrt(Math.max(0, ratingC - ambientC) / (ratingC - tableAmbientC)));

function ambientFactors(zone: RunZone, column: InsulationRatingC): Factor[] {
  const { factor: published, mark, doubtful } = engineSpaceFactors[column];
  const atFifty = rootFactor(column, engineSpaceAmbientC);
  const note: Factor = {
    name: 'kEngineSpace',
    why: 'engine-space',
    factor: doubtful ? Math.min(published, atFifty) : published,
    ...(mark && { mark }),
    cautionOnly: false,
  };
  const ambient = {
    name: 'kAmbient',
    why: 'ambient',
    factor: rootFactor(column, zone.ambientC),
    says: `kAmbient = sqrt((Tins - Tamb) / (Tins - ${tableAmbientC}))`,
  } as const;
  if (zone.engineSpace)
    return ambient.factor < note.factor ? [note, { ...ambient, mark: 'cp', cautionOnly: true }] : [note];
  if (zone.ambientC >= engineSpaceAmbientC && note.factor < ambient.factor) return [note];
  return ambient.factor < 1 ? [{ ...ambient, mark: 'cp', cautionOnly: false }] : [];
}

function cautionFactors(zone: RunZone, rules: PowerRules): Factor[] {
  const factors: Factor[] = [];
  if (zone.covered)
    factors.push({
      name: 'kCovered',
      why: 'covered',
      factor: rules.coveredFactor,
      mark: 'cp',
      cautionOnly: true,
    });
  const bundle =
    rules.bundleFactors.find(({ upTo }) => zone.bundleCount <= upTo) ?? rules.bundleFactors.at(-1);
  if (bundle && bundle.factor < 1)
    factors.push({ name: 'kBundle', why: 'bundle', factor: bundle.factor, mark: 'mem', cautionOnly: true });
  return factors;
}

function nothing(zone: RunZone, ratingC: number): ZoneLimit {
  const none = traced(0, 'A', {
    rule: 'ampacity',
    formula: '0 where Tins is at or below Tamb, or under 60 C',
    citation: ampacityCitation,
    inputs: [
      ['Tins', ratingC, 'C'],
      ['Tamb', zone.ambientC, 'C'],
      ['zone', zone.zone, ''],
    ],
  });
  const why: readonly Derating[] = ['insulation'];
  return { zone: zone.zone, stopA: none, cautionA: none, stopGoverned: why, cautionGoverned: why };
}

/** Under 18 AWG: the trade's fuse ceiling, and never more than 18 AWG of the same cable carries in the same zone. */
function thinLimit(conductor: InsulatedConductor, zone: RunZone, rules: PowerRules): ZoneLimit {
  const awg = thinWireSize(conductor.areaMm2) ?? '24';
  const ceilingA = rules.thinWireA[awg];
  const thicker = zoneLimit({ ...conductor, areaMm2: awgAreaMm2('18') }, zone, rules);
  const most = (figure: Traced<number>): Traced<number> =>
    traced(Math.min(ceilingA, figure.value), 'A', {
      rule: 'ampacity',
      formula: 'the lesser of the fuse ceiling of the size and what 18 AWG carries there',
      citation: commonPractice,
      mark: figure.trace.mark ?? 'cp',
      inputs: [
        ['size', `${awg} AWG`, ''],
        ['ceiling', ceilingA, 'A'],
        ['18 AWG', figure.value, 'A'],
        ['zone', zone.zone, ''],
      ],
    });
  return {
    zone: zone.zone,
    stopA: most(thicker.stopA),
    cautionA: most(thicker.cautionA),
    stopGoverned: ['thin-wire', ...thicker.stopGoverned],
    cautionGoverned: ['thin-wire', ...thicker.cautionGoverned],
  };
}
