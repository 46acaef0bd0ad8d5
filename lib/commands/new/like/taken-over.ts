import type { z } from 'zod';
import { audiencesOf } from '../../../model/audience.ts';
import { hasFields, type WrittenValue, writtenValueSchema } from '../../../model/content/proposal.ts';
import { fieldText } from '../../../model/writing/field-text.ts';
import { insideOf } from '../../../model/writing/schema-shape.ts';

/** What a job that is begun like another takes over of it, and the ways of what it does not. */
export interface TakenOver {
  readonly value: { readonly [name: string]: WrittenValue };
  /** Fields that are left out, such as `as-built`, `devices.amp.serial-number`. */
  readonly left: readonly string[];
}

/**
 * What of a file another one takes over, by the schema: what is for the bench, and not of one job alone. A leaf that is for
 * the customer or the shop without the bench is private or of one vehicle, whatever it is called.
 *
 * @param data As it is written, its short forms opened out.
 */
export function takenOver(schema: z.ZodType, data: unknown): TakenOver {
  const left: string[] = [];
  const value = taken(schema, data, [], left);
  return { value: hasFields(value) ? value : {}, left };
}

type Way = readonly string[];

function taken(schema: z.ZodType, data: unknown, way: Way, left: string[]): WrittenValue | undefined {
  const declared = audiencesOf(schema);
  if (fieldText(schema)?.ofOneJob || (declared.length > 0 && !declared.includes('bench'))) {
    left.push(way.join('.'));
    return undefined;
  }
  if (declared.length > 0) return plain(data);
  const inside = insideOf(schema);
  switch (inside.shape) {
    case 'object':
      return takenFields(data, way, left, (name) => inside.fields.get(name));
    case 'record':
      return takenFields(data, way, left, () => inside.value);
    case 'list':
      return takenItems(data, way, left, () => inside.element);
    case 'tuple':
      return takenItems(data, way, left, (at) => inside.items[at]);
    case 'union':
      return takenOption(inside.options, data, way, left);
    case 'wrapper':
      return taken(inside.inner, data, way, left);
    case 'leaf':
      return takenLeaf(schema, data);
  }
}

/** What reads as a leaf that nobody declared is for nobody; a constant such as the format version tells nothing of anyone. */
function takenLeaf(schema: z.ZodType, data: unknown): WrittenValue | undefined {
  return 'value' in schema && schema.value === data ? plain(data) : undefined;
}

function plain(data: unknown): WrittenValue | undefined {
  return writtenValueSchema.safeParse(data).data;
}

function takenFields(
  data: unknown,
  way: Way,
  left: string[],
  schemaOf: (name: string) => z.ZodType | undefined,
): WrittenValue | undefined {
  if (typeof data !== 'object' || data === null || Array.isArray(data)) return undefined;
  const fields = Object.entries(data).flatMap(([name, value]): [string, WrittenValue][] => {
    const schema = schemaOf(name);
    const own = schema && taken(schema, value, [...way, name], left);
    return own === undefined ? [] : [[name, own]];
  });
  return Object.fromEntries(fields);
}

function takenItems(
  data: unknown,
  way: Way,
  left: string[],
  schemaOf: (at: number) => z.ZodType | undefined,
): WrittenValue | undefined {
  if (!Array.isArray(data)) return undefined;
  return data.flatMap((value: unknown, at): WrittenValue[] => {
    const schema = schemaOf(at);
    const own = schema && taken(schema, value, [...way, String(at)], left);
    return own === undefined ? [] : [own];
  });
}

/** Of alternatives the one that reads the value. */
function takenOption(
  options: readonly z.ZodType[],
  data: unknown,
  way: Way,
  left: string[],
): WrittenValue | undefined {
  const option = options.find((one) => one.safeParse(data).success);
  return option && taken(option, data, way, left);
}
