import type { WrittenMeasure } from '../../model/content/resolved-job.ts';
import { pointerToken } from '../../model/place.ts';
import { isMeasure } from '../../model/quantity/quantity.ts';

/** The measures that stand at a JSON Pointer (RFC 6901) of plain data or below it, in their order. */
export function measuresAt(data: unknown, path: string): readonly WrittenMeasure[] {
  const keys = path
    .split('/')
    .slice(1)
    .map((token) => token.replaceAll('~1', '/').replaceAll('~0', '~'));
  return textsIn(keys.reduce(entryOf, data), path).filter(({ text }) => isMeasure(text));
}

function entryOf(node: unknown, key: string): unknown {
  if (typeof node !== 'object' || node === null || !Object.hasOwn(node, key)) return undefined;
  const found: unknown = Reflect.get(node, key);
  return found;
}

function textsIn(node: unknown, path: string): readonly WrittenMeasure[] {
  if (typeof node === 'string') return [{ text: node, path }];
  if (typeof node !== 'object' || node === null) return [];
  return Object.entries(node).flatMap(([key, below]) => textsIn(below, `${path}${pointerToken(key)}`));
}
