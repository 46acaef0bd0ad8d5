import { beforeAll, describe, expect, it, vi } from 'vitest';
import { z } from 'zod';
import type { Keep } from '../../../lib/model/keep.ts';
import type { BuildPlan } from '../../../lib/model/plan/index.ts';
import type { FigureName } from '../../../lib/model/printed/figures.ts';
import type { LengthName } from '../../../lib/model/printed/lengths.ts';
import type { Direction } from '../../../lib/model/quantity/safe-rounding.ts';
import { figureDirections, lengthDirections } from '../../model/printed/safe-directions.ts';

/** Every figure that was printed while the plans were made, drawn and set: its text, with the value behind it. */
interface Told {
  readonly kind: string;
  readonly text: string;
  readonly value: number;
}
const told = vi.hoisted((): Told[] => []);

vi.mock('../../../lib/model/printed/index.ts', async (original) => {
  const real = await original<typeof import('../../../lib/model/printed/index.ts')>();
  const kept = (kind: string, text: string, value: number | null | undefined): string => {
    if (value !== null && value !== undefined) told.push({ kind, text, value });
    return text;
  };
  return {
    ...real,
    printed: (name: FigureName, value: number | null | undefined) =>
      kept(name, real.printed(name, value), value),
    printedNumber: (name: FigureName, value: number | null | undefined) =>
      kept(name, real.printedNumber(name, value), value),
    printedTone: (value: number) => kept('tone', real.printedTone(value), value),
  };
});

vi.mock('../../../lib/model/printed/lengths.ts', async (original) => {
  const real = await original<typeof import('../../../lib/model/printed/lengths.ts')>();
  type Style = Parameters<typeof real.printedLength>[2];
  const kept = (kind: string, text: string, value: number): string => {
    told.push({ kind, text, value });
    return text;
  };
  return {
    ...real,
    printedLength: (name: LengthName, lengthM: number, style: Style) => {
      const all = real.printedLength(name, lengthM, style);
      for (const text of [all.fraction, all.decimal, all.mm]) kept(name, text, lengthM);
      return all;
    },
    printedDimension: (name: LengthName, lengthM: number, style: Style) =>
      kept(name, real.printedDimension(name, lengthM, style), lengthM),
    printedMetres: (name: LengthName, lengthM: number) =>
      kept(name, real.printedMetres(name, lengthM), lengthM),
    printedInches: (name: LengthName, lengthM: number) =>
      kept(name, real.printedInches(name, lengthM), lengthM),
  };
});

vi.mock('../../../lib/model/printed/holes.ts', async (original) => {
  const real = await original<typeof import('../../../lib/model/printed/holes.ts')>();
  const kept = (kind: string, text: string, value: number): string => {
    told.push({ kind, text, value });
    return text;
  };
  return {
    ...real,
    printedBit: (...[diameterM, fit, system]: Parameters<typeof real.printedBit>) =>
      kept(fit, real.printedBit(diameterM, fit, system), diameterM),
    printedMade: (diameterM: number) => kept('hole', real.printedMade(diameterM), diameterM),
  };
});

const { buildStep, layoutStep, portStep, proposalStep, routingStep, stiffnessStep } = await import(
  '../../../lib/plan/board/board-steps.ts'
);
const { csvTables } = await import('../../../lib/export/exporters/csv.ts');
const { drawJob } = await import('../../../lib/draw/draw-job.ts');
const { shippedMetrics } = await import('../../../lib/publish/site/shipped-metrics.ts');
const { figures } = await import('../../../lib/model/printed/figures.ts');
const { stepOf } = await import('../../../lib/model/printed/instrument.ts');
const { parseQuantity } = await import('../../../lib/model/quantity/quantity.ts');
const { computation, computationCatalogue, isComputationId, isFieldOf } = await import(
  '../../../lib/model/computations/index.ts'
);
const { everyFinding } = await import('../../../lib/model/finding.ts');
const { coveringPieces } = await import('../../../lib/publish/sheets/wires/run-dress.ts');
const { findingFigure } = await import('../../../lib/model/finding-text.ts');
const { sheetSections } = await import('../../../lib/publish/page/sheet-sections.ts');
const { judgedPlan } = await import('../../../lib/commands/shop/judged-plan.ts');
const { fixedJob, fixedJobs } = await import('../../boards/fixed-jobs.ts');
const { demoJob, demoJobs, demoPlan } = await import('../../plan/demo.ts');
const { jobOf } = await import('../../plan/plan-small-shop.ts');
const { testCrew } = await import('../../shops/test-crew.ts');
const { smallShop } = await import('../../read/small-shop.ts');
const { samplePlan } = await import('../sample/sample-plan.ts');

/** A number with its unit, as sheets and drawings write them. */
const withUnit =
  /(?<![\w.#/-])-?\d[\d.]*(?:[ -]\d+\/\d+|\/\d+)?\s(?:mA|A|mV|V|W|kHz|Hz|ohm|dB\/octave|dB|ms|N m|N|kg|lb|in|mm2|mm|mm²|cm²|m²|m|ft|%|°C|C|g)(?![\w/])/g;

/**
 * What is said in so many words: a limit of a meter's continuity test, a standard's title, a proof line, the
 * width that a receptacle is made for. None of it is
 * reckoned, so none is rounded.
 */
const said: readonly RegExp[] = [/each 3 dB more halves/, /^50 mm\.$/, /UL 486A/, /receptacle 6\.3 mm/];

interface Leaf {
  readonly text: string;
  readonly at: string;
}

/** Every text of a model, with the way to it. */
function leavesOf(model: unknown, at: string): Leaf[] {
  if (typeof model === 'string') return [{ text: model.replaceAll('\u00a0', ' '), at }];
  if (typeof model !== 'object' || model === null) return [];
  return Object.entries(model).flatMap(([key, value]) => leavesOf(value, `${at}/${key}`));
}

/** What the computations say of their choices, and every finding with its figures. */
function reasonLeaves({ power, wires, boards, findings }: BuildPlan): Leaf[] {
  return [
    ...power.conductors.flatMap(({ id, reason, alternatives = [] }) =>
      leavesOf({ reason, notes: alternatives.map(({ note }) => note) }, `conductor ${id}`),
    ),
    ...power.fuses.flatMap(({ id, reason }) => leavesOf({ reason }, `fuse ${id}`)),
    ...power.points.flatMap(({ name, reason }) => leavesOf({ reason }, `point ${name}`)),
    ...wires.flatMap(({ id, measured, ends }) => leavesOf({ measured, ends }, `wire ${id}`)),
    ...boards.flatMap(({ id, proposals }) => leavesOf(proposals, `board ${id}`)),
    ...findings.flatMap(({ rule, message, remedy, value, limit, unit }) => [
      ...leavesOf({ message, remedy }, `finding ${rule}`),
      ...(value === undefined ? [] : [{ text: findingFigure(value, unit, limit), at: `value of ${rule}` }]),
      ...(limit === undefined ? [] : [{ text: findingFigure(limit, unit, value), at: `limit of ${rule}` }]),
    ]),
  ];
}

/** The texts of every sheet and of every drawing of a plan. */
function printedLeaves(plan: BuildPlan): Leaf[] {
  const sheets = sheetSections(plan, 'shop').flatMap(({ id, sheet }) => leavesOf(sheet, id));
  const drawings = drawJob(plan, shippedMetrics()).flatMap(({ id, svg }) =>
    [...svg.matchAll(/<(text|desc)[^>]*>([^<]*)</g)].map(([, , text = '']) => ({ text, at: id })),
  );
  return [...sheets, ...drawings, ...reasonLeaves(plan)];
}

/** Texts that stand in the files of the shop: they are told as they were written. */
function writtenTexts(plan: BuildPlan): string[] {
  return [
    ...plan.items.flatMap(({ title, partTitle }) => [title, partTitle]),
    ...plan.pick.map(({ title }) => title),
    ...plan.vehicle.cautions,
    ...plan.job.notes,
    ...plan.job.revisions.map(({ what }) => what),
    ...plan.terminals.flatMap(({ reason }) => reason ?? []),
    ...plan.controls.flatMap(({ preset, safeState, why, final }) => [
      preset,
      safeState,
      why,
      final.state ?? '',
      final.why,
    ]),
    ...plan.measurements.flatMap(({ asBuilt, unit }) =>
      asBuilt === undefined ? [] : [`${asBuilt} ${unit}`],
    ),
  ].filter((text) => text.length > 3 && /\d/.test(text));
}

const number = /\d+(?:\.\d+)?(?:[ -]\d+\/\d+|\/\d+)?/g;

/** A message leaves noughts at the end out. */
const withAndWithoutNoughts = (text: string): string[] => [
  text,
  text.replace(/(\.\d*?)0+$/, '$1').replace(/\.$/, ''),
];

/** Figures that a plan's paper shows and that nothing printed: what was rounded by nobody knows no safe side. */
function unprinted(plan: BuildPlan): string[] {
  const leaves = printedLeaves(plan);
  const numbers = new Set(
    told.flatMap(({ text }) => text.match(number) ?? []).flatMap(withAndWithoutNoughts),
  );
  const written = writtenTexts(plan).toSorted((a, b) => b.length - a.length);
  return leaves.flatMap(({ text, at }) => {
    const own = written.reduce((left, title) => left.replaceAll(title, ''), text);
    if (said.some((one) => one.test(own))) return [];
    return [...own.matchAll(withUnit)]
      .filter(([token]) => !numbers.has(/[\d./]+(?:[ -]\d+\/\d+)?/.exec(token)?.[0] ?? ''))
      .map(([token]) => `${at}: ${token} in "${text}"`);
  });
}

/**
 * Plans made anew, so that what their computations and their findings tell is told here. Only places, ways and stiffness
 * are kept: `lib/board` prints no figure.
 */
const kept = testCrew().keep;
const ofBoards = new Set<string>(
  [layoutStep, proposalStep, routingStep, portStep, stiffnessStep, buildStep].map(({ id }) => id),
);
const keep: Keep = (step, input) => (ofBoards.has(step.id) ? kept(step, input) : step.compute(input, keep));
const plans: readonly (readonly [string, () => BuildPlan])[] = [
  ...demoJobs.map((id) => [id, () => judgedPlan(demoJob(id), keep)] as const),
  ...fixedJobs.map((id) => [`${id} as it was`, () => judgedPlan(fixedJob(id), keep)] as const),
  ['the small shop', () => judgedPlan(jobOf(smallShop()), keep)],
  ['the sample', () => samplePlan()],
];

/** The number at the head of a printed figure. */
const numberOf = (text: string): number => Number(/-?\d+(?:\.\d+)?/.exec(text)?.[0]);

const isFigure = (kind: string): kind is FigureName => Object.hasOwn(figureDirections, kind);
const isLength = (kind: string): kind is LengthName => Object.hasOwn(lengthDirections, kind);

/** How a printed text errs, in steps of what it is read on: positive where it tells more than there is. */
function errorOf({ kind, text, value }: Told): { readonly by: number; readonly direction: Direction } | null {
  if (isFigure(kind)) {
    const step = stepOf(value, figures[kind].on);
    return { by: (numberOf(text) - value) / step, direction: figureDirections[kind] };
  }
  if (isLength(kind)) {
    const shownM = parseQuantity(text, 'length');
    if (typeof shownM !== 'number') return null;
    const step = text.endsWith('ft') || text.endsWith('in') ? 0.0254 / 16 : text.includes('.') ? 0.01 : 0.001;
    return { by: (shownM - value) / step, direction: lengthDirections[kind] };
  }
  return null;
}

describe.each(plans)('on the paper of %s', (_, make) => {
  // All are made before any is looked at: what stands in a table of sizes is told by the first that needs it.
  const plan = make();
  let withoutKind: readonly string[] = [];
  beforeAll(() => {
    withoutKind = unprinted(plan);
  });

  it('no figure stands that has no kind, and so no safe side', () => {
    expect(withoutKind).toEqual([]);
  });

  it('every figure errs to its safe side, and by less than a step of what it is read on', () => {
    const wrong = told.flatMap((one) => {
      const error = errorOf(one);
      if (error === null || !Number.isFinite(one.value)) return [];
      const { by, direction } = error;
      const isSafe =
        direction === 'up' ? by > -1e-4 : direction === 'down' ? by < 1e-4 : Math.abs(by) <= 0.5 + 1e-4;
      // A diagram tells a length of wire to the whole inch: sixteen steps of a tape.
      return isSafe && Math.abs(by) < 16 + 1e-4 ? [] : [one];
    });
    expect(wrong).toEqual([]);
    expect(told.length).toBeGreaterThan(50);
  });

  it('every hole lets pass or holds what it is for', () => {
    for (const { kind, text, value } of told.filter(
      (one) => one.kind === 'clearance' || one.kind === 'pilot',
    ))
      for (const bit of text.split(' or ').filter((one) => /^[\d/ .]+(in|mm)$/.test(one))) {
        const bitM = parseQuantity(bit, 'length');
        if (typeof bitM !== 'number') throw new Error(`${bit} is no size of a bit`);
        if (kind === 'clearance') expect(bitM).toBeGreaterThanOrEqual(value - 2e-9);
        else expect(Math.abs(bitM - value)).toBeLessThanOrEqual(0.0001 + 2e-9);
      }
  });
});

/** Every number of a model, with the field that it stands in: `steps[].minutes`. */
function numbersOf(model: unknown, field = '', seen = new Set<unknown>()): [number, string][] {
  if (typeof model === 'number') return [[model, field]];
  if (typeof model !== 'object' || model === null || seen.has(model)) return [];
  seen.add(model);
  const entries: readonly (readonly [unknown, unknown])[] =
    model instanceof Map ? [...model] : Object.entries(model);
  return entries.flatMap(([key, value]) =>
    numbersOf(value, Array.isArray(model) ? `${field}[]` : `${field === '' ? '' : `${field}.`}${key}`, seen),
  );
}

const isComputedField = (field: string): boolean =>
  Object.keys(computationCatalogue).some((id) => isComputationId(id) && isFieldOf(computation(id), field));

/** What a reader can follow back: numbers with a trace, their inputs, what was written, and fields that have a computation. */
function knownNumbers(plan: BuildPlan, given: unknown): number[] {
  const { traces, rules: houseRules, findings, ...rest } = plan;
  const traced = Object.values(traces).flatMap(({ value, inputs }) => [
    value,
    ...inputs.map((one) => one.value),
  ]);
  return [
    ...traced.filter((value) => typeof value === 'number'),
    ...[...numbersOf(given), ...numbersOf(houseRules)].map(([value]) => value),
    ...numbersOf(rest).flatMap(([value, field]) => (isComputedField(field) ? [value] : [])),
    // A finding names its rule and its source.
    ...everyFinding(findings)
      .flatMap(({ value, limit }) => [value, limit])
      .filter((value) => typeof value === 'number'),
    ...reelTotals(plan),
  ];
}

/** What is cut of each reel altogether: the sum of the rows that stand below it. */
function reelTotals(plan: BuildPlan): number[] {
  const { wires, cables, pick } = plan;
  const cabled = new Set(cables.flatMap(({ conductors }) => conductors.flatMap(({ wire }) => wire ?? [])));
  const pieces = [
    ...wires.filter(({ id, origin }) => origin === 'job' && !cabled.has(id)),
    ...cables,
    ...coveringPieces(plan),
  ];
  return pick.map(({ part }) =>
    pieces.reduce((sum, piece) => (piece.part === part ? sum + piece.lengthM : sum), 0),
  );
}

/** A figure may be told in another unit than it is computed in. */
const told1000th = 1000;
const scales = [1, 100, told1000th, 1 / told1000th, 1 / 60];

/** The figures of the sheets of a plan that nothing leads back from. */
function untraced(plan: BuildPlan, given: unknown): string[] {
  const known = Float64Array.from(knownNumbers(plan, given).map(Math.abs)).sort();
  const isKnown = (value: number) =>
    value === 0 || scales.some((scale) => holds(known, Math.abs(value) / scale, 1e-9));
  told.length = 0;
  sheetSections(plan, 'shop');
  return [
    ...new Set(
      told.flatMap(({ kind, text, value }) =>
        !Number.isFinite(value) || isTabled(kind) || isKnown(value) ? [] : [`${kind}: ${text} (${value})`],
      ),
    ),
  ];
}

/** Read off a published table that its sheet names; or the sides of what a sheet leaves, between cuts that are drawn there. */
const isTabled = (kind: string): boolean => kind.startsWith('pull-') || kind === 'length-left';

/** True where a sorted list has a number, but for a share of it. */
function holds(sorted: Float64Array, value: number, share: number): boolean {
  let [low, high] = [0, sorted.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((sorted[middle] ?? 0) < value * (1 - share)) low = middle + 1;
    else high = middle;
  }
  return low < sorted.length && (sorted[low] ?? 0) <= value * (1 + share);
}

describe('on the sheets', () => {
  it.each(demoJobs)('of %s every figure has its trace, or its field has a computation', (id) => {
    const job = demoJob(id);
    expect(untraced(demoPlan(id), job)).toEqual([]);
  });

  it('a figure that nothing leads back from is found', () => {
    const job = demoJob('under-seat-five');
    const plan = demoPlan(job.id);
    const measurements = plan.measurements.map((one) => ({ ...one, predicted: 12.34567 }));
    expect(untraced({ ...plan, measurements }, job).join()).toContain('12.34567');
  });
});

it('a figure that nothing printed is found', () => {
  const plan = samplePlan();
  const steps = plan.steps.map((step) => ({ ...step, text: 'Set the limit to 123.457 A' }));
  expect(unprinted({ ...plan, steps }).join()).toContain('123.457 A in "Set the limit to 123.457 A"');
});

it('a figure that nothing printed is found in a reason and in a finding too', () => {
  const plan = samplePlan();
  const [first, ...others] = plan.power.conductors;
  if (!first) throw new Error('the sample has no conductor');
  const conductors = [{ ...first, reason: 'it carries 123.457 A' }, ...others];
  expect(unprinted({ ...plan, power: { ...plan.power, conductors } }).join()).toContain(
    `conductor ${first.id}/reason: 123.457 A`,
  );
  const findings = plan.findings.map((one) => ({ ...one, remedy: 'use at least 21.1537 mm2' }));
  expect(findings.length).toBeGreaterThan(0);
  expect(unprinted({ ...plan, findings }).join()).toContain('21.1537 mm2');
});

/** A column of a sheet whose figures are held against the plan's own, by the thing that its row is about. */
interface Held {
  readonly sheet: string;
  readonly caption: RegExp;
  readonly column: string;
  readonly of: (plan: BuildPlan, subject: string, first: string) => number | null | undefined;
  readonly direction: Direction;
  /** The finest step that it may show, in its own unit. */
  readonly step: number;
}

const conductor = (plan: BuildPlan, id: string) => plan.power.conductors.find((one) => one.id === id);
const fuse = (plan: BuildPlan, id: string) => plan.power.fuses.find((one) => one.id === id);
const load = (plan: BuildPlan, id: string) => plan.power.loads.find(({ item }) => item === id);
const channel = (plan: BuildPlan, id: string) => plan.audio.channels.find((one) => one.id === id);
const wire = (plan: BuildPlan, id: string) => plan.wires.find((one) => one.id === id);

const inchStep = 0.0254 / 16;
const feed = { sheet: 'conductor-table', caption: /^Conductors of the feed/ } as const;
const fuses = { sheet: 'power-diagram', caption: /^Fuses$/ } as const;
const loads = { sheet: 'power-diagram', caption: /^Current of each device/ } as const;
const channels = { sheet: 'signal-diagram', caption: /^Load of each channel/ } as const;
const gains = { sheet: 'signal-diagram', caption: /^Setting of gain|^Gain/ } as const;
const cuts = { sheet: 'wire-list', caption: /^Cut, reel by reel/ } as const;
const up = { direction: 'up' } as const;
const down = { direction: 'down' } as const;

const held: readonly Held[] = [
  // Without a fuse before it nothing tells what it must carry.
  { ...feed, column: 'Must carry', of: (plan, id) => conductor(plan, id)?.neededA || null, ...up, step: 1 },
  { ...feed, column: 'May carry', of: (plan, id) => conductor(plan, id)?.ampacityA, ...down, step: 1 },
  { ...feed, column: 'Length', of: (plan, id) => conductor(plan, id)?.lengthM, ...up, step: inchStep },
  { ...fuses, column: 'Rating', of: (plan, id) => fuse(plan, id)?.ratingA, ...down, step: 1 },
  { ...fuses, column: 'At rated power', of: (plan, id) => fuse(plan, id)?.ratedA, ...up, step: 1 },
  { ...fuses, column: 'From its source', of: (plan, id) => fuse(plan, id)?.distanceM, ...up, step: inchStep },
  { ...loads, column: 'At rated power', of: (plan, id) => load(plan, id)?.ratedA, ...up, step: 1 },
  { ...channels, column: 'Load', of: (plan, id) => channel(plan, id)?.loadOhm, ...down, step: 0.1 },
  { ...channels, column: 'Least', of: (plan, id) => channel(plan, id)?.minimumOhm, ...up, step: 0.1 },
  { ...gains, column: 'Meter shows', of: (plan, id) => channel(plan, id)?.gainVoltageV, ...down, step: 0.01 },
  {
    ...cuts,
    column: 'Cut to',
    // Cables and coverings are cut as well: a row that bears the label of a wire is that wire.
    of: (plan, id, label) => (wire(plan, id)?.label === label ? wire(plan, id)?.lengthM : null),
    ...up,
    step: inchStep,
  },
];

const seenTable = z.object({
  caption: z.string(),
  columns: z.array(z.object({ title: z.string() })),
  rows: z.array(z.object({ subject: z.string().nullable(), cells: z.array(z.object({ text: z.string() })) })),
});

describe('a figure of a sheet is that of the plan, on its safe side', () => {
  const plan = demoPlan('van-three-amps');
  const sections = sheetSections(plan, 'shop');

  it.each(held.map((one) => [`${one.sheet}: ${one.column}, ${one.caption.source}`, one] as const))(
    '%s',
    (_, one) => {
      const section = sections.find(({ id }) => id === one.sheet);
      const tables = tablesOf(section?.sheet).filter(({ caption }) => one.caption.test(caption));
      let seen = 0;
      for (const { columns, rows } of tables) {
        const at = columns.findIndex(({ title }) => title === one.column);
        for (const { subject, cells } of rows) {
          const value = one.of(plan, subject ?? '', cells[0]?.text ?? '');
          const text = cells[at]?.text ?? '';
          if (value === null || value === undefined || !/\d/.test(text)) continue;
          const length = parseQuantity(text.replaceAll('\u00a0', ' '), 'length');
          const shown = one.step < 0.01 && typeof length === 'number' ? length : numberOf(text);
          seen += 1;
          const by = shown - value;
          if (one.direction === 'up') expect(by, `${subject}: ${text} for ${value}`).toBeGreaterThan(-1e-6);
          else expect(by, `${subject}: ${text} for ${value}`).toBeLessThan(1e-6);
          expect(Math.abs(by), `${subject}: ${text} for ${value}`).toBeLessThan(one.step + 1e-6);
        }
      }
      expect(seen).toBeGreaterThan(0);
    },
  );
});

/** Every table of a sheet's model. */
function tablesOf(model: unknown): z.output<typeof seenTable>[] {
  const read = seenTable.safeParse(model);
  if (read.success) return [read.data];
  return typeof model === 'object' && model !== null ? Object.values(model).flatMap(tablesOf) : [];
}

it('tables for a spreadsheet hold what the paper tells, with no more digits', () => {
  const plan = demoPlan('van-three-amps');
  const digits = [
    'fuses',
    'conductors',
    'drops',
    'charging',
    'channels',
    'speakers',
    'measurements',
    'wires',
    'drill',
  ] as const;
  for (const name of digits)
    for (const field of csvTables[name](plan)
      .split(/[,\r\n]+/)
      .filter((one) => /^-?\d+\.\d+$/.test(one)))
      expect(field.replace(/^-?0?\.?0*|\./g, '').length, `${name}: ${field}`).toBeLessThanOrEqual(5);
});
