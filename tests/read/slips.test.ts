import { describe, expect, test } from 'vitest';
import type { SourceFile } from '../../lib/model/content/source-file.ts';
import { readShort, shop, shortText } from '../short-jobs/short-shop.ts';

/** A slip in a file that is right: what stood there, what is written in its place, and the words that mend it. */
type Slip = readonly [right: string, slip: string, tells: string];

/** What is told of the job with a text exchanged, in the file that has it: errors alone, with what to do. */
function told(right: string, slip: string): readonly string[] {
  const job = shortText('under-seat-five');
  const within = (text: string) => text.replace(right, () => slip);
  const files: readonly SourceFile[] = shop.map(({ path, text }) => ({ path, text: within(text) }));
  const isThere = job.includes(right) || shop.some(({ text }) => text.includes(right));
  if (!isThere) throw new Error(`No file has "${right}".`);
  const { problems } = readShort(within(job), undefined, files);
  return problems.map(({ message, remedy }) => [message, remedy ?? []].flat().join('; '));
}

/** The text to write is the one that stood there: whoever writes what is told has mended it. */
const mended: readonly Slip[] = [
  ['in: cargo-floor', 'in: cargo floor', 'write cargo-floor'],
  ['in: cargo-floor', 'in: Cargo floor', 'write cargo-floor'],
  ['in: cargo-floor', 'place: cargo-floor', 'write in: cargo-floor'],
  ['in: cargo-floor', 'location: cargo-floor', 'write in: cargo-floor'],
  ['in: [left-door, right-door]', 'in: left-door, right-door', 'write in: [left-door, right-door]'],
  ['in: [left-door, right-door]', 'in: left-door and right-door', 'in: [left-door, right-door]'],
  ['in: [left-door, right-door]', 'in: left-door right-door', 'in: [left-door, right-door]'],
  ['vehicle: hatchback', 'vehicle: hatchback.yaml', 'write hatchback'],
  ['vehicle: hatchback', 'vehicle: Hatchback', 'write hatchback'],
  ['space: under-left-seat\n', 'space: under left seat\n', 'write under-left-seat'],
  ['id: under-seat-five', 'id: Under seat five', 'write under-seat-five'],
  ['issued-on: 2026-02-09', 'issued-on: 2026-2-9', '2026-02-09'],
  ['spacer: 12 mm', 'standoffs: 12 mm', 'write spacer: 12 mm'],
  ['on: board', 'on:board', 'write on: board'],
  ['mass: 2.9 kg', 'weight: 2.9 kg', 'write mass: 2.9 kg'],
  ['mass: 2.9 kg', 'mass: 2.9 kg total', 'write 2.9 kg'],
  ['most-ambient: 70 C', 'most-ambient: 158 F', 'write 70 C'],
  ['vehicle-load: 40 A', 'vehicle-load: ~40 A', 'write 40 A'],
  ['vehicle-load: 40 A', 'load: 40 A', 'write vehicle-load: 40 A'],
  ['passes: [engine-bay 6 in]', 'passes: [underhood 6 in]', 'did you mean engine-bay?'],
  ['signal-range: 0.25 V to 6 V', 'signal-range: 0.25-6 V', 'write 0.25 V to 6 V'],
  ['takes: 8 AWG to 4 AWG', 'takes: 8-4 AWG', 'write 8 AWG to 4 AWG'],
  ['size: 1/0 AWG', 'size: 1/0', 'write 1/0 AWG'],
  ['      1..4: { output: CH1..4', '      1-4: { output: CH1..4', 'write 1..4'],
  ['to: body.engine', 'to: engine', 'write body.engine'],
  ['joint: phono', 'joint: rca', 'did you mean phono?'],
  ['x: 1 in, y: 1 in', 'x: 1,5 in, y: 1 in', 'write x: 1.5 in'],
];

/** Where only who wrote it knows what was meant, the message tells the ways to write it. */
const asked: readonly Slip[] = [
  ['box: enclosure', 'plays: below 80 Hz, box: enclosure', 'write up to 80 Hz'],
  ['box: enclosure', 'plays: 20-80 Hz, box: enclosure', 'write 20 Hz to 80 Hz'],
  ['box: enclosure', 'plays: 80Hz and up, box: enclosure', 'write from 80 Hz'],
  ['box: enclosure', 'plays: sub, box: enclosure', 'such as up to 80 Hz'],
  ['box: enclosure', 'plays: full range, box: enclosure', 'write everything'],
  ['box: enclosure', 'driven-by: amp.CH5+, box: enclosure', 'write driven-by: amp; '],
  ['box: enclosure', 'driven-by: amp.CH5+, box: enclosure', 'channels: [5]'],
  ['box: enclosure', 'driven-by: amp CH1-2, box: enclosure', 'channels: [1..2]'],
  ['at: { x: 1 in, y: 1 in }', 'at: [1 in, 1 in]', 'such as { x: 1 in, y: 1 in }'],
  [
    'devices:\n',
    'links:\n  one: { from: amp.CH1, to: sub.C1, colour: [RD, BK] }\ndevices:\n',
    'write a link for each of the two',
  ],
  ['vehicle-load: 40 A', 'vehicle-load: 30-40 A', 'write the one that holds, 30 A or 40 A'],
  ['vehicle-load: 40 A', 'vehicle-load: tbd', 'what is not known yet is left out'],
  ['title: "One five', 'title: #1 "One five', 'put quotes round a text that begins with it'],
  ['reels: [', 'reel: [', 'did you mean reels?'],
];

describe('a slip of a tired person', () => {
  test.each([...mended, ...asked])('%s written as %s', (right, slip, tells) => {
    const all = told(right, slip);
    expect(all.join('\n')).toContain(tells);
  });

  test('is told nowhere in the files as they stand', () => {
    expect(told('under-seat-five', 'under-seat-five')).toEqual([]);
  });
});
