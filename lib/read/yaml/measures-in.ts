import {
  measuresByHead,
  type WrittenMeasure,
  type WrittenMeasures,
} from '../../model/content/written-measures.ts';
import { pointerToken } from '../../model/place.ts';
import { isMeasure } from '../../model/quantity/quantity.ts';

/** Every measure of the plain data of a file, with its JSON Pointer (RFC 6901). */
export function measuresIn(data: unknown): WrittenMeasures {
  return measuresByHead(textsIn(data, '').filter(({ text }) => isMeasure(text)));
}

function textsIn(node: unknown, path: string): readonly WrittenMeasure[] {
  if (typeof node === 'string') return [{ text: node, path }];
  if (typeof node !== 'object' || node === null) return [];
  return Object.entries(node).flatMap(([key, below]) => textsIn(below, `${path}${pointerToken(key)}`));
}
