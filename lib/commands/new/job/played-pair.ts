import { mergeOutputFacts } from '../../../model/content/output-facts.ts';
import type { Vehicle } from '../../../model/content/vehicle.ts';
import type { Part, PartOf } from '../../../model/kinds/index.ts';
import { terminalsOf } from '../../../model/kinds/kind.ts';
import { carriedBy } from '../../../model/ports/carried-by-name.ts';
import { stemName } from '../../../model/ports/pair-name.ts';
import type { Row } from '../ask/rows.ts';

/** What tells which pair of the source a speaker plays. */
export interface PairSurroundings {
  readonly parts: Readonly<Record<string, Part>>;
  readonly vehicle: Vehicle | null;
  readonly devices: readonly Row[];
  readonly speakers: readonly Row[];
}

/** The rows of speakers of which nothing tells whether they play the front or the rear of a source that has both. */
export function openPairs(around: PairSurroundings): readonly string[] {
  const { parts, vehicle, devices, speakers } = around;
  const partOf = ({ cells }: Row) => parts[String(cells.part)];
  if (devices.some((row) => partOf(row)?.kind === 'processor')) return [];
  const pairs = new Set(outputsOf(around).map(({ carries }) => carries.replace(/-(left|right)$/, '')));
  if (!pairs.has('front') || !pairs.has('rear')) return [];
  const names = speakers.map(({ cells }) => String(cells.name));
  return speakers.flatMap((row) => {
    const { name, in: places, 'driven-by': driver } = row.cells;
    const spec = partOf(row);
    const isBass = spec?.kind === 'speaker' && spec.band === 'subwoofer';
    const isTold = String(places)
      .split(/\s+/)
      .some((place) => vehicle?.places[place]?.row !== undefined);
    // What a crossover of a row of its own drives plays what that plays.
    return isBass || isTold || names.includes(String(driver)) ? [] : [String(name)];
  });
}

interface GivenOutput {
  readonly source: string;
  readonly name: string;
  readonly carries: string;
}

/** What each source gives, in a line: each output with what it carries. */
export function sourceLines(around: PairSurroundings): readonly string[] {
  const all = outputsOf(around);
  return [...new Set(all.map(({ source }) => source))].map((source) => {
    const own = all.filter((one) => one.source === source);
    return `${source} gives ${own.map(({ name, carries }) => `${name} ${carries.replace('-', ' ')}`).join(', ')}`;
  });
}

function outputsOf({ parts, vehicle, devices }: PairSurroundings): readonly GivenOutput[] {
  const own = devices.map(({ cells }) => ({ id: String(cells.name), part: String(cells.part), found: {} }));
  const fitted = Object.entries(vehicle?.fitted ?? {}).map(([id, { part, outputs: found }]) => ({
    id,
    part,
    found,
  }));
  return [...own, ...fitted].flatMap(({ id, part, found }) => {
    const spec = parts[part];
    return spec?.kind === 'source-unit' ? givenBy(id, spec, found) : [];
  });
}

type Found = Vehicle['fitted'][string]['outputs'];

function givenBy(source: string, spec: PartOf<'source-unit'>, found: Found): readonly GivenOutput[] {
  return (['signal-out', 'speaker-out-positive'] as const).flatMap((role) => {
    const names = terminalsOf(spec.terminals, role).map(stemName);
    const carried = carriedBy(names, (name) => mergeOutputFacts(spec.outputs[name], found[name]).carries);
    return [...carried].map(([name, carries]) => ({ source, name, carries }));
  });
}
