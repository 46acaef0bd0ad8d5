/**
 * What a computation read of its input, a path a line: `.name` for a field, `[]` for the elements of a list, all alike,
 * `*` for all that lies below. In alphabetical order.
 */
export type Reads = readonly string[];

/** A value that tells what is read of it. */
export interface Recorded<T> {
  /** Reads as the value does, to any depth. */
  readonly value: T;
  /** What was read of it by now. */
  reads(): Reads;
}

const elements = '[]';
const all = '*';
const field = (name: string): string => `.${name}`;

/**
 * A copy of plain data that notes what is read of it. A part that is come to by one path is the same object each time, so
 * that parts can be compared and looked up. What asks for the names of fields has read all that lies below them.
 */
export function recordedReads<T extends object>(value: T): Recorded<T> {
  const seen = new Set<string>();
  const watched = new Map<string, WeakMap<object, object>>();
  const partAt = (path: string, part: object): object => {
    const own = watched.get(path) ?? new WeakMap<object, object>();
    watched.set(path, own);
    const found = own.get(part) ?? new Proxy(part, handlerAt(path));
    own.set(part, found);
    return found;
  };
  const note = (path: string, name: string): string => {
    const below = path === '' ? name : `${path}\n${name}`;
    seen.add(below);
    return below;
  };
  const handlerAt = (path: string): ProxyHandler<object> => ({
    get: (target, name, receiver) => {
      const found: unknown = Reflect.get(target, name, receiver);
      if (typeof name === 'symbol' || typeof found === 'function') return found;
      // How long a list is counts among what is read as soon as the list is.
      if (Array.isArray(target) && name === 'length') return found;
      const below = note(path, Array.isArray(target) ? elements : field(name));
      return typeof found === 'object' && found !== null ? partAt(below, found) : found;
    },
    has: (target, name) => {
      if (typeof name === 'string' && !Array.isArray(target)) note(path, field(name));
      return Reflect.has(target, name);
    },
    getOwnPropertyDescriptor: (target, name) => {
      note(path, all);
      return Reflect.getOwnPropertyDescriptor(target, name);
    },
    ownKeys: (target) => {
      note(path, all);
      return Reflect.ownKeys(target);
    },
  });
  // Of a frozen object nothing but its own parts may be given: the copy is not frozen.
  return { value: new Proxy<T>(structuredClone(value), handlerAt('')), reads: () => [...seen].sort() };
}

/** No more of a value than some reads: equal wherever a computation that reads no more could not tell two apart. */
export function projected(value: unknown, reads: Reads): unknown {
  const tree: PathTree = new Map();
  for (const path of reads) {
    let node = tree;
    for (const name of path.split('\n')) {
      const below = node.get(name) ?? new Map();
      node.set(name, below);
      node = below;
    }
  }
  return projectedBy(value, tree);
}

type PathTree = Map<string, PathTree>;

function projectedBy(value: unknown, tree: PathTree): unknown {
  if (typeof value !== 'object' || value === null || tree.has(all)) return value;
  if (Array.isArray(value)) {
    const each = tree.get(elements);
    return each ? value.map((one) => projectedBy(one, each)) : { count: value.length };
  }
  // Whether it is there is read even where nothing in it is.
  return Object.fromEntries(
    [...tree].flatMap(([name, below]) => {
      if (!name.startsWith(field(''))) return [];
      const found: unknown = Reflect.get(value, name.slice(field('').length));
      return found === undefined ? [] : [[name, projectedBy(found, below)] as const];
    }),
  );
}
