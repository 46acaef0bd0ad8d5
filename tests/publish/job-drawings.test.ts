import { describe, expect, it } from 'vitest';
import { openJobDrawings } from '../../lib/publish/job-drawings.ts';
import { sheetIds } from '../../lib/publish/sheets/index.ts';
import { samplePlan } from './sample-plan.ts';

describe('openJobDrawings', () => {
  it('draws a plan onto sheets that exist, each drawing once', async () => {
    const drawings = (await openJobDrawings())(samplePlan());
    const known: readonly string[] = sheetIds;
    expect(drawings.filter(({ sheet }) => !known.includes(sheet))).toEqual([]);
    expect(drawings.map(({ sheet }) => sheet)).toContain('cut-and-drill');
    expect(new Set(drawings.map(({ id }) => id)).size).toBe(drawings.length);
  });
});
