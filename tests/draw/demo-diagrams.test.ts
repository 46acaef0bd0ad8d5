import { describe, it } from 'vitest';
import { drawJob } from '../../lib/draw/draw-job.ts';
import { expectGolden } from '../golden.ts';
import { demoJobs, demoPlan } from '../plan/demo.ts';
import { shippedMetrics } from './shipped-metrics.ts';

/** Sheets whose drawings are kept here: wiring, diagrams, panels. Those of what is cut and where it stands are kept apart. */
const sheets: readonly string[] = ['board-wiring', 'power-diagram', 'signal-diagram', 'presets'];

describe('wiring, power, signal, responses and presets', () => {
  it.each(demoJobs)('of %s keep their look', (job) => {
    const drawings = drawJob(demoPlan(job), shippedMetrics).filter(({ sheet }) => sheets.includes(sheet));
    const files = drawings.map(({ id, svg }) => [`${id}.svg`, svg]);
    expectGolden(new URL(`golden/demo-diagrams/${job}/`, import.meta.url), Object.fromEntries(files));
  });
});
