import { expect, test } from 'vitest';
import type { SourceFile } from '../../../lib/model/content/source-file.ts';
import { instead, linksOf } from '../links-of.ts';
import { shop, shortText } from '../short-shop.ts';

/** A holder that is larger than the smallest one, for a form in which 70 A are made. */
const holder = `parts:
  holder-30mm:
    kind: fuse-holder
    title: Holder
    size: { width: 4 in, depth: 1 1/2 in, height: 1 1/4 in }
    mass: 0.1 kg
    terminals:
      IN: { role: feed-in, joint: set-screw, takes: { from: 8 AWG, to: 4 AWG } }
      OUT: { role: feed-out, joint: set-screw, takes: { from: 8 AWG, to: 4 AWG } }
    fuse-form: bolt-in-30mm
    current: 200 A
`;

/** The fuses without those of Class T below 80 A, a form in which a smaller one is made too. */
const withoutSmall = (text: string): string => text.replaceAll(/^ +fuse-class-t-\d\d:.*\n/gm, '');

/** The main fuse that is proposed with such fuses in the catalogue, in an engine bay so hot. */
function mainFuse(bayC: number, ...ratings: readonly number[]): string | undefined {
  const fuses = ratings.map(
    (one) =>
      `  fuse-30-${one}: { kind: fuse, title: F, form: bolt-in-30mm, rating: ${one} A, interrupts: 2 kA }\n`,
  );
  const files = shop.map(({ path, text }): SourceFile => {
    if (path.endsWith('content/shop.yaml'))
      return {
        path,
        text: instead(text, 'rules:\n', `rules:\n  fuse-margin: 180 %\n  ambient-engine-bay: ${bayC} C\n`),
      };
    if (path.endsWith('parts/fuse-holders.yaml')) return { path, text: instead(text, 'parts:\n', holder) };
    if (path.endsWith('parts/fuses.yaml'))
      return { path, text: instead(withoutSmall(text), 'parts:\n', `parts:\n${fuses.join('')}`) };
    return path.endsWith('parts/wire.yaml')
      ? { path, text: text.replaceAll('insulation: 200 C', 'insulation: 105 C') }
      : { path, text };
  });
  const { job, problems } = linksOf(shortText('one-bass-amplifier'), files);
  expect(problems).toEqual([]);
  return job?.file.devices['main-fuse']?.part;
}

// 36.3 A times 1.8 are 65.4 A: a small bolt-in fuse of 80 A, or one of 70 A in a form in which that is made. 33 CFR
// 183.425, Table 5: 4 AWG of 105 C carries 160 A at 30 C. At 88 C the square root of (105 - 88) / (105 - 30) is left of
// it, 0.476: 76 A; at 85 C 0.516: 82 A.
test('a smaller fuse in a larger holder goes before one that no conductor in its ports carries in the warmth', () => {
  expect(mainFuse(88, 70, 80)).toBe('holder-30mm');
});

test('the smallest holder stays where its fuse is carried, and where no smaller one is made', () => {
  expect(mainFuse(85, 70, 80)).toBe('holder-small-inline');
  expect(mainFuse(88, 80)).toBe('holder-small-inline');
});
