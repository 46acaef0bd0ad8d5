/**
 * A value as text, equal for equal values and for no others: numbers to their last bit, objects with and without a
 * prototype told apart, keys in the order in which they stand, since a computation may go by that. Throws on what is no
 * plain data, such as a function: a step that takes one reads more than its input shows.
 */
export function canonicalText(value: unknown): string {
  switch (typeof value) {
    case 'string':
      return quoted(value);
    case 'number':
      return Object.is(value, -0) ? '-0' : String(value);
    case 'boolean':
    case 'undefined':
      return String(value);
    case 'object':
      return value === null ? 'null' : objectText(value);
    default:
      throw new Error(`A ${typeof value} is no plain data.`);
  }
}

/** A text behind its length, so that nothing in it can be taken for what stands round it. */
function quoted(text: string): string {
  return `${text.length}'${text}`;
}

function objectText(value: object): string {
  if (Array.isArray(value)) return `[${listText(value)}]`;
  if (value instanceof Map) return `map(${listText([...value].flat(1))})`;
  if (value instanceof Set) return `set(${listText([...value])})`;
  let text = prototypeOf(value) === null ? 'bare{' : '{';
  for (const [key, one] of Object.entries(value)) text += `${quoted(key)}:${canonicalText(one)},`;
  return `${text}}`;
}

function listText(list: readonly unknown[]): string {
  let text = '';
  for (const one of list) text += `${canonicalText(one)},`;
  return text;
}

/** Throws on a result that would not be read back as it was: on what is no plain data, and on objects without prototype. */
export function refuseUnkeepable(value: unknown): void {
  if (typeof value === 'function' || typeof value === 'symbol' || typeof value === 'bigint')
    throw new Error(`A ${typeof value} is no plain data.`);
  if (typeof value !== 'object' || value === null) return;
  if (Array.isArray(value)) for (const one of value) refuseUnkeepable(one);
  else if (value instanceof Map || value instanceof Set)
    for (const pair of value.entries()) for (const one of pair) refuseUnkeepable(one);
  else {
    if (prototypeOf(value) === null)
      throw new Error('An object without a prototype would be kept as one that has it.');
    for (const one of Object.values(value)) refuseUnkeepable(one);
  }
}

/** The prototype of a plain object, if any. Throws on an object of a class. */
function prototypeOf(value: object): unknown {
  const prototype: unknown = Object.getPrototypeOf(value);
  if (prototype !== null && prototype !== Object.prototype)
    throw new Error(`A ${value.constructor.name} is no plain data.`);
  return prototype;
}
