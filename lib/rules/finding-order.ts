import { type Finding, type Level, levelSchema } from '../model/finding.ts';
import { type FindingFamily, type FindingId, findingFamilies } from '../model/findings/index.ts';

/** How grave a level is: 0 for the gravest. */
export const rank = (level: Level): number => levelSchema.options.indexOf(level);

function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

/** Figures of parts and of the vehicle: all else is computed from them. */
const ofFigures: readonly FindingId[] = [
  'part-data-unlikely',
  'space-measures-differ',
  'space-seen-from-behind',
  'edge-on-other-side',
];

/**
 * Families in the order in which they are mended: what is joined to what, where it stands, the ways of the wires, the
 * currents, the fuses, the conductors and their ends that follow from these, then sound, and last the shelf.
 */
export const mendingOrder: readonly FindingFamily[] = [
  'accounting',
  'board',
  'layout',
  'mounting',
  'runs',
  'turn-on',
  'grounds',
  'supply',
  'protection',
  'conductors',
  'ends',
  'speakers',
  'signal',
  'stock-and-record',
];

/** Families whose findings stand in the catalogue as one follows from another: no room, then no way, then a tight bend. */
const causesFirst: readonly FindingFamily[] = ['board', 'layout', 'mounting'];

const turns: ReadonlyMap<string, number> = new Map([
  ...mendingOrder.flatMap((family, index) => {
    const ids = Object.keys(findingFamilies[family].findings);
    const within = causesFirst.includes(family) ? 1 / ids.length : 0;
    return ids.map((id, at) => [id, index + 1 + at * within] as const);
  }),
  ...ofFigures.map((id) => [id, 0] as const),
]);

const turnOf = ({ rule }: Pick<Finding, 'rule'>): number => turns.get(rule) ?? mendingOrder.length + 1;

/**
 * Order of findings: gravest first, what is accepted last of its level; then by what is mended first, since what comes
 * later may follow from it; then by place in the files, by rule, by subject; the rest decides between near doubles.
 */
export function compare(a: Finding, b: Finding): number {
  return (
    rank(a.level) - rank(b.level) ||
    Number(a.accepted !== undefined) - Number(b.accepted !== undefined) ||
    turnOf(a) - turnOf(b) ||
    compareText(a.where.file, b.where.file) ||
    a.where.line - b.where.line ||
    a.where.column - b.where.column ||
    compareText(a.rule, b.rule) ||
    compareText(a.related.join(' '), b.related.join(' ')) ||
    compareText(a.message, b.message)
  );
}
