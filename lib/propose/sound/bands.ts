import { guardsFrom, subsonicCorner } from '../../audio/filter/subsonic-corner.ts';
import type { PlayedBand } from '../../model/content/played-band.ts';
import { isFault } from '../../model/fault.ts';
import type { PartOf } from '../../model/kinds/index.ts';
import { inch } from '../../model/quantity/dimensions.ts';
import type { Row } from '../../model/vocabulary.ts';
import type { Draft } from '../draft/draft.ts';
import { settableHz } from './settable-hz.ts';
import { type DrivenGroup, pitchOf } from './signal-chain.ts';

/** The band that a group of speakers plays. */
export interface Band extends PlayedBand {
  readonly group: string;
  readonly row: Row | null;
  readonly isBass: boolean;
  /** Corner of the subsonic filter of a ported enclosure (Hz). */
  readonly subsonicHz?: number;
  /** The lowest corner at which a subsonic filter still guards the cone in that box (Hz). */
  readonly guardsFromHz?: number;
  /** Where the table has it begin, where that is not as a hand sets a knob (Hz): `fromHz` is the step above it. */
  readonly tableHz?: number;
  /** True where the job says it. */
  readonly given: boolean;
}

/** A speaker never plays lower than this share over its maker's lowest frequency: common practice, no source. */
const overLowest = 1.25;
/** A tweeter stays further above it, and above this: common practice, no source. */
const tweeter = { overLowest: 1.5, leastHz: 2500 };
/** The lowest that cones play, by the width of their frame from so many inches on: common practice, no source. */
const conesHz: readonly (readonly [inches: number, hz: number])[] = [
  [7.5, 70],
  [5.75, 80],
  [4.75, 100],
  [3.75, 120],
  [0, 200],
];
/** A small midrange begins here, up to a frame of so many inches: common practice, no source. */
const smallMidrange = { inches: 4.5, hz: 350 };
/** Where a subwoofer hands over: within these, or at this where no group of the front tells. Common practice, no source. */
const bassHz = { least: 60, most: 100, alone: 80 };

/** The bands of all groups: as written, else by kind and frame; each ends where the next one of its row begins. */
export function bandsOf(draft: Draft, groups: readonly DrivenGroup[]): ReadonlyMap<string, Band> {
  const isBass = groups.some((group) => speakerPart(group)?.band === 'subwoofer');
  const rows = groups.map((group) => ({ group, row: rowOf(group), part: speakerPart(group) }));
  const starts = rows.flatMap(({ group, row, part }) => {
    if (!part || part.band === 'subwoofer') return [];
    const written = group.given.plays;
    const isLowest = !rows.some(
      (other) => other.group !== group && other.row === row && playsLower(other.part, part),
    );
    const tableHz = written ? undefined : startHz(part, isLowest && !isBass);
    const fromHz = tableHz === undefined ? written?.fromHz : settableHz(tableHz);
    return [{ group, row, fromHz, tableHz, written }];
  });
  const bands = new Map<string, Band>();
  for (const { group, row, fromHz, tableHz, written } of starts) {
    const above = starts
      .flatMap((other) => (other.row === row && other.group !== group ? (other.fromHz ?? []) : []))
      .filter((hz) => hz > (fromHz ?? 0));
    const toHz = written ? written.toHz : above.length > 0 ? Math.min(...above) : undefined;
    const given = written !== undefined;
    bands.set(group.id, {
      group: group.id,
      row,
      isBass: false,
      given,
      ...band(fromHz, toHz),
      ...(tableHz !== undefined && tableHz !== fromHz && { tableHz }),
    });
  }
  const front = starts.filter(({ row }) => row !== 'rear').flatMap(({ fromHz }) => fromHz ?? []);
  for (const { group, row, part } of rows)
    if (part?.band === 'subwoofer') bands.set(group.id, bassBand(draft, group, row, front));
  return bands;
}

function band(fromHz: number | undefined, toHz: number | undefined): PlayedBand {
  return { ...(fromHz !== undefined && { fromHz }), ...(toHz !== undefined && { toHz }) };
}

/** The part of the speakers of a group; of a set that of those that play lowest: a crossover makes the rest. */
export function speakerPart({
  speakers,
  behind,
}: Pick<DrivenGroup, 'speakers' | 'behind'>): PartOf<'speaker'> | null {
  const spec = behind?.[0]?.part ?? speakers[0]?.spec;
  return spec?.kind === 'speaker' ? spec : null;
}

/** The row of seats that a group plays to: as written for its signal, else that of its first place which has one. */
export function rowOf({
  given,
  speakers,
  behind = [],
}: Pick<DrivenGroup, 'given' | 'speakers' | 'behind'>): Row | null {
  if (given.signal === 'front' || given.signal === 'rear') return given.signal;
  const heard = [...behind.flatMap((one) => one.speakers), ...speakers];
  return heard.find(({ row }) => row !== null)?.row ?? null;
}

function playsLower(a: PartOf<'speaker'> | null, b: PartOf<'speaker'>): boolean {
  return a !== null && pitchOf(a) < pitchOf(b);
}

/** Where a speaker begins (Hz). `isAll`: nothing plays below it, so that it goes as low as its maker lets it. */
function startHz(part: PartOf<'speaker'>, isAll: boolean): number {
  const lowestHz = part['lowest-frequency'] ?? 0;
  if (part.band === 'tweeter') return Math.max(tweeter.overLowest * lowestHz, tweeter.leastHz);
  if (isAll && lowestHz > 0) return lowestHz;
  const frame = Math.max(part.size.width, part.size.depth) / inch;
  const isSmall = part.band === 'midrange' && frame <= smallMidrange.inches;
  const usualHz = isSmall ? smallMidrange.hz : (conesHz.find(([inches]) => frame >= inches)?.[1] ?? 0);
  return Math.max(usualHz, overLowest * lowestHz);
}

function bassBand(draft: Draft, group: DrivenGroup, row: Row | null, frontHz: readonly number[]): Band {
  const { plays } = group.given;
  const lowest = frontHz.length > 0 ? Math.min(...frontHz) : bassHz.alone;
  const toHz = plays ? plays.toHz : Math.min(bassHz.most, Math.max(bassHz.least, lowest));
  const tuningHz = tuningOf(draft, group);
  const ownHz = tuningHz === undefined ? undefined : subsonicOf(draft, tuningHz);
  const subsonicHz = plays?.fromHz ?? ownHz;
  return {
    group: group.id,
    row,
    isBass: true,
    given: plays !== undefined,
    ...(toHz !== undefined && { toHz }),
    ...(subsonicHz !== undefined && { subsonicHz }),
    ...(tuningHz !== undefined && { guardsFromHz: guardsFrom * tuningHz }),
  };
}

/** The tuning of the ported box of a group (Hz). */
function tuningOf(draft: Draft, { given, speakers }: DrivenGroup): number | undefined {
  const seat = speakers[0]?.seat;
  const box =
    given.box === undefined
      ? draft.own.find((one) => one.spec.kind === 'enclosure' && one.seat === seat)?.spec
      : draft.around.parts[given.box];
  return box?.kind === 'enclosure' && box.loading === 'ported' ? box.tuning : undefined;
}

/** Subsonic corner at a tuning, to the whole hertz above (Hz): the middle of what the house rules allow. */
function subsonicOf({ around: { rules } }: Draft, tuningHz: number): number | undefined {
  const share = (rules['subsonic-from'].value + rules['subsonic-to'].value) / 2;
  const corner = subsonicCorner('box', tuningHz, { from: share, to: share });
  return isFault(corner) ? undefined : Math.ceil(corner.fromHz.value - 1e-6);
}
