import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { allFields } from '../fields/leaves.ts';
import { libModules, root } from './modules.ts';
import { fieldsRead } from './readers.ts';

/** The schemas of what a shop writes: what they list they do not read. Kinds of parts answer for theirs in their own files. */
const schemas = /^lib\/model\/content\/(job|shop|vehicle|integration)\.ts$/;

const read = new Set(
  libModules()
    .filter(({ path }) => !schemas.test(path))
    .flatMap(({ path }) => fieldsRead(path, readFileSync(join(root, path), 'utf8'))),
);

/** The name of a field by itself. */
const nameOf = (field: string): string =>
  field
    .split(/[/:]|\[\]/)
    .filter((name) => name !== '' && name !== '*')
    .at(-1) ?? '';

describe('a field that a shop writes', () => {
  // The first key of every file: the reader holds it against the one version there is.
  const checked = ['rackleaf'];
  // Told one and all by `lib/publish/site/customer-facts.ts`, whose table of names does not compile without one of them.
  const ofCustomers = ['contact', 'plate', 'vin', 'price'];

  test.each(
    [...new Set([...allFields()].map(nameOf))].filter((name) => ![...checked, ...ofCustomers].includes(name)),
  )('%s is read by something', (name) => {
    expect(read.has(name)).toBe(true);
  });

  test('is seen where it is read as a member, out of an object, or by its name in quotes', () => {
    const source =
      "a.one;\nconst { two, 'three-four': three } = b;\nconst c = d['five-six'];\nconst e = { seven: 1 };";
    expect(fieldsRead('a.ts', source).toSorted()).toEqual(['five-six', 'one', 'three-four', 'two']);
  });
});
