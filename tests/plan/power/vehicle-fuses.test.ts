import { describe, expect, test } from 'vitest';
import { judge } from '../../../lib/rules/index.ts';
import { inJob, vehicleFile } from '../../read/problem-case.ts';
import { type Change, smallShop } from '../../read/small-shop.ts';
import { planKept } from '../plan-kept.ts';
import { byId, jobOf } from '../plan-small-shop.ts';

/** The small shop's amplifier fed from a panel that the vehicle came with. */
function fromPanel(fuses: string) {
  const changes: Change[] = [
    [vehicleFile, '  radio:\n', `  panel: { part: block-a, zone: cabin${fuses} }\n  radio:\n`],
    [
      vehicleFile,
      '  charge: {',
      '  panel-feed: { from: battery.POS, to: panel.IN, size: 4 AWG, length: 1 m }\n  charge: {',
    ],
    inJob('  feed: { from: main-fuse.OUT, to: amp.B+ }\n', '  feed: { from: panel.OUT1, to: amp.B+ }\n'),
    inJob('  tail: { from: battery.POS, to: main-fuse.IN, length: 6 in }\n', ''),
    inJob('  main-fuse: { part: holder-a, in: bay }\n', ''),
  ];
  const job = jobOf(smallShop(...changes));
  const { plan, remarks } = planKept(job);
  const found = judge(job, plan, remarks).filter(({ rule }) => rule === 'vehicle-fuse-unknown');
  return { fuse: byId(plan.power.fuses, 'panel.OUT1'), feed: byId(plan.power.conductors, 'feed'), found };
}

describe("a fuse of the vehicle's own", () => {
  test('that nobody read off is never guessed: a stop that names it and what hangs behind it', () => {
    const { fuse, found } = fromPanel('');
    expect(fuse.ratingA).toBeNull();
    expect(found).toEqual([expect.objectContaining({ level: 'stop', related: ['panel.OUT1', 'feed'] })]);
  });

  test('that was read off protects what hangs behind it', () => {
    const { fuse, feed, found } = fromPanel(', fuses: { OUT1: 60 A }');
    expect(fuse).toMatchObject({ ratingA: 60, protects: ['feed'] });
    expect(feed).toMatchObject({ neededA: 60, fuses: ['panel.OUT1'] });
    expect(feed.ampacityA).toBeGreaterThanOrEqual(60);
    expect(found).toEqual([]);
  });

  test('that nobody read off stops the job where only a turn-on wire hangs behind it', () => {
    const changes: Change[] = [
      [vehicleFile, '  radio:\n', '  panel: { part: block-a, zone: cabin }\n  radio:\n'],
      [
        vehicleFile,
        '  charge: {',
        '  panel-feed: { from: battery.POS, to: panel.IN, size: 4 AWG, length: 1 m }\n  charge: {',
      ],
      inJob('  turn-on: { from: radio.REM,', '  turn-on: { from: panel.OUT1,'),
    ];
    const job = jobOf(smallShop(...changes));
    const { plan, remarks } = planKept(job);
    expect(judge(job, plan, remarks).filter(({ rule }) => rule === 'vehicle-fuse-unknown')).toEqual([
      expect.objectContaining({ level: 'stop', related: ['panel.OUT1', 'turn-on'] }),
    ]);
  });
});
