import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { houseRuleDefinition, houseRuleNames } from '../../lib/model/house-rules.ts';

const lib = fileURLToPath(new URL('../../lib', import.meta.url));

/** All code but the table of house rules itself. */
const code = readdirSync(lib, { recursive: true, withFileTypes: true })
  .filter((entry) => entry.isFile() && entry.name.endsWith('.ts'))
  .map(({ parentPath, name }) => join(parentPath, name))
  .filter((path) => !path.includes('house-rules/'))
  .map((path) => readFileSync(path, 'utf8'))
  .join('\n');

/** Names that are put together, such as `interrupt-${style}`: one pattern each. */
const composed = [...code.matchAll(/rules\[\s*`([^`]+)`|const rule = `([^`]+)` as const/g)].map(
  ([, inBrackets, named]) => new RegExp(`^${(inBrackets ?? named ?? '').replace(/\$\{[^}]+\}/g, '.+')}$`),
);

describe('a house rule', () => {
  it.each(houseRuleNames)('%s is read by a computation or a rule', (name) => {
    const named = code.includes(`'${name}'`) || code.includes(`rules.${name}`);
    expect(named || composed.some((pattern) => pattern.test(name))).toBe(true);
  });

  it('says where its default comes from; what has no published source is marked', () => {
    for (const name of houseRuleNames) {
      const { citation, mark } = houseRuleDefinition(name);
      expect(citation, name).not.toBe('');
      if (/common practice/.test(citation)) expect(mark, name).toBe('cp');
      if (/memory/.test(citation)) expect(mark, name).toBe('mem');
    }
  });
});
