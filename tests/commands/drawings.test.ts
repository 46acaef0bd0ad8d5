import { describe, expect, it } from 'vitest';
import { jobDrawings } from '../../lib/commands/drawings.ts';
import { sheetIds } from '../../lib/publish/sheets/index.ts';
import { samplePlan } from '../publish/sample/sample-plan.ts';

describe('jobDrawings', () => {
  it('draws a plan onto sheets that exist, each drawing once', () => {
    const drawings = jobDrawings()(samplePlan());
    const known: readonly string[] = sheetIds;
    expect(drawings.filter(({ sheet }) => !known.includes(sheet))).toEqual([]);
    expect(drawings.map(({ sheet }) => sheet)).toContain('cut-and-drill');
    expect(new Set(drawings.map(({ id }) => id)).size).toBe(drawings.length);
  });
});
