import { expect, test } from 'vitest';
import { judge } from '../../../lib/rules/index.ts';
import { planKept } from '../../plan/plan-kept.ts';
import { jobOf } from '../../plan/plan-small-shop.ts';
import { inJob, partsFile, vehicleFile } from '../../read/problem-case.ts';
import { type Change, smallShop } from '../../read/small-shop.ts';

const inSun: readonly Change[] = [
  [vehicleFile, 'boot: { title: Boot, zone: cargo', 'boot: { title: Boot, zone: dash-top'],
  inJob('length: 3 ft }', 'length: 3 ft, colour: WH }'),
];
const reel = (insulation: string, use = 'speaker'): Change => [
  partsFile,
  '  loom-a:',
  `  red-12: { kind: wire, title: Red, size: 12 AWG, insulation: ${insulation}, colour: RD, for: [${use}] }\n  loom-a:`,
];
const remedyOf = (...changes: readonly Change[]) => {
  const job = jobOf(smallShop(...changes));
  const { plan, remarks } = planKept(job);
  return judge(job, plan, remarks).find(
    ({ rule, related }) => rule === 'insulation-at-ambient' && related.includes('speaker.+'),
  )?.remedy;
};

// 33 CFR 183.425, Table 5: insulation for 80 C is for less than the 85 C that the house counts on top of a dash.
test('a speaker wire in the sun is told the reel that would do, and the line that takes it', () => {
  expect(remedyOf(...inSun, reel('105 C'))).toMatch(
    /^red-12 would do: write wire: red-12 under links: speaker-plus: \{ from: \S+, to: \S+, wire: red-12 \}, in place of speaker/,
  );
  expect(remedyOf(...inSun, reel('80 C'))).not.toContain('red-12');
});

test('reels of about its size that are kept for other wires are told where none for speakers lasts', () => {
  expect(remedyOf(...inSun, reel('105 C', 'turn-on'))).toMatch(
    /^red-12 and \S+ would do: write wire: \S+ under links: speaker-plus: /,
  );
});
