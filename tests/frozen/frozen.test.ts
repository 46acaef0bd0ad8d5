import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { frozenPlans } from '../../lib/commands/shop/frozen-plans.ts';
import { drawJob } from '../../lib/draw/draw-job.ts';
import { type BuildPlan, planFormat } from '../../lib/model/plan/index.ts';
import { sheetSections } from '../../lib/publish/page/sheet-sections.ts';
import { frozenPath } from '../../lib/read/frozen-file.ts';
import { shippedMetrics } from '../draw/lettering/shipped-metrics.ts';

const folder = fileURLToPath(new URL('.', import.meta.url));
const formats = readdirSync(folder, { withFileTypes: true }).flatMap((entry) =>
  entry.isDirectory() ? [entry.name] : [],
);
const kept = formats.flatMap((format) =>
  readdirSync(`${folder}${format}`).map((name) => ({ format, name, path: `${folder}${format}/${name}` })),
);

/** A frozen plan as the tool of today reads it; fails where it can't. */
function readToday(text: string): BuildPlan {
  const { frozen, problems } = frozenPlans([{ path: frozenPath('job', 'A'), text }]);
  expect(problems).toEqual([]);
  const [read] = frozen;
  if (!read) throw new Error('The frozen plan was not read.');
  return read.plan;
}

/** Every value of a document by its path, such as `power.fuses.3.ratingA`. */
function leaves(value: unknown, path = ''): [string, unknown][] {
  if (typeof value !== 'object' || value === null) return [[path, value]];
  return Object.entries(value).flatMap(([key, below]) => leaves(below, path === '' ? key : `${path}.${key}`));
}

describe('a plan that was frozen', () => {
  it('is kept here of every format that there was', () => {
    const from = Array.from({ length: planFormat }, (_, format) => `format-${format}`);
    for (const format of from) expect(formats).toContain(format);
  });

  it.each(kept)('$format $name keeps every value that it has, and gets none changed', ({ path }) => {
    const text = readFileSync(path, 'utf8');
    const written = leaves(JSON.parse(text));
    const read = new Map(leaves(readToday(text)));
    expect(written.length).toBeGreaterThan(5000);
    const different = written.filter(([at, value]) => at !== 'format' && read.get(at) !== value);
    expect(different.slice(0, 20)).toEqual([]);
  });

  it.each(kept)('$format $name still gives its sheets and drawings, with its fuses in them', ({ path }) => {
    const plan = readToday(readFileSync(path, 'utf8'));
    const sections = sheetSections(plan, 'bench');
    expect(sections.length).toBeGreaterThan(10);
    const texts = JSON.stringify(sections);
    expect(texts).not.toMatch(/NaN|undefined|\[object/);
    for (const { ratingA } of plan.power.fuses) if (ratingA !== null) expect(texts).toContain(`${ratingA} A`);
    const drawings = drawJob(plan, shippedMetrics);
    expect(drawings.length).toBeGreaterThan(8);
    for (const { svg, id } of drawings) expect(svg, id).not.toMatch(/NaN|undefined/);
  });
});

describe('a frozen file', () => {
  const problemOf = (text: string) =>
    frozenPlans([{ path: frozenPath('job', 'A'), text }]).problems.map(({ expected }) => expected);

  it('of a later version of the tool is told as that', () => {
    const [one] = kept;
    const plan = JSON.parse(readFileSync(one?.path ?? '', 'utf8'));
    const [expected] = problemOf(JSON.stringify({ ...plan, format: planFormat + 1 }));
    expect(expected).toMatch(new RegExp(`format ${planFormat + 1}, of a later version`));
  });

  it('that lacks what a plan must have says what', () => {
    const [one] = kept;
    const { wires: _, ...rest } = JSON.parse(readFileSync(one?.path ?? '', 'utf8'));
    expect(problemOf(JSON.stringify(rest))).toEqual([expect.stringMatching(/wires is amiss/)]);
  });

  it.each(['', 'null', '[]', '{ "format": 0.5 }', '{ "format": "1" }'])('that is none: %s', (text) => {
    expect(problemOf(text)).toHaveLength(1);
  });
});
