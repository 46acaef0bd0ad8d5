import { describe, expect, it } from 'vitest';
import type { BuildPlan } from '../../../lib/model/plan/index.ts';
import {
  conductorAlternatives,
  fuseAlternatives,
  fusesLacking,
} from '../../../lib/publish/sheets/alternatives.ts';
import type { Table } from '../../../lib/publish/sheets/table.ts';
import { namesOf } from '../../../lib/publish/words/plan-names.ts';
import { writerFor } from '../../../lib/publish/words/written.ts';
import { smallPlan } from '../../plan/plan-small-shop.ts';
import { inJob, partsFile } from '../../read/problem-case.ts';
import type { Change } from '../../read/small-shop.ts';

const inShop = (found: string, instead: string): Change => ['content/shop.yaml', found, instead];
/** No bolt-in fuse on the shelf; a maxi blade that interrupts enough, and its holder of 60 by 30 mm. */
const bare: readonly Change[] = [
  inShop('  large-60: { pieces: 2 }\n', '  maxi-60: { pieces: 3 }\n'),
  inShop('  large-80: { pieces: 2 }\n', '  maxi-holder: { pieces: 1 }\n'),
  [
    partsFile,
    '  bolt-a:',
    `  maxi-60: { kind: fuse, title: "60 A", form: maxi-blade, rating: 60 A, interrupts: 10 kA }
  maxi-holder:
    kind: fuse-holder
    title: Holder
    size: { width: 60 mm, depth: 30 mm, height: 30 mm }
    mass: 0.1 kg
    fuse-form: maxi-blade
    current: 80 A
    terminals: { IN: { role: feed-in }, OUT: { role: feed-out } }
  bolt-a:`,
  ],
];

const rowsOf = (table: Table | null): string[][] =>
  (table?.rows ?? []).map(({ cells }) => cells.map(({ text, beside }) => `${text} ${beside ?? ''}`.trim()));
const printed = (plan: BuildPlan): string[][] => rowsOf(fuseAlternatives('', fusesLacking(plan)));

describe('where the shelf lacks a fuse', () => {
  const { plan } = smallPlan(...bare);

  it('its lawful alternatives stand side by side: form, rating, parts to add, board area, stock', () => {
    expect(fusesLacking(plan).map(({ id }) => id)).toEqual(['main-fuse']);
    // 60 mm by 30 mm is 18 square centimetres.
    expect(printed(plan)).toContainEqual([
      'main-fuse',
      'Maxi blade',
      '60 A',
      'maxi-holder',
      '18 cm²',
      '3',
      'keeps the margin on the rated current',
    ]);
  });

  it('a form without a holder in the catalogue says so', () => {
    expect(printed(plan).find(([, form]) => form === 'Class T')?.[3]).toMatch(/none in the catalogue/);
  });

  it('the fuse is on the pick list, to be bought, though the catalogue does not know it', () => {
    expect(plan.pick.filter(({ kind }) => kind === 'fuse')).toEqual([
      expect.objectContaining({ part: 'fuse-large-bolt-in-50', quantity: 1, stockQuantity: 0, short: 1 }),
    ]);
  });
});

it('a fuse that lies on the shelf has no alternatives printed on the diagram', () => {
  expect(printed(smallPlan().plan)).toEqual([]);
});

describe('where a given conductor does not carry its fuse', () => {
  const fuse = inJob(
    'main-fuse: { part: holder-a, in: bay }',
    'main-fuse: { part: holder-a, in: bay, fuse: 80 A }',
  );
  const { plan } = smallPlan(fuse, inJob('to: amp.B+ }', 'to: amp.B+, size: 8 AWG }'));

  it('the cables that would be lawful are printed with what they carry and what is in stock', () => {
    const rows = rowsOf(conductorAlternatives(plan, namesOf(plan), writerFor(plan.shop)));
    // 33 CFR 183.425, Table 5: 4 AWG at 105 C carries 160 A, times 0.85 in an engine space.
    expect(rows).toEqual([
      [expect.stringMatching(/8 AWG$/), '4 AWG red-4', '136 A', '30 ft', 'carries its fuse of 80 A'],
    ]);
  });
});
