import { isMeasure } from '../../model/quantity/quantity.ts';

/** The measures that stand at a JSON Pointer (RFC 6901) of plain data or below it, as they are written, in their order. */
export function measuresAt(data: unknown, path: string): readonly string[] {
  const keys = path
    .split('/')
    .slice(1)
    .map((token) => token.replaceAll('~1', '/').replaceAll('~0', '~'));
  return textsIn(keys.reduce(entryOf, data)).filter(isMeasure);
}

function entryOf(node: unknown, key: string): unknown {
  if (typeof node !== 'object' || node === null || !Object.hasOwn(node, key)) return undefined;
  const found: unknown = Reflect.get(node, key);
  return found;
}

function textsIn(node: unknown): readonly string[] {
  if (typeof node === 'string') return [node];
  return typeof node === 'object' && node !== null ? Object.values(node).flatMap(textsIn) : [];
}
