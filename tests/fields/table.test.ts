import { describe, expect, test } from 'vitest';
import { isFindingId } from '../../lib/model/findings/index.ts';
import { casesOf, isDrawn } from '../long-run.ts';
import { allFields, fieldOf } from './leaves.ts';
import { editsOf, type Row, spotOf } from './row.ts';
import { rows } from './rows/index.ts';
import { isAtSlip, isToldFor, outcomeOf, toldOf } from './run-row.ts';
import { dataAfter, jobSheets } from './shop.ts';

/** The field that a row is of. */
function rowField([at, , , , more]: Row): string {
  const { sheet, keys } = spotOf(at);
  return fieldOf(sheet, keys, dataAfter(sheet, editsOf(more?.scene)));
}

describe('the table', () => {
  const written = rows.map(rowField);
  const all = allFields();
  test('has a row for every field', () => {
    const without = [...all].filter((field) => !written.includes(field));
    expect(without.toSorted()).toEqual([]);
  });
  test('has no row for a field that is not there', () => {
    expect(written.filter((field) => !all.has(field))).toEqual([]);
  });
});

test.each(jobSheets)('the job %s reads without an error and has nothing that stops it', (job) => {
  const { problems, findings } = toldOf(job, []);
  expect(problems.map(({ message }) => message)).toEqual([]);
  const stops = findings.filter(({ level }) => level === 'stop');
  expect(stops.map(({ rule, message }) => `${rule}: ${message}`)).toEqual([]);
});

function expectTold(row: Row): void {
  const [at, , , told] = row;
  const { before, problems, findings } = outcomeOf(row);
  expect(before.problems.map(({ message }) => message)).toEqual([]);
  const all = [...problems, ...findings].map(
    (one) => `${'rule' in one ? one.rule : one.where.path}: ${one.message}`,
  );
  if (told instanceof RegExp) {
    const own = problems.filter((one) => isAtSlip(one, at) && told.test(one.message));
    expect(own.length, all.join('\n')).toBeGreaterThan(0);
  } else if (typeof told === 'string') {
    expect(isFindingId(told)).toBe(true);
    const own = findings.filter((one) => one.rule === told && isToldFor(one, at));
    expect(own.length, all.join('\n')).toBeGreaterThan(0);
  } else expect(all).toEqual([]);
}

// Each slip is read, planned and judged alone; the short run tries a sample.
const tried = casesOf(rows, (_, index) => isDrawn(index, { oneIn: 30 }));
describe(`a slip is told where it was made, ${tried.length} of ${rows.length}`, () => {
  test.each(tried.map((row) => ({ name: `${row[0]}: ${row[1]}`, row })))('$name', ({ row }) =>
    expectTold(row),
  );
});
