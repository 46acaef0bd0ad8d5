/** Parts of a plan that a later build may find otherwise without any change to what is built. */
const aside = new Set([
  'findings',
  'traces',
  'status',
  'where',
  'passes',
  'stockQuantity',
  'short',
  'asBuilt',
  'state',
  'evaluations',
]);

const mostChanges = 20;

/** The places where two plans differ, by id path, such as `wires.feed.size.label: 4 AWG, today 1/0 AWG`. */
export function planChanges(frozen: unknown, today: unknown): string[] {
  const changes: string[] = [];
  compare(frozen, today, '', changes);
  return changes.slice(0, mostChanges);
}

function compare(frozen: unknown, today: unknown, path: string, changes: string[]): void {
  if (Object.is(frozen, today) || nearlyEqual(frozen, today)) return;
  const [before, after] = [entriesOf(frozen), entriesOf(today)];
  if (!before || !after) {
    changes.push(`${path}: ${shown(frozen)}, today ${shown(today)}`);
    return;
  }
  for (const key of new Set([...before.keys(), ...after.keys()]))
    if (!aside.has(key))
      compare(before.get(key), after.get(key), path === '' ? key : `${path}.${key}`, changes);
}

/** Twelfth digits may differ between machines; nobody cuts to them. */
function nearlyEqual(a: unknown, b: unknown): boolean {
  return typeof a === 'number' && typeof b === 'number' && Math.abs(a - b) <= 1e-9 * Math.max(1, Math.abs(a));
}

/** The members of an object by key, those of a list by their id where they have one. */
function entriesOf(value: unknown): Map<string, unknown> | null {
  if (typeof value !== 'object' || value === null) return null;
  if (!Array.isArray(value)) return new Map(Object.entries(value));
  return new Map(value.map((member: unknown, index) => [idOf(member) ?? String(index), member]));
}

function idOf(member: unknown): string | null {
  if (typeof member !== 'object' || member === null) return null;
  for (const key of ['id', 'item', 'wire', 'part']) {
    const value: unknown = Object.entries(member).find(([name]) => name === key)?.[1];
    if (typeof value === 'string') return value;
  }
  return null;
}

function shown(value: unknown): string {
  if (value === undefined) return 'nothing';
  return typeof value === 'object' ? 'another list' : String(value);
}
