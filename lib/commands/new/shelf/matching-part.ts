import { hasFields } from '../../../model/content/proposal.ts';
import { type KindName, kinds, type Part } from '../../../model/kinds/index.ts';
import type { Named } from '../yaml-text.ts';

/** Parts of the catalogue, by their ids. */
export type Catalogued = Readonly<Record<string, Part>>;

/** The parts of a kind whose fields are those that were told; one that a part leaves out is not. */
export function partsWith(parts: Catalogued, kind: KindName, told: Named): readonly string[] {
  const read = readFields(kind, told);
  return Object.entries(parts).flatMap(([id, part]) => {
    const own: Readonly<Record<string, unknown>> = part;
    return part.kind === kind && Object.entries(read).every(([name, value]) => isSame(own[name], value))
      ? [id]
      : [];
  });
}

/** Fields as the reader would have them; what it would refuse is like nothing. */
function readFields(kind: KindName, told: Named): Readonly<Record<string, unknown>> {
  const shape = kinds[kind].schema.shape;
  return Object.fromEntries(
    Object.entries(told).map(([name, value]) => {
      const field = Object.entries(shape).find(([key]) => key === name)?.[1];
      const read = field?.safeParse(value);
      return [name, read?.success ? read.data : Number.NaN];
    }),
  );
}

/** Two lengths are one where they differ by less than a hundredth of a millimetre: 5/8 in is 15.875 mm. */
const leastDifference = 1e-5;

function isSame(own: unknown, told: unknown): boolean {
  if (typeof own === 'number' && typeof told === 'number') return Math.abs(own - told) <= leastDifference;
  if (Array.isArray(own) && Array.isArray(told))
    return own.length === told.length && own.every((one, at) => isSame(one, told[at]));
  if (typeof own !== 'object' || own === null || typeof told !== 'object' || told === null)
    return own === told;
  const [ours, theirs] = [Object.entries(own), Object.entries(told)];
  return ours.length === theirs.length && theirs.every(([key, one]) => isSame(Reflect.get(own, key), one));
}

/** A part that is completed, and from which other part what it lacked was taken. */
export interface Completed {
  readonly fields: Named;
  readonly from: string | null;
  readonly taken: readonly string[];
}

interface Completing {
  readonly kind: KindName;
  readonly like: readonly string[];
  readonly takes: readonly string[];
}

/**
 * Fields of a new part with those that it has from another one of the shop that is like it in what they hang on. Nothing
 * is taken where such parts do not agree: it is asked for then.
 */
export function completed(
  parts: Catalogued,
  written: (id: string) => Named | null,
  { kind, like, takes }: Completing,
  fields: Named,
): Completed {
  const told = Object.fromEntries(
    like.flatMap((name) => (fields[name] === undefined ? [] : [[name, fields[name]]])),
  );
  const near = like.length === 0 ? [] : partsWith(parts, kind, told);
  const [from] = near;
  const source = from === undefined ? null : written(from);
  const agreed = takes.filter(
    (name) =>
      fields[name] === undefined &&
      source?.[name] !== undefined &&
      near.every((id) =>
        isSame(Reflect.get(parts[id] ?? {}, name), Reflect.get(parts[from ?? ''] ?? {}, name)),
      ),
  );
  if (!hasFields(source)) return { fields, from: null, taken: [] };
  const own = Object.fromEntries(agreed.map((name) => [name, source[name] ?? '']));
  return { fields: { ...fields, ...own }, from: from ?? null, taken: agreed };
}
