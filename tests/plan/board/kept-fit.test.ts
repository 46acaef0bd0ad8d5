import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { keeperOf } from '../../../lib/kept/keeper.ts';
import { openStore } from '../../../lib/kept/store.ts';
import { planJob } from '../../../lib/plan/plan-job.ts';
import { inJob, withBoard } from '../../read/problem-case.ts';
import { type Change, smallShop } from '../../read/small-shop.ts';
import { jobOf } from '../plan-small-shop.ts';
import { inVehicle } from '../shop-changes.ts';

const inShop = (rules: string): Change => ['content/shop.yaml', '# House', `rules: { ${rules} }\n# House`];
const ampAt = (at: string): Change =>
  inJob('title: Bass amplifier\n    in: boot', `title: Bass amplifier\n    on: main\n    at: ${at}`);
const amp = ampAt('{ x: 100 mm, y: 50 mm }');
const hinge = inVehicle(
  '    depth: 200 mm\n',
  '    depth: 200 mm\n    obstacles: { hinge: { what: seat hinge, x: 300 mm, y: 100 mm, width: 50 mm, height: 50 mm, stands-out: 100 mm } }\n',
);

describe('how a board fits, with results kept', () => {
  const folder = mkdtempSync(join(tmpdir(), 'kept-board-'));
  afterAll(() => rmSync(folder, { recursive: true }));
  const { keep } = keeperOf(openStore(folder), 'code');

  it.each<[string, readonly Change[]]>([
    ['as it stands', [amp]],
    ['with another length of a lead, which it does not read', [amp, inJob('length: 3 ft', 'length: 4 ft')]],
    ['with a part elsewhere', [ampAt('{ x: 120 mm, y: 50 mm }')]],
    ['with a part over its edge', [ampAt('{ x: 450 mm, y: 50 mm }')]],
    ['in a space that is not as deep', [amp, inVehicle('depth: 200 mm', 'depth: 60 mm')]],
    ['beside an obstacle', [amp, hinge]],
    ['with more room asked for round it', [amp, hinge, inShop('space-clearance: 2 in')]],
    ['with more room asked for between parts', [amp, inShop('gap-parts: 2 in')]],
    ['as it stood first', [amp]],
  ])('%s: the same as from cold', (_, changes) => {
    const job = jobOf(smallShop(withBoard(), ...changes));
    expect(planJob(job, keep)).toEqual(planJob(job));
  });
});
