import { describe, expect, test } from 'vitest';
import { kinds } from '../../lib/model/kinds/index.ts';
import { problemText } from '../../lib/model/problem.ts';
import { demoContent, demoJobs } from '../plan/demo.ts';

const { parts, jobs, vehicles, guides, problems, shop } = demoContent();
const all = Object.entries(parts);

describe('the demo shop', () => {
  test('reads without a problem', () => {
    expect(problems.map(problemText)).toEqual([]);
    expect(jobs.map(({ id }) => id).toSorted()).toEqual([...demoJobs].toSorted());
    expect(Object.keys(vehicles).length).toBeGreaterThanOrEqual(2);
    expect(guides.length).toBeGreaterThanOrEqual(3);
  });

  test('has at least 30 parts, and some of every kind', () => {
    expect(all.length).toBeGreaterThanOrEqual(30);
    const used = new Set(all.map(([, { kind }]) => kind));
    expect(Object.keys(kinds).filter((kind) => ![...used].some((one) => one === kind))).toEqual([]);
  });

  test('has a cable of nine conductors in the usual colours, all of them told apart, and a job that uses them', () => {
    const nine = all.flatMap(([id, part]) =>
      part.kind === 'cable' && Object.keys(part.conductors).length === 9 ? [{ id, part }] : [],
    );
    for (const { id, part } of nine) {
      const colours = Object.values(part.conductors).map(({ colour }) => colour);
      // White, grey, green and violet pairs, each with its striped partner, and blue for the turn-on (common practice).
      expect(colours.toSorted(), id).toEqual([
        'BU',
        'GN',
        'GN/BK',
        'GY',
        'GY/BK',
        'VT',
        'VT/BK',
        'WH',
        'WH/BK',
      ]);
    }
    const taken = jobs.flatMap(({ links }) =>
      nine.map(({ id }) => links.flatMap(({ cable }) => (cable?.part === id ? [cable.conductor] : []))),
    );
    expect(Math.max(...taken.map((conductors) => new Set(conductors).size))).toBe(9);
  });

  test('has fuses in every form that its holders and blocks take, and lugs and ferrules for the wire it stocks', () => {
    const forms = new Set(all.flatMap(([, part]) => (part.kind === 'fuse' ? [part.form] : [])));
    const taken = all.flatMap(([, part]) => {
      if (part.kind === 'fuse-holder') return [part['fuse-form']];
      return part.kind === 'distribution'
        ? Object.values(part['fused-ways']).map((way) => way['fuse-form'])
        : [];
    });
    expect(taken.filter((form) => !forms.has(form))).toEqual([]);
    const powerWire = all.flatMap(([, part]) =>
      part.kind === 'wire' && part.for.some((role) => role === 'power' || role === 'ground')
        ? [part.size]
        : [],
    );
    for (const { label, areaMm2 } of powerWire) {
      const ends = all.filter(
        ([, part]) =>
          part.kind === 'terminal' &&
          (part.form === 'ring-lug' || part.form === 'ferrule') &&
          part.takes.from.areaMm2 <= areaMm2 &&
          part.takes.to.areaMm2 >= areaMm2,
      );
      expect(ends.length, label).toBeGreaterThan(0);
    }
  });

  test('keeps stock of what it has in its catalogue, by the piece or by the reel as it is sold', () => {
    for (const [id, stock] of Object.entries(shop?.stock ?? {})) {
      const kind = parts[id]?.kind ?? '';
      const cable = parts[id];
      const byReel =
        ['wire', 'covering'].includes(kind) ||
        (cable?.kind === 'cable' && cable['made-length'] === undefined);
      expect('reels' in stock, id).toBe(byReel);
    }
  });

  test('names no customer who could be a real one: the telephone numbers are those set aside for examples', () => {
    for (const { file } of jobs) {
      const contact = file.customer.contact?.reveal();
      // 555 0100 to 555 0199 are kept for fiction in the North American numbering plan.
      if (contact !== undefined) expect(contact).toMatch(/^555 01\d\d$/);
    }
  });
});
