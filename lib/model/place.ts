import { z } from 'zod';
import { builders } from './audience.ts';

/** Where in a file a value stands. Line and column count from 1; the path is a JSON Pointer (RFC 6901). */
export const placeSchema = z.object({
  file: builders(z.string()),
  line: builders(z.int().positive()),
  column: builders(z.int().positive()),
  path: builders(z.string()),
});
export type Place = z.infer<typeof placeSchema>;

/** One token of a JSON Pointer, escaped after RFC 6901. */
export function pointerToken(key: string | number): string {
  return `/${String(key).replaceAll('~', '~0').replaceAll('/', '~1')}`;
}

/** The JSON Pointer of a list of keys. */
export function pointer(keys: readonly (string | number)[]): string {
  return keys.map(pointerToken).join('');
}

/** The keys of a JSON Pointer, from the root on. */
export function keysOf(path: string): readonly string[] {
  return path
    .split('/')
    .slice(1)
    .map((key) => key.replaceAll('~1', '/').replaceAll('~0', '~'));
}

/** The pointer one level up; the root stays the root. */
export function parentPointer(path: string): string {
  return path.slice(0, Math.max(0, path.lastIndexOf('/')));
}

/** `file:line:column`, as a terminal or an editor can follow it. */
export function placeText(place: Place): string {
  return `${place.file}:${place.line}:${place.column}`;
}
