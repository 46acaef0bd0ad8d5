import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { keeperOf } from '../../lib/kept/keeper.ts';
import { openStore } from '../../lib/kept/store.ts';
import { computeAnew, type Keep, type Step } from '../../lib/model/keep.ts';
import { planJob } from '../../lib/plan/plan-job.ts';
import { inJob } from '../read/problem-case.ts';
import { type Change, smallShop } from '../read/small-shop.ts';
import { jobOf } from './plan-small-shop.ts';
import { onFourPoints, stocked } from './power/four-points.ts';
import { addParts, inParts, inShop, inVehicle } from './shop-changes.ts';

const folder = mkdtempSync(join(tmpdir(), 'kept-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const { keep } = keeperOf(openStore(folder), 'code');

/** The same keeping, with a note of each step whose result was not kept yet. */
function noted(made: string[]): Keep {
  const own: Keep = <I, O>(step: Step<I, O>, input: I): O =>
    keep(
      {
        id: step.id,
        compute: (given: I) => {
          made.push(step.id);
          return step.compute(given, own);
        },
      },
      input,
    );
  return own;
}

const place = '\n    at: { x: 200 mm, y: 110 mm }';
const openBoard = [
  ...stocked({ id: 'ply-12', mm: 12, pieces: 1 }),
  ...onFourPoints(['sheet: ply-12']),
  inJob(place, ''),
];

/** The job of the small shop on a board that leaves its place open, with changes made to its files. */
const changed = (...changes: readonly Change[]) => jobOf(smallShop(...openBoard, ...changes));

/** What is made of it with what is kept, and which steps that took anew; it is what is made of it with nothing kept. */
function planned(...changes: readonly Change[]): readonly string[] {
  const made: string[] = [];
  expect(planJob(changed(...changes), noted(made))).toEqual(planJob(changed(...changes), computeAnew));
  return made;
}

const rules = (text: string) => inShop('# House rules keep their defaults.', `rules: { ${text} }`);

describe('a plan made with what is kept is the same as one made anew', () => {
  test('and from nothing kept everything is made', () => {
    expect(planned()).toEqual(
      expect.arrayContaining(['plan-body', 'settled', 'room', 'layout', 'proposals', 'routing']),
    );
    expect(planned()).toEqual([]);
  });

  test.each<readonly [string, Change]>([
    ['what a device is called', inJob('Bass amplifier', 'Amplifier for bass')],
    ['a filter', inJob('corner: 80 Hz', 'corner: 70 Hz')],
    [
      'a filter more',
      inJob('    settings:', '    equalising: { CH1: [{ centre: 50 Hz, gain: 3 dB }] }\n    settings:'),
    ],
    ['the gains of all channels', rules('gain-overlap: 4 dB')],
    ['the air that sound goes through', rules('air-temperature: 30 C')],
    ['a knob', inJob('GAIN: fully down', 'GAIN: a quarter up')],
    [
      'what stands before it',
      inJob('    settings:', '    after: { feed: it stands over it }\n    settings:'),
    ],
    ['the load that a channel is to see', inJob('    settings:', '    loads: { "1": 4 ohm }\n    settings:')],
    ['a speaker mounted back to front', inJob('woofer-a, in: boot', 'woofer-a, in: boot, mounted: reversed')],
    ['a reading in the vehicle', inJob('\nnotes:', '\nas-built: { battery-rest: 12.7 V }\nnotes:')],
  ])('after %s is another, which settles nothing anew', (_, change) => {
    expect(planned(change)).toEqual(['plan-body']);
  });

  test.each<readonly [string, Change]>([
    ['the length of a ground lead', inJob('body.cargo, length: 12 in', 'body.cargo, length: 11 in')],
    ['the colour of a wire', inJob('length: 3 ft }', 'length: 3 ft, colour: WH }')],
    ['what a speaker lead may lose', rules('speaker-loss: 0.4 dB')],
    ['what a fuse leaves over', rules('fuse-margin: 130 %')],
    ['a route of the vehicle', inVehicle('length: 3 m }]\n    reaches', 'length: 2 m }]\n    reaches')],
    ['what is in stock', inShop('red-4: { reels: [30 ft] }', 'red-4: { reels: [29 ft] }')],
    [
      'a fuse more in the catalogue',
      addParts('large-70: { kind: fuse, title: "70 A", form: large-bolt-in, rating: 70 A }'),
    ],
  ])('after %s is another, which is settled anew and looks for no room', (_, change) => {
    const made = planned(change);
    expect(made).toContain('settled');
    expect(made).not.toContain('room');
  });

  test.each<readonly [string, Change]>([
    ['the step that places are looked for by', rules('layout-step: 12 mm')],
    [
      'the size of a part',
      inParts(
        'kind: amplifier\n    title: Amplifier\n    size: { width: 100 mm',
        'kind: amplifier\n    title: Amplifier\n    size: { width: 110 mm',
      ),
    ],
    ['the outline of the board', inJob('width: 500 mm', 'width: 510 mm')],
    ['how far a part is raised', inJob('    settings:', '    raised: 20 mm\n    settings:')],
    ['a point that it is fixed to', inVehicle('p4: { x: 450 mm', 'p4: { x: 440 mm')],
  ])('after %s is another, room for what stands on the board is looked for anew', (_, change) => {
    expect(planned(change)).toEqual(expect.arrayContaining(['settled', 'room']));
  });

  test('where a place is given by hand no room is looked for', () => {
    const made: string[] = [];
    const job = jobOf(smallShop(...openBoard.slice(0, -1)));
    expect(planJob(job, noted(made))).toEqual(planJob(job, computeAnew));
    expect(made).toContain('settled');
    expect(made).not.toContain('room');
  });
});
