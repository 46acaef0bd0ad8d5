import { describe, expect, it } from 'vitest';
import { houseRuleDefinition } from '../../lib/model/house-rules.ts';
import { zoneKindSchema } from '../../lib/model/vocabulary.ts';
import { ambientRules } from '../../lib/model/zone-ambient.ts';

// Common practice, no source (C).
const usual = {
  'engine-bay': 85,
  'near-exhaust': 125,
  cabin: 50,
  cargo: 50,
  'under-carpet': 50,
  roof: 70,
  'in-sight': 70,
  door: 70,
  'dash-top': 85,
} as const;

describe('the ambient of a zone', () => {
  it.each(Object.entries(usual))('%s: %d C', (zone, ambientC) => {
    const kind = zoneKindSchema.parse(zone);
    // Tables of house rules hold temperatures in C.
    expect(houseRuleDefinition(ambientRules[kind]).value).toBe(ambientC);
  });

  it('is at least that of the cabin everywhere', () => {
    for (const zone of zoneKindSchema.options)
      expect(houseRuleDefinition(ambientRules[zone]).value, zone).toBeGreaterThanOrEqual(usual.cabin);
  });
});
