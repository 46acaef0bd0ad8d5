/**
 * A value as text, equal for equal values and for no others: numbers to their last bit, objects with and without a
 * prototype told apart, keys in the order in which they stand, since a computation may go by that. Throws on what is no
 * plain data, such as a function: a step that takes one reads more than its input shows.
 */
export function canonicalText(value: unknown): string {
  const parts: string[] = [];
  write(value, parts);
  return parts.join('');
}

/** Throws on a result that would not be read back as it was: on what is no plain data, and on objects without prototype. */
export function refuseUnkeepable(value: unknown): void {
  if (typeof value === 'function' || typeof value === 'symbol' || typeof value === 'bigint')
    throw new Error(`A ${typeof value} is no plain data.`);
  if (typeof value !== 'object' || value === null) return;
  if (value instanceof Map || value instanceof Set) {
    for (const one of value.entries()) for (const each of one) refuseUnkeepable(each);
  } else if (Array.isArray(value)) for (const one of value) refuseUnkeepable(one);
  else {
    if (prototypeOf(value) === null)
      throw new Error('An object without a prototype would be kept as one with it.');
    for (const one of Object.values(value)) refuseUnkeepable(one);
  }
}

function write(value: unknown, parts: string[]): void {
  if (typeof value === 'string') parts.push(JSON.stringify(value));
  else if (typeof value === 'number') parts.push(Object.is(value, -0) ? '-0' : String(value));
  else if (typeof value === 'boolean' || value === null || value === undefined) parts.push(String(value));
  else if (typeof value === 'object') writeObject(value, parts);
  else throw new Error(`A ${typeof value} is no plain data.`);
}

function writeObject(value: object, parts: string[]): void {
  if (Array.isArray(value)) writeList('[', value, ']', parts);
  else if (value instanceof Map) writeList('map(', [...value].flat(1), ')', parts);
  else if (value instanceof Set) writeList('set(', [...value], ')', parts);
  else writeRecord(value, parts);
}

function writeList(open: string, list: readonly unknown[], close: string, parts: string[]): void {
  parts.push(open);
  for (const one of list) {
    write(one, parts);
    parts.push(',');
  }
  parts.push(close);
}

function writeRecord(value: object, parts: string[]): void {
  parts.push(prototypeOf(value) === null ? 'bare{' : '{');
  for (const [key, one] of Object.entries(value)) {
    parts.push(JSON.stringify(key), ':');
    write(one, parts);
    parts.push(',');
  }
  parts.push('}');
}

/** The prototype of a plain object, if any. Throws on an object of a class. */
function prototypeOf(value: object): unknown {
  const prototype: unknown = Object.getPrototypeOf(value);
  if (prototype !== null && prototype !== Object.prototype)
    throw new Error(`A ${value.constructor.name} is no plain data.`);
  return prototype;
}
