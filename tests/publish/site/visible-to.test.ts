import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { builders, customerAndShop, everyone } from '../../../lib/model/audience.ts';
import { partsFileSchema } from '../../../lib/model/content/catalogue.ts';
import { jobSchema } from '../../../lib/model/content/job.ts';
import { shopSchema } from '../../../lib/model/content/shop.ts';
import { vehicleSchema } from '../../../lib/model/content/vehicle.ts';
import { buildPlanSchema } from '../../../lib/model/plan/index.ts';
import { fileSchema } from '../../../lib/model/short-forms/file-schema.ts';
import { undeclaredLeaves, visibleTo } from '../../../lib/publish/site/visible-to.ts';
import { samplePlan } from '../sample/sample-plan.ts';

const files = {
  ...{ jobSchema, partsFileSchema, vehicleSchema, shopSchema, buildPlanSchema },
  ...{ jobInShort: fileSchema(jobSchema), vehicleInShort: fileSchema(vehicleSchema) },
  partsInShort: fileSchema(partsFileSchema),
};

describe('every leaf of every schema declares its audiences', () => {
  it.each(Object.entries(files))('%s', (_, schema) => {
    expect(undeclaredLeaves(schema)).toEqual([]);
  });

  it('finds a leaf that does not, wherever it hides', () => {
    const schema = z.object({
      told: everyone(z.string()),
      list: z.array(z.object({ forgotten: z.string() })),
      either: z.union([builders(z.number()), z.strictObject({ other: z.number().optional() })]),
      pair: z.tuple([everyone(z.string()), z.string()]),
      table: z.record(z.string(), z.boolean()).default({}),
    });
    expect(undeclaredLeaves(schema)).toEqual(['/list/*/forgotten', '/either/other', '/pair/1', '/table/*']);
  });

  it('finds one whose audience was declared before it was made optional', () => {
    expect(undeclaredLeaves(z.object({ late: everyone(z.string()).optional() }))).toEqual([]);
    expect(undeclaredLeaves(z.object({ late: z.string().optional() }))).toEqual(['/late']);
  });
});

describe('visibleTo', () => {
  const schema = z.object({
    title: everyone(z.string()),
    torque: builders(z.number()),
    price: customerAndShop(z.string()),
    forgotten: z.string(),
    findings: z.array(z.object({ message: builders(z.string()) })),
    either: z.union([
      z.strictObject({ pieces: builders(z.number()) }),
      z.strictObject({ reels: everyone(z.number()) }),
    ]),
  });
  const value = {
    title: 'Board',
    torque: 4,
    price: '10',
    forgotten: 'shown to nobody',
    findings: [{ message: 'a' }, { message: 'b' }],
    either: { reels: 2 },
  };

  it('keeps what an audience may see, and nothing that was never declared', () => {
    expect(visibleTo(schema, value, 'bench')).toEqual({
      title: 'Board',
      torque: 4,
      findings: [{ message: 'a' }, { message: 'b' }],
      either: { reels: 2 },
    });
    expect(visibleTo(schema, value, 'customer')).toEqual({
      title: 'Board',
      price: '10',
      either: { reels: 2 },
    });
  });

  it('tells the customer of a plan its titles and cautions, and no finding, trace or measure', () => {
    const seen = visibleTo(buildPlanSchema, samplePlan(), 'customer');
    expect(seen?.job?.title).toBe('Side-well board with one amplifier');
    expect(seen?.vehicle?.cautions).toEqual(['Curtain airbags run along both roof rails.']);
    expect(seen?.findings).toBeUndefined();
    expect(seen?.traces).toBeUndefined();
    expect(JSON.stringify(seen)).not.toContain('main-fuse');
  });

  it('tells the bench all of a plan: a plan holds nothing that only the shop may see', () => {
    expect(visibleTo(buildPlanSchema, samplePlan(), 'bench')).toEqual(samplePlan());
  });
});
