import type { KindName } from '../../../model/kinds/index.ts';
import { rowNames } from '../../../model/short-forms/row-names.ts';
import { powerAt } from '../../../model/survey/power-into-load.ts';
import { type Answers, lineOf } from '../ask/question.ts';
import type { Row } from '../ask/rows.ts';
import { componentSet } from './component-set.ts';
import { partRows } from './part-rows.ts';
import { rowName } from './row-name.ts';

/** A title that nobody tells is made of what else the leaflet tells. */
export const madeTitle = {
  fallback: () => '',
  hints: () => ['Left empty, it is made of the kind of part and its ratings.'],
};

/** What a part is called on sheets: as it is told, else its kind with the ratings that tell it from others. */
export function partTitle(kind: KindName, answers: Answers): string {
  const told = lineOf(answers, 'title');
  if (told !== '') return told;
  const [facts] = partRows(kind, 'facts', answers);
  const [size] = partRows(kind, 'case', answers);
  const cells = facts?.cells ?? {};
  const figures = (figuresOf[kind] ?? []).flatMap((key) => {
    const value = cells[key] ?? (key === 'width' ? size?.cells.width : undefined);
    return value === undefined ? [] : [String(value)];
  });
  const ratings = kind === 'amplifier' ? [powersTold(answers), ...figures] : figures;
  const name = capital([wordBefore(kind, cells), ...nameOf(kind, cells)].filter(Boolean).join(' '));
  return [name, ...ratings.filter((one) => one !== '')].join(', ');
}

/** The figures of a kind by which parts of it are told from each other, of its facts or its case. */
const figuresOf: Partial<Readonly<Record<KindName, readonly string[]>>> = {
  speaker: ['width', 'power', 'nominal'],
  enclosure: ['volume'],
  battery: ['capacity', 'cold-cranking'],
  alternator: ['rating'],
  'fuse-holder': ['current'],
  fuse: ['rating'],
  distribution: ['current'],
  wire: ['size', 'insulation'],
  cable: ['made-length'],
  relay: ['contact-current'],
  terminal: ['stud'],
  covering: ['bore'],
  grommet: ['bore'],
  'board-sheet': ['thickness'],
  fixing: ['thread', 'length'],
  'isolating-relay': ['continuous-current'],
  'capacitor-bank': ['capacitance'],
  crossover: ['load', 'power'],
  fan: ['width', 'airflow'],
};

/** The fact that goes before the name of a kind: a flooded battery, a sealed enclosure, a red wire. */
const before: Partial<Readonly<Record<KindName, string>>> = {
  enclosure: 'loading',
  battery: 'chemistry',
  wire: 'colour',
};

/** The same within a sentence: a title that is made begins as one. */
export function titleWithin(kind: KindName, answers: Answers): string {
  const title = partTitle(kind, answers);
  if (lineOf(answers, 'title') !== '') return title;
  return `${title.slice(0, 1).toLowerCase()}${title.slice(1)}`;
}

function wordBefore(kind: KindName, cells: Row['cells']): string {
  return String(cells[before[kind] ?? ''] ?? '').replaceAll('-', ' ');
}

/** What a thing of a kind is called: by its form, a ring lug, where it has one; a speaker by what it plays. */
function nameOf(
  kind: KindName,
  { form, 'fuse-form': ofFuse, band, material }: Row['cells'],
): readonly string[] {
  const words = (told: unknown) => String(told).replaceAll('-', ' ');
  if (kind === 'speaker') return speakerNames[String(band)] ?? [words(band), 'speaker'];
  if (kind === 'fuse') return [words(form), 'fuse'];
  if (kind === 'fuse-holder') return ['holder for', words(ofFuse), 'fuse'];
  if (kind === 'distribution') return ['distribution block'];
  if (kind === 'board-sheet') return [words(material)];
  const isByForm = kind === 'terminal' || kind === 'covering' || kind === 'fixing';
  return [isByForm && form !== undefined ? words(form) : words(kind)];
}

const speakerNames: Readonly<Record<string, readonly string[]>> = {
  subwoofer: ['subwoofer'],
  tweeter: ['tweeter'],
  [componentSet]: ['woofer'],
};

function capital(text: string): string {
  return `${text.slice(0, 1).toUpperCase()}${text.slice(1)}`;
}

/** What the channels of an amplifier give into the first load that is told of each, `4 x 65 W + 1 x 300 W`. */
function powersTold(answers: Answers): string {
  const told = partRows('amplifier', 'channel', answers).map(({ cells, rest }) => {
    const [load, power] = powerAt(rest[0] ?? '') ?? [];
    return { count: channelCount(cells.names), power, load };
  });
  const counts = new Map<string, number>();
  for (const { count, power, load } of told)
    if (power !== undefined) {
      const key = `${power} at ${load}`;
      counts.set(key, (counts.get(key) ?? 0) + count);
    }
  return [...counts].map(([power, count]) => (count === 1 ? power : `${count} x ${power}`)).join(' + ');
}

function channelCount(names: Row['cells'][string] | undefined): number {
  const name = rowName(names);
  const read = rowNames(name);
  return 'unreadable' in read ? 1 : read.length;
}
