import type { z } from 'zod';
import { type BuildPlan, buildPlanSchema } from '../../lib/model/plan/index.ts';
import { insideOf } from '../../lib/model/writing/schema-shape.ts';

/** Where leaves of a plan are, `*` for any index, and the column that tells of them. */
export const comparedLeaves = {
  'job.title': ['job.title'],
  'job.vehicle': ['vehicle.id', 'vehicle.title'],
  'job.fabricator': ['job.fabricator'],
  'job.drawn-by': ['job.drawnBy'],
  'job.approved-by': ['job.approvedBy'],
  'job.notes': ['job.notes.*'],
  'parts.part': ['items.*.part', 'items.*.partTitle'],
  'parts.title': ['items.*.title'],
  'parts.stands': ['items.*.board', 'items.*.seat', 'items.*.seatTitle'],
  'parts.in-vehicle': ['items.*.zone', 'items.*.side'],
  'parts.held': ['items.*.held'],
  'places.board': [],
  'places.x': ['boards.*.placements.*.xM'],
  'places.y': ['boards.*.placements.*.yM'],
  'places.turn': ['boards.*.placements.*.turnDeg'],
  'places.raised': ['boards.*.placements.*.raisedM'],
  'boards.title': ['boards.*.title'],
  'boards.space': ['boards.*.space', 'boards.*.spaceTitle'],
  'boards.sheet': ['boards.*.sheet'],
  'boards.thickness': ['boards.*.thicknessM'],
  'boards.width': ['boards.*.widthM'],
  'boards.height': ['boards.*.heightM'],
  'boards.outline': ['boards.*.outline.*.xM', 'boards.*.outline.*.yM', 'boards.*.outline.*.bulge'],
  'boards.cut-outs': ['boards.*.cutouts.*.*.xM', 'boards.*.cutouts.*.*.yM', 'boards.*.cutouts.*.*.bulge'],
  'boards.holes': [
    'boards.*.holes.*.xM',
    'boards.*.holes.*.yM',
    'boards.*.holes.*.diameterM',
    'boards.*.holes.*.depthM',
  ],
  'boards.ribs': ['boards.*.ribs.*.id'],
  'boards.mass': ['boards.*.loadedMassKg'],
  'boards.first-mode': ['boards.*.firstModeHz'],
  'fixings.part': ['boards.*.fixings.*.part'],
  'fixings.point': ['boards.*.fixings.*.point'],
  'fixings.x': ['boards.*.fixings.*.xM'],
  'fixings.y': ['boards.*.fixings.*.yM'],
  'fuses.rating': ['power.fuses.*.ratingA'],
  'fuses.form': ['power.fuses.*.form'],
  'fuses.part': ['power.fuses.*.part'],
  'fuses.holder': ['power.fuses.*.item'],
  'fuses.from': ['power.fuses.*.from'],
  'fuses.to': ['power.fuses.*.to'],
  'fuses.distance': ['power.fuses.*.distanceM'],
  'fuses.protects': ['power.fuses.*.protects.*'],
  'conductors.size': ['wires.*.size.label'],
  'conductors.length': ['wires.*.lengthM'],
  'conductors.label': ['wires.*.label'],
  'conductors.from': ['wires.*.from'],
  'conductors.to': ['wires.*.to'],
  'conductors.colour': ['wires.*.colour'],
  'conductors.part': ['wires.*.part'],
  'conductors.cable': ['wires.*.cable'],
  'conductors.run': ['wires.*.run'],
  'conductors.may-carry': ['power.conductors.*.ampacityA'],
  'conductors.first-end': ['wires.*.ends.0.prep', 'wires.*.ends.0.torqueNm'],
  'conductors.last-end': ['wires.*.ends.1.prep', 'wires.*.ends.1.torqueNm'],
  'loads.rated': ['power.loads.*.ratedA'],
  'loads.music': ['power.loads.*.musicA'],
  'loads.fuses': ['power.loads.*.fuseA'],
  'loads.voltage': [],
  'channels.load': ['audio.channels.*.loadOhm'],
  'channels.least-load': ['audio.channels.*.least.ohm'],
  'channels.speakers': ['audio.channels.*.speakers.*'],
  'channels.wiring': ['audio.channels.*.wiring'],
  'channels.power': ['audio.channels.*.powerW'],
  'channels.gain-voltage': ['audio.channels.*.gainVoltageV'],
  'channels.filters': [
    'audio.channels.*.filters.*.where',
    'audio.channels.*.filters.*.pass',
    'audio.channels.*.filters.*.type',
    'audio.channels.*.filters.*.order',
    'audio.channels.*.filters.*.cornerHz',
  ],
  'speakers.delay': ['audio.speakers.*.delayMs'],
  'speakers.polarity': ['audio.speakers.*.polarity'],
  'speakers.channel': ['audio.speakers.*.channel'],
  'speakers.power': ['audio.speakers.*.powerW'],
  'settings.preset': ['controls.*.preset'],
  'settings.final': ['controls.*.final.state'],
  'findings.level': ['findings.*.level'],
  'findings.message': ['findings.*.message'],
  'findings.accepted': ['findings.*.accepted.by', 'findings.*.accepted.reason'],
  'pick.quantity': ['pick.*.quantity', 'pick.*.unit'],
  'rules.value': ['rules.*.value', 'rules.*.unit'],
} as const satisfies Record<string, readonly string[]>;

/** Paths of the leaves of a plan that a pattern stands for. */
export function pathsOf(plan: unknown, pattern: string): string[][] {
  const [step, ...rest] = pattern.split('.');
  if (step === undefined || step === '') return [[]];
  const steps = step === '*' ? (Array.isArray(plan) ? plan.map((_, index) => String(index)) : []) : [step];
  return steps.flatMap((key) => {
    const inner = innerOf(plan, key);
    if (inner === undefined) return [];
    return rest.length === 0 ? [[key]] : pathsOf(inner, rest.join('.')).map((below) => [key, ...below]);
  });
}

function innerOf(value: unknown, key: string): unknown {
  if (typeof value !== 'object' || value === null) return undefined;
  return new Map<string, unknown>(Object.entries(value)).get(key);
}

/** A plan in which one leaf is another than it was. */
export function withOtherLeaf(plan: BuildPlan, path: readonly string[]): BuildPlan {
  return buildPlanSchema.parse(changed(buildPlanSchema, plan, path));
}

function changed(schema: z.ZodType, value: unknown, path: readonly string[]): unknown {
  const [step, ...rest] = path;
  if (step === undefined) return otherThan(schema, value);
  const inside = insideOf(schema);
  const inner = (): z.ZodType => {
    if (inside.shape === 'object') return inside.fields.get(step) ?? schema;
    if (inside.shape === 'list') return inside.element;
    if (inside.shape === 'tuple') return inside.items[Number(step)] ?? schema;
    return schema;
  };
  if (inside.shape === 'wrapper') return changed(inside.inner, value, path);
  const below = changed(inner(), innerOf(value, step), rest);
  if (Array.isArray(value)) return value.map((one, index) => (String(index) === step ? below : one));
  return { ...Object.fromEntries(Object.entries(value ?? {})), [step]: below };
}

/** Another value that the schema takes: far enough off to be printed otherwise. */
function otherThan(schema: z.ZodType, value: unknown): unknown {
  const tries: readonly unknown[] =
    typeof value === 'number'
      ? [value * 2 + 1, value === 1 ? 2 : 1]
      : typeof value === 'boolean'
        ? [!value]
        : [`${value}-otherwise`, 7, ...wordsOf(schema).filter((word) => word !== value)];
  const fit = tries.find((one) => schema.safeParse(one).success);
  if (fit === undefined) throw new Error(`There is no other value than ${String(value)}.`);
  return fit;
}

/** The words of a closed set. */
function wordsOf(schema: z.ZodType): readonly unknown[] {
  const inside = insideOf(schema);
  if (inside.shape === 'wrapper') return wordsOf(inside.inner);
  return 'options' in schema && Array.isArray(schema.options) ? schema.options : [];
}
