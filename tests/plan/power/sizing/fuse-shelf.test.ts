import { expect, test } from 'vitest';
import { houseRuleDefinition } from '../../../../lib/model/house-rules.ts';
import { fuseShelf, usualInterruptA } from '../../../../lib/plan/power/sizing/fuse-shelf.ts';
import { piecesOf } from '../../../../lib/shelf/shelf-lengths.ts';
import { usualHouseRules } from '../../../power/usual-rules.ts';
import { jobOf } from '../../../rules/case.ts';
import { type Written, written } from '../../../rules/content.ts';

function shelfOf(change: (content: Written) => void) {
  const content = written();
  change(content);
  const { parts, shop } = jobOf(content);
  return fuseShelf(parts, shop, usualHouseRules);
}

test('what is counted by the piece counts, and nothing else is on the shelf', () => {
  expect(piecesOf({ pieces: 3, 'off-cuts': {} })).toBe(3);
  expect(piecesOf({ pieces: 0, 'off-cuts': {} })).toBe(0);
  expect(piecesOf(undefined)).toBe(0);
  expect(piecesOf({ reels: [], 'off-cuts': {} })).toBe(0);
});

test('what a form interrupts is assumed by the house, and says so', () => {
  const { citation, mark } = houseRuleDefinition('interrupt-class-t');
  expect(usualInterruptA('class-t', usualHouseRules)).toMatchObject({
    value: usualHouseRules['interrupt-class-t'].value,
    trace: { origin: 'assumed', rule: 'interrupt-class-t', citation, ...(mark && { mark }) },
  });
});

const fuse = (more: object) => ({
  kind: 'fuse' as const,
  title: 'Fuse',
  form: 'maxi-blade' as const,
  rating: '50 A' as const,
  ...more,
});

test('a fuse interrupts what its maker says, or what the house assumes of its form', () => {
  const { fuses } = shelfOf(({ parts, shop }) => {
    Object.assign(parts, { silent: fuse({}), told: fuse({ interrupts: '2000 A' }) });
    shop.stock = { ...shop.stock, told: { pieces: 4 } };
  });
  expect(fuses).toContainEqual({
    part: 'silent',
    form: 'maxi-blade',
    ratingA: 50,
    quantity: 0,
    interruptA: usualHouseRules['interrupt-maxi-blade'].value,
  });
  expect(fuses).toContainEqual({
    part: 'told',
    form: 'maxi-blade',
    ratingA: 50,
    quantity: 4,
    interruptA: 2000,
  });
});

test('a holder is listed with the fuses that it takes and its place on the board; other parts are neither', () => {
  const { fuses, holders } = shelfOf(({ shop }) => {
    shop.stock = { ...shop.stock, holder: { pieces: 2 } };
  });
  // 100 mm by 100 mm, 250 A.
  expect(holders).toContainEqual({
    part: 'holder',
    form: 'large-bolt-in',
    quantity: 2,
    largestA: 250,
    boardAreaM2: expect.closeTo(0.01, 12),
  });
  const { parts } = jobOf(written());
  const ofKind = (kind: string) => Object.keys(parts).filter((id) => parts[id]?.kind === kind);
  expect(fuses.map(({ part }) => part)).toEqual(ofKind('fuse'));
  expect(holders.map(({ part }) => part)).toEqual(ofKind('fuse-holder'));
});
