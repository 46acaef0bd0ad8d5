import { describe, expect, it } from 'vitest';
import type { BuildPlan } from '../../../lib/model/plan/index.ts';
import { facetIds, facets, facetValues, inOrder } from '../../../lib/publish/reference/facets.ts';
import { factsOf, jobFactsSchema } from '../../../lib/publish/reference/job-facts.ts';
import { facetGroups, slugsOf } from '../../../lib/publish/reference/shop-facets.ts';
import { jobRecord } from '../../../lib/publish/site/search-fields.ts';
import { undeclaredLeaves } from '../../../lib/publish/site/visible-to.ts';
import { fixedPlan } from '../../boards/fixed-jobs.ts';
import { canary, textsIn, withCanaries } from '../packet/canaries.ts';
import { samplePlan } from '../sample/sample-plan.ts';
import { sampleJob, sampleSite, secrets } from '../sample/sample-site.ts';

const inch = { units: 'inch', fraction: 16 } as const;

describe('what a job is browsed by', () => {
  it('is told of the van as its file and its boards have it', () => {
    const values = facetValues(factsOf(fixedPlan('van-three-amps'), 'bench'), inch);
    expect(values.vehicle).toEqual(['Panel van, long body, steel bulkhead']);
    expect(values.space).toEqual(['Cargo side of the bulkhead']);
    expect(values.part).toContain('Six-channel amplifier, 6 x 50 W');
    // Its battery, its alternator and its radio came with it.
    expect(values.part.filter((part) => /Alternator|Flooded|Source unit/.test(part))).toEqual([]);
    expect(values.channels).toEqual(['9 channels']);
    expect(values['wire-size'][0]).toBe('1/0 AWG');
    expect(values['wire-size']).toContain('16 AWG');
    expect(values['fuse-form']).toContain('Large bolt-in');
    expect(values.fabricator).toEqual(['P. T.']);
    expect(values.year).toEqual(['2026']);
    expect(values.outline).toHaveLength(1);
  });

  it('is of each facet something, each once and in order', () => {
    const values = facetValues(factsOf(samplePlan(), 'bench'), inch);
    for (const id of facetIds) {
      expect(values[id].length, id).toBeGreaterThan(0);
      expect(values[id]).toEqual([...new Set(values[id])].sort(inOrder));
      expect(facets[id].title).not.toBe('');
    }
  });

  it('has sizes above 1 AWG first, and numbers by their value', () => {
    expect(['8 AWG', '1/0 AWG', '16 AWG', '4/0 AWG', '4 AWG'].sort(inOrder)).toEqual([
      '4/0 AWG',
      '1/0 AWG',
      '4 AWG',
      '8 AWG',
      '16 AWG',
    ]);
    expect(['10 channels', '9 channels'].sort(inOrder)).toEqual(['9 channels', '10 channels']);
  });

  it('is nothing of a plan without boards, wires or amplifiers, and no empty value', () => {
    const bare: BuildPlan = {
      ...samplePlan(),
      boards: [],
      wires: [],
      audio: { ...samplePlan().audio, channels: [] },
      job: { ...samplePlan().job, fabricator: ' ' },
    };
    const values = facetValues(factsOf(bare, 'bench'), inch);
    for (const id of [
      'space',
      'sheet',
      'outline',
      'board-size',
      'wire-size',
      'channels',
      'fabricator',
    ] as const)
      expect(values[id], id).toEqual([]);
  });
});

describe('who may know it', () => {
  it('is declared for every leaf', () => {
    expect(undeclaredLeaves(jobFactsSchema)).toEqual([]);
  });

  it('is the audience of each field: nothing that is for builders alone is found by who is none', () => {
    const plan = withCanaries(fixedPlan('estate-side-well'));
    const told = (audience: 'bench' | 'customer'): string[] => {
      const facts = factsOf(plan, audience);
      return textsIn([facetValues(facts, inch), jobRecord(facts, inch, null)]);
    };
    expect(told('bench').join()).toContain(canary);
    expect(told('customer').filter((text) => text.includes(canary))).toEqual([]);
    expect(facetValues(factsOf(plan, 'customer'), inch).fabricator).toEqual([]);
    expect(facetValues(factsOf(plan, 'customer'), inch).vehicle).not.toEqual([]);
  });

  it('is nobody for what is private: it stands beside the plan, never in it', () => {
    const site = sampleSite([sampleJob()]);
    for (const audience of ['bench', 'shop'] as const) {
      const told = textsIn(
        Object.values(facetGroups(site, audience)).flatMap((groups) =>
          groups.map(({ value, slug }) => [value, slug]),
        ),
      ).join();
      for (const secret of Object.values(secrets)) expect(told).not.toContain(secret);
    }
  });
});

describe('addresses of values', () => {
  it('are made of their letters and digits, and each has its own', () => {
    const slugs = slugsOf(['1/0 AWG', '10 AWG', 'Coupé', 'A b', 'A-b', '木', `${'long '.repeat(30)}`]);
    expect(slugs.get('1/0 AWG')).toBe('1-0-awg');
    expect(slugs.get('10 AWG')).toBe('10-awg');
    expect(slugs.get('Coupé')).toBe('coupe');
    expect(new Set(slugs.values()).size).toBe(slugs.size);
    for (const slug of slugs.values()) expect(slug).toMatch(/^[a-z0-9-]{1,70}$/);
  });
});
