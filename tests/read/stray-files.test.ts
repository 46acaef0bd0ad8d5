import { expect, test } from 'vitest';
import { readContent } from '../../lib/read/read-content.ts';
import { smallShop } from './small-shop.ts';

const told = (path: string) => {
  const { problems } = readContent([...smallShop(), { path, text: 'rackleaf: 1\n' }]);
  return problems.map(({ where, message, expected }) => `${where.file}: ${message}: ${expected}`);
};

test.each([
  ['content/jobs/next.yml', 'content/jobs/next.yaml'],
  ['content/jobs/next.yaml.txt', 'content/jobs/next.yaml'],
  ['content/jobs/next.YAML', 'content/jobs/next.yaml'],
  ['content/Jobs/next.yaml', 'content/jobs/next.yaml'],
  ['content/parts/amps/large.yaml', 'content/parts/large.yaml'],
  ['content/guides/gain-2.MD', 'content/guides/gain-2.md'],
])('%s is told not to be read', (path, expected) => {
  expect(told(path)).toEqual([`${path}: this file is not read: ${expected}`]);
});

test.each([
  'content/jobs/demo/notes.yaml',
  'content/parts/README.md',
  'content/notes.yml',
  'content/jobs/demo/A.plan.json',
])('%s is nobody’s business', (path) => {
  expect(told(path)).toEqual([]);
});
