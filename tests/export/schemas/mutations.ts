/** Where a value stands in the data of a file, and the value. */
export interface Spot {
  readonly keys: readonly (string | number)[];
  readonly value: unknown;
}

/** Every value of a file below its root. */
export function spotsIn(data: unknown, keys: readonly (string | number)[] = []): Spot[] {
  if (typeof data !== 'object' || data === null) return [];
  const entries: [string | number, unknown][] = Array.isArray(data)
    ? data.map((value, index) => [index, value])
    : Object.entries(data);
  return entries.flatMap(([key, value]) => [
    { keys: [...keys, key], value },
    ...spotsIn(value, [...keys, key]),
  ]);
}

/** What a tired writer does to one value of a file: `roll` gives numbers from 0 up to 1. */
export type Mutation = (value: unknown, roll: () => number, others: readonly Spot[]) => unknown;

/** The value is taken out. */
export const takenOut = Symbol('taken out');

const pick = <T>(list: readonly T[], dice: number): T | undefined => list[Math.floor(dice * list.length)];
const asText = (value: unknown): string =>
  typeof value === 'object' ? JSON.stringify(value) : String(value);
const at = (text: string, dice: number): number => Math.floor(dice * (text.length + 1));

/** Each with the name that a failure tells. */
export const mutations: Readonly<Record<string, Mutation>> = {
  'taken out': () => takenOut,
  emptied: () => null,
  'of another type': (_, roll) =>
    pick([3, -1, 0, 1.5, true, false, '', ' ', 'x', [], {}, ['x'], { x: 1 }], roll()),
  'of another place': (_, roll, others) => pick(others, roll())?.value,
  'in a list': (value) => [value],
  'out of its list': (value) => (Array.isArray(value) ? value[0] : asText(value)),
  'without a letter': (value, roll) => {
    const text = asText(value);
    const from = at(text, roll());
    return text.slice(0, from) + text.slice(from + 1);
  },
  'with a letter more': (value, roll) => {
    const text = asText(value);
    const from = at(text, roll());
    return text.slice(0, from) + (pick([...'aZ9 ./-+,"\'*|%'], roll()) ?? '') + text.slice(from);
  },
  'without its unit': (value) => Number.parseFloat(asText(value)) || asText(value).replace(/[^\d.]+$/, ''),
  'of another unit': (value, roll) =>
    asText(value).replace(
      /[a-zA-Z%]+$/,
      pick(['mm', 'in', 'ft', 'A', 'mA', 'V', 'W', 'ohm', 'kg', 'Hz'], roll()) ?? '',
    ),
  'with a comma': (value) =>
    asText(value)
      .replace('.', ',')
      .replace(/^(\d+) /, '$1,5 '),
  'with its sign turned': (value) => (typeof value === 'number' ? -value : `-${asText(value)}`),
  'of another amount': (value, roll) =>
    asText(value).replace(
      /\d+/,
      pick(['0', '00', '5/8', '3 1/2', '9/3', '1/0', '13-5/8', '1e3', '99999'], roll()) ?? '',
    ),
  'in other letters': (value, roll) => (roll() < 0.5 ? asText(value).toUpperCase() : ` ${asText(value)}  `),
};

/** The data with one value changed; keys are renamed by `renamed`. The data itself is left alone. */
export function mutated(data: unknown, keys: Spot['keys'], instead: unknown): unknown {
  const [key, ...rest] = keys;
  if (key === undefined) return instead;
  const put = (value: unknown) => mutated(value, rest, instead);
  const isGone = rest.length === 0 && instead === takenOut;
  if (Array.isArray(data))
    return data.flatMap((value, index) => (index === key ? (isGone ? [] : [put(value)]) : [value]));
  return Object.fromEntries(
    Object.entries(data ?? {}).flatMap(([name, value]) =>
      name === key ? (isGone ? [] : [[name, put(value)]]) : [[name, value]],
    ),
  );
}

/** The data with one key written otherwise. */
export function renamed(data: unknown, keys: Spot['keys'], name: string): unknown {
  const [key, ...rest] = keys;
  if (key === undefined || Array.isArray(data))
    return Array.isArray(data)
      ? data.map((value, index) => (index === key ? renamed(value, rest, name) : value))
      : data;
  return Object.fromEntries(
    Object.entries(data ?? {}).map(([own, value]) => {
      if (own !== key) return [own, value];
      return rest.length === 0 ? [name, value] : [own, renamed(value, rest, name)];
    }),
  );
}

/** Numbers from 0 up to 1, the same ones from the same seed: a linear congruential generator modulo 2^32. */
export function diceOf(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}

/** A file with a slip in one place, and what kind of slip it is. */
export function slipIn(
  data: unknown,
  { keys, value }: Spot,
  others: readonly Spot[],
  roll: () => number,
): { readonly name: string; readonly data: unknown } {
  const names = [...Object.keys(mutations), 'renamed'];
  const name = pick(names, roll()) ?? '';
  const change = mutations[name];
  const key = keys.at(-1);
  if (change) return { name, data: mutated(data, keys, change(value, roll, others)) };
  if (typeof key !== 'string') return { name: 'emptied', data: mutated(data, keys, null) };
  return { name, data: renamed(data, keys, `${key}${pick(['s', ' x', '..3'], roll())}`) };
}
