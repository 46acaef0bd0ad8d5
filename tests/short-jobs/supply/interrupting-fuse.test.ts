import { expect, test } from 'vitest';
import type { SourceFile } from '../../../lib/model/content/source-file.ts';
import { planKept } from '../../plan/plan-kept.ts';
import { linksOf } from '../links-of.ts';
import { shop, shortText } from '../short-shop.ts';

/** The shop without what makers of batteries state of a short, and with more on its shelf. */
function unstated(...stock: readonly string[]): readonly SourceFile[] {
  const shelf = `stock:\n${stock.map((line) => `  ${line}\n`).join('')}`;
  return shop.map(({ path, text }) => {
    if (path.endsWith('parts/batteries.yaml'))
      return { path, text: text.replaceAll(/^ +short-circuit:.*\n/gm, '') };
    return path.endsWith('shop.yaml') ? { path, text: text.replace('stock:\n', shelf) } : { path, text };
  });
}

function planned(files: readonly SourceFile[]) {
  const { job, problems } = linksOf(shortText('one-bass-amplifier'), files);
  expect(problems).toEqual([]);
  if (!job) throw new Error('The job is read.');
  const { plan } = planKept(job);
  const fuse = plan.power.fuses.find(({ item }) => item === 'main-fuse');
  const toBuy = plan.pick.filter(({ part }) => part === 'fuse-and-holder-for-main-fuse');
  return { holder: job.file.devices['main-fuse']?.part, fuse, toBuy };
}

// Common practice, no source: a flooded battery has 4.5 mohm into a short at the least, and 14.8 V over it drive 3.3 kA.
// A small bolt-in fuse of the catalogue interrupts 2 kA, one of Class T 20 kA.
test('a fuse of the shelf that interrupts the short goes before a smaller one that does not', () => {
  const { holder, fuse, toBuy } = planned(
    unstated('holder-class-t: { pieces: 1 }', 'fuse-class-t-50: { pieces: 2 }'),
  );
  expect(holder).toBe('holder-class-t');
  expect(fuse).toMatchObject({ part: 'fuse-class-t-50', ratingA: 50, interruptA: 20_000 });
  expect(fuse?.needsInterruptA).toBeGreaterThan(2000);
  expect(toBuy).toEqual([]);
});

test('where the shelf has the holder and no fuse of a rating near the need, what to buy is on the pick list', () => {
  const { holder, fuse, toBuy } = planned(
    unstated('holder-class-t: { pieces: 1 }', 'fuse-class-t-300: { pieces: 2 }'),
  );
  expect(holder).toBe('holder-small-inline');
  expect(fuse?.interruptA).toBe(2000);
  expect(toBuy).toEqual([
    expect.objectContaining({
      title: expect.stringMatching(/^Fuse of about 50 A that interrupts 3\d{3} A or more, with its holder/),
      short: 1,
    }),
  ]);
});

test('a battery whose maker states less than a small fuse interrupts asks for nothing else', () => {
  const { job } = linksOf(shortText('one-bass-amplifier'));
  expect(job?.file.devices['main-fuse']?.part).toBe('holder-small-inline');
});
