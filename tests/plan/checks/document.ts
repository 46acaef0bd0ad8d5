import { expect, test } from 'vitest';
import { z } from 'zod';
import type { ReadJob } from '../../../lib/model/content/resolved-job.ts';
import { type BuildPlan, buildPlanSchema, planJsonSchema } from '../../../lib/model/plan/index.ts';

/** True where an unknown value is a JSON Schema as zod takes it. */
function isSchema(value: unknown): value is z.core.JSONSchema.JSONSchema {
  return typeof value === 'object' && value !== null && '$schema' in value;
}

/** The plan as a document: of the published shape, without a stop, and without a private value. */
export function documentChecks(plan: () => BuildPlan, job: () => ReadJob): void {
  test('has no finding that stops it', () => {
    expect(plan().findings.filter(({ level }) => level === 'stop')).toEqual([]);
  });

  test('is what its schema says, with nothing beside it and no number lost in JSON', () => {
    const written: unknown = JSON.parse(JSON.stringify(plan()));
    expect(buildPlanSchema.parse(written)).toEqual(written);
    expect(written).toEqual(plan());
  });

  test('fits the JSON Schema that is handed out', () => {
    const schema = planJsonSchema();
    if (!isSchema(schema)) throw new Error('The JSON Schema names no draft.');
    const reader = z.fromJSONSchema(schema);
    const written: unknown = JSON.parse(JSON.stringify(plan()));
    expect(reader.safeParse(written).error?.issues ?? []).toEqual([]);
    expect(reader.safeParse({ ...plan(), passes: 'two' }).success).toBe(false);
    expect(reader.safeParse({ ...plan(), wires: undefined }).success).toBe(false);
  });

  test('holds no private value of its job', () => {
    const text = JSON.stringify(plan()).toLowerCase();
    const secrets = Object.values(job().file.customer).flatMap((secret) => secret?.reveal() ?? []);
    expect(secrets.length).toBeGreaterThan(2);
    for (const secret of secrets) expect(text.includes(secret.toLowerCase()), 'a private value').toBe(false);
    for (const serial of Object.values(job().file.devices).flatMap((device) => device['serial-number'] ?? []))
      expect(text.includes(serial.toLowerCase()), 'a serial number').toBe(false);
  });

  test('every id is there once, and every trace belongs to something', () => {
    const { items, wires, power, boards, cables, runs, steps, measurements, traces } = plan();
    for (const list of [
      items,
      wires,
      power.conductors,
      power.fuses,
      boards,
      cables,
      runs,
      steps,
      measurements,
    ]) {
      const ids = list.map(({ id }) => id);
      expect(new Set(ids).size).toBe(ids.length);
    }
    const paths = Object.keys(traces);
    expect(paths.length).toBeGreaterThan(50);
    for (const fuse of power.fuses) expect(paths).toContain(`power.fuses.${fuse.id}.ratingA`);
    for (const { id, ampacityA } of power.conductors)
      if (ampacityA > 0) expect(paths).toContain(`power.conductors.${id}.ampacityA`);
  });
}
