import { expect, test } from 'vitest';
import { traced } from '../../lib/model/trace.ts';
import { PlanBook } from '../../lib/plan/plan-book.ts';

const lengthM = (value: number) =>
  traced(value, 'm', { rule: 'given', formula: 'as written', citation: 'the job' });

test('a book that takes over another holds what both hold, its own remarks first, and the other stays as it is', () => {
  const [own, other] = [new PlanBook(), new PlanBook()];
  const remark = {
    rule: 'conductor-no-reel',
    level: 'stop',
    message: 'none',
    of: ['a'],
    remedy: 'buy',
  } as const;
  own.trace('wires.a.lengthM', lengthM(1));
  own.remark(remark, { path: '/links/a' });
  other.trace('wires.b.lengthM', lengthM(2));
  other.trace('wires.a.lengthM', lengthM(3));
  other.remark({ ...remark, of: ['b'] }, { path: '/links/b' });
  const before = structuredClone([other.traces(), other.remarks()]);
  own.adopt(other.notes());
  expect(own.traces()).toEqual({
    'wires.a.lengthM': lengthM(3).trace,
    'wires.b.lengthM': lengthM(2).trace,
  });
  expect(own.remarks().map(({ path }) => path)).toEqual(['/links/a', '/links/b']);
  own.remark(remark, { path: '/links/c' });
  expect([other.traces(), other.remarks()]).toEqual(before);
});
