import fc from 'fast-check';
import { expect, it } from 'vitest';
import { boardArea } from '../../../lib/board/area-and-mass.ts';
import { cutName, drawOutline } from '../../../lib/board/shape/outline.ts';
import { outlineFaults } from '../../../lib/board/shape/outline-faults.ts';
import { narrowestWeb } from '../../../lib/board/shape/web.ts';
import { cornerNames, edgeNames, holePurposes } from '../../../lib/model/outline.ts';
import { inWords } from '../in-words.ts';
import { mm, written } from '../shapes.ts';
import { usualWebs } from '../usual-board.ts';

const size = fc.integer({ min: -20, max: 700 }).map(mm);
const corner = fc.oneof(fc.constantFrom(...cornerNames), fc.integer({ min: 1, max: 6 }));
const edge = fc.oneof(fc.constantFrom(...edgeNames), fc.integer({ min: 1, max: 6 }));
const from = fc.constantFrom(...cornerNames);
const cut = fc.oneof(
  fc.record({ cut: fc.constant('corner'), corner, dx: size, dy: size }),
  fc.record({ cut: fc.constant('corner'), corner, radius: size }),
  fc.record({ cut: fc.constant('notch'), edge, offset: size, width: size, depth: size }),
  fc.record({ cut: fc.constant('step'), corner, dx: size, dy: size }),
  fc.record({ cut: fc.constant('slot'), from, x: size, y: size, length: size, width: size }),
  fc.record({ cut: fc.constant('window'), from, x: size, y: size, width: size, height: size }),
  fc.record({ cut: fc.constant('arc-corner'), radius: size }),
  fc.record({
    cut: fc.constant('hole'),
    from,
    x: size,
    y: size,
    diameter: size,
    purpose: fc.constantFrom(...holePurposes),
  }),
);
const point = fc.tuple(size, size);
const base = fc.oneof(
  fc.record({ rectangle: fc.record({ width: size, height: size }) }),
  fc.record({ polygon: fc.array(point, { minLength: 3, maxLength: 6 }) }),
);

it('any outline gives a board of finite area within its base, or says why not: no throw, nothing silent', () => {
  let drawn = 0;
  fc.assert(
    fc.property(base, fc.array(cut, { maxLength: 5 }), (shape, cuts) => {
      const outline = written({ ...shape, cuts });
      const { shape: board, faults } = drawOutline(outline);
      if (!board) {
        expect(faults.length).toBeGreaterThan(0);
        return;
      }
      drawn += 1;
      const whole = drawOutline({ ...outline, cuts: [] }).shape;
      const area = boardArea(board).value;
      expect(area).toBeGreaterThan(0);
      expect(area).toBeLessThanOrEqual((whole ? boardArea(whole).value : 0) + 1e-7);
      expect(narrowestWeb(board).value).toBeGreaterThanOrEqual(0);
      const names = (outline.cuts ?? []).map(cutName);
      for (const fault of faults) for (const of of fault.of) expect(names).toContain(of);
      for (const { message, value } of [...faults, ...outlineFaults(board, usualWebs, null)]) {
        expect(inWords(message)).not.toMatch(/NaN|Infinity|undefined/);
        expect(Number.isFinite(value ?? 0)).toBe(true);
      }
    }),
    { numRuns: 400, seed: 15 },
  );
  expect(drawn).toBeGreaterThan(100);
});
