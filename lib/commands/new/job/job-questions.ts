import type { Shop } from '../../../model/content/shop.ts';
import type { Vehicle } from '../../../model/content/vehicle.ts';
import type { KindName, Part } from '../../../model/kinds/index.ts';
import type { Problem } from '../../../model/problem.ts';
import { formatLength, lengthStyle } from '../../../model/quantity/length-text.ts';
import { remedyFor } from '../../../read/report.ts';
import { choicesOfWords } from '../ask/choices.ts';
import { type Answers, lineOf, linesOf, type Question } from '../ask/question.ts';
import { type Row, rowOf } from '../ask/rows.ts';
import { type Beside, tableQuestion } from '../ask/table-question.ts';
import { componentSet, namesOfSet } from '../part/component-set.ts';
import { missingPart, otherKind } from '../part-fault.ts';
import { partNames } from '../part-names.ts';
import { type UnreadPart, type UnreadVehicle, unreadFault } from '../unread.ts';
import { jobTables } from './job-tables.ts';
import { openPairs, type PairSurroundings, sourceLines } from './played-pair.ts';

/** What a job is asked for in. */
export interface JobSurroundings {
  readonly parts: Readonly<Record<string, Part>>;
  readonly vehicles: Readonly<Record<string, Vehicle>>;
  /** What the reader found in the files of the shop. */
  readonly problems: readonly Problem[];
  /** Vehicles that are written, and could not be read. */
  readonly unread: readonly UnreadVehicle[];
  /** Parts of which the same holds: they are not offered, and it is told why. */
  readonly unreadParts: readonly UnreadPart[];
  /** Its units and its tape; null where its own file could not be read. */
  readonly shop: Pick<Shop, 'units' | 'fraction'> | null;
  readonly today: string;
  /** The name that was given with the command, which a job is called by where it has no title. */
  readonly id: string | null;
}

/** The questions of a new job, in their order. */
export function jobQuestions(around: JobSurroundings): readonly Question[] {
  return jobTables.map((table) => tableQuestion(table, besides[table.key](around)));
}

type Key = (typeof jobTables)[number]['key'];

/** Rows of a table of the job, as they were answered. */
export function jobRows(answers: Answers, key: Key): readonly Row[] {
  const table = jobTables.find((one) => one.key === key);
  return table ? linesOf(answers, key).map((line) => rowOf(table.columns, line)) : [];
}

const onBoard: readonly KindName[] = [
  'amplifier',
  'processor',
  'distribution',
  'charger',
  'capacitor-bank',
  'relay',
  'isolating-relay',
  'fuse-holder',
  'battery',
  'fan',
];
const elsewhere: readonly KindName[] = [...onBoard, 'level-control', 'source-unit', 'enclosure'];
const kindsFor = (cells: Row['cells']): readonly KindName[] => (cells.in === undefined ? onBoard : elsewhere);

const vehicleOf = ({ vehicles }: JobSurroundings, answers: Answers): Vehicle | null =>
  vehicles[lineOf(answers, 'vehicle')] ?? null;
const spacesOf = (around: JobSurroundings, answers: Answers) =>
  Object.keys(vehicleOf(around, answers)?.spaces ?? {});
const placesOf = (around: JobSurroundings, answers: Answers) =>
  Object.keys(vehicleOf(around, answers)?.places ?? {});

/** The only one of several names; null where there are more, or none. */
function only(names: readonly string[]): string | null {
  return names.length === 1 ? (names[0] ?? null) : null;
}

/** The vehicle that can be meant alone: one that is written and can't be read yet may be meant as well. */
function onlyVehicle({ vehicles, unread }: JobSurroundings): string | null {
  return unread.length > 0 ? null : only(Object.keys(vehicles));
}

function vehicleFault({ vehicles, unread }: JobSurroundings, name: string): string | null {
  const found = unread.find(({ id }) => id === name);
  return (found && unreadFault(found.problems)) ?? unknown('vehicle', name, Object.keys(vehicles));
}

/** Every part that the answers name. */
export function partsNamed(answers: Answers): readonly string[] {
  const rows = (['device', 'speaker', 'board'] as const).flatMap((key) => jobRows(answers, key));
  return rows.flatMap(({ cells: { part, box, sheet, tweeters } }) => {
    const ofSet = tweeters === undefined ? [] : Object.values(namesOfSet(String(part)));
    return [part, box, sheet, ...ofSet].flatMap((one) => (one === undefined ? [] : [String(one)]));
  });
}

const besides: { readonly [K in Key]: (around: JobSurroundings) => Beside } = {
  title: ({ id }) => ({ fallback: () => id }),
  'issued-on': ({ today }) => ({ fallback: () => today, follows: () => today }),
  vehicle: (around) => ({
    fallback: () => onlyVehicle(around),
    follows: () => onlyVehicle(around),
    hints: () => around.unread.flatMap(({ problems }) => unreadFault(problems) ?? []),
    choices: () =>
      Object.entries(around.vehicles).map(([id, { title }]) => ({ value: id, says: `${id}: ${title}` })),
    fault: (_row, _answers, line) => vehicleFault(around, line),
  }),
  space: (around) => ({
    needless: (answers) =>
      spacesOf(around, answers).length > 0
        ? null
        : `belongs to a vehicle with spaces for boards, and ${lineOf(answers, 'vehicle')} has none: leave it out`,
    fallback: (answers) => only(spacesOf(around, answers)) ?? '',
    follows: (answers) => only(spacesOf(around, answers)),
    choices: (answers) => choicesOfWords(spacesOf(around, answers)),
    fault: (_row, answers, line) =>
      unknown(`space of ${lineOf(answers, 'vehicle')}`, line, spacesOf(around, answers)),
  }),
  device: (around) => ({
    hints: (answers) => [
      ...offered(around, ['amplifier', 'processor'], onBoard),
      `Places: ${placesOf(around, answers).join(', ')}`,
    ],
    fault: ({ cells }, answers) =>
      twice(cells.name, answers) ??
      otherKind(around.parts, kindsFor(cells), cells.part) ??
      (cells.in === undefined ? null : unknown('place', String(cells.in), placesOf(around, answers))),
    doubt: ({ cells }) => missingPart(around, kindsFor(cells), cells.part),
  }),
  speaker: (around) => ({
    hints: (answers) => [
      ...offered(around, ['speaker', 'enclosure', 'crossover']),
      `Places: ${placesOf(around, answers).join(', ')}`,
    ],
    fault: ({ cells }, answers) =>
      twice(cells.name, answers) ??
      otherKind(around.parts, ['speaker', 'crossover'], cells.part) ??
      unknownPlaces(cells.in, placesOf(around, answers)) ??
      (cells.tweeters === undefined
        ? null
        : (unknownPlaces(cells.tweeters, placesOf(around, answers)) ?? noSet(around, cells.part))) ??
      (cells.box === undefined ? null : otherKind(around.parts, ['enclosure'], cells.box)) ??
      unknownDriver(around, cells['driven-by'], answers) ??
      levelFault(around, cells),
    doubt: ({ cells }) =>
      missingPart(around, ['speaker', 'crossover'], cells.part) ??
      (cells.box === undefined ? null : missingPart(around, ['enclosure'], cells.box)),
  }),
  signal: (around) => ({
    needless: (answers) =>
      openPairs(pairsAround(around, answers)).length > 0
        ? null
        : 'is told already, by the rows of their places or by the only pair of the source: leave it out, and where another is meant, write signal: at the speaker in the job',
    hints: (answers) => {
      const about = pairsAround(around, answers);
      return [`To be told: ${openPairs(about).join(', ')}`, ...sourceLines(about)];
    },
    fault: ({ cells }, answers) =>
      unknown('such speaker', String(cells.name), openPairs(pairsAround(around, answers))),
  }),
  board: (around) => ({
    needless: (answers) =>
      lineOf(answers, 'space') !== '' &&
      jobRows(answers, 'device').some(({ cells }) => cells.in === undefined)
        ? null
        : 'belongs to a job with a --space and a --device that stands on its board: give both, or leave it out',
    fallback: () => '',
    hints: (answers) => boardHints(around, answers),
    fault: ({ cells }, answers) =>
      (cells.sheet === undefined ? null : otherKind(around.parts, ['board-sheet'], cells.sheet)) ??
      (cells.ground === undefined
        ? null
        : unknown(
            'ground point',
            String(cells.ground),
            Object.keys(vehicleOf(around, answers)?.grounds ?? {}),
          )),
    doubt: ({ cells }) =>
      cells.sheet === undefined ? null : missingPart(around, ['board-sheet'], cells.sheet),
  }),
};

function pairsAround(around: JobSurroundings, answers: Answers): PairSurroundings {
  return {
    parts: around.parts,
    vehicle: vehicleOf(around, answers),
    devices: jobRows(answers, 'device'),
    speakers: jobRows(answers, 'speaker'),
  };
}

/** Parts of some kinds that the catalogue has; and those that it lacks, of these kinds or others that may stand there, with what keeps them out. */
function offered(
  { parts, unreadParts }: JobSurroundings,
  kinds: readonly KindName[],
  also: readonly KindName[] = [],
): readonly string[] {
  const lists = kinds.flatMap((kind) => {
    const names = partNames(parts, kind);
    return names.length === 0 ? [] : [`In the catalogue, ${kind}: ${names.join(', ')}`];
  });
  const meant: readonly string[] = [...kinds, ...also];
  const left = unreadParts.flatMap(({ id, kind, problems }) => {
    const fault = kind === null || meant.includes(kind) ? unreadFault(problems) : null;
    return fault === null ? [] : [`Left out until its file is mended, ${kind ?? 'part'} ${id}: ${fault}`];
  });
  return [...lists, ...left];
}

/** The tape of a shop whose file can't be read. */
const usualTape = { units: 'millimetre', fraction: 16 } as const;

function boardHints(around: JobSurroundings, answers: Answers): readonly string[] {
  const vehicle = vehicleOf(around, answers);
  const space = vehicle?.spaces[lineOf(answers, 'space')];
  if (!vehicle || !space) return [];
  const style = { ...lengthStyle(around.shop ?? usualTape), direction: 'down' } as const;
  const side = (at: 0 | 1) =>
    formatLength(Math.max(...space.outline.map((point) => point[at])), style).primary;
  return [
    `The space is ${side(0)} wide and ${side(1)} high.`,
    `Ground points: ${Object.keys(vehicle.grounds).join(', ') || 'none'}`,
    `Sheets: ${partNames(around.parts, 'board-sheet').join(', ')}`,
  ];
}

function unknown(what: string, name: string, known: readonly string[]): string | null {
  return known.includes(name) ? null : `there is no ${what} "${name}"; ${remedyFor(name, known)}`;
}

function unknownPlaces(named: unknown, known: readonly string[]): string | null {
  const faults = String(named)
    .split(/\s+/)
    .map((place) => unknown('place', place, known));
  return faults.find((fault) => fault !== null) ?? null;
}

/** A speaker is driven by a device of the job, by a crossover among its speakers, or by what the vehicle came with. */
function unknownDriver(around: JobSurroundings, named: unknown, answers: Answers): string | null {
  if (named === undefined) return null;
  const own = (['device', 'speaker'] as const).flatMap((key) =>
    jobRows(answers, key).map(({ cells }) => String(cells.name)),
  );
  const ofVehicle = Object.keys(vehicleOf(around, answers)?.fitted ?? {});
  return unknown('device', String(named), [...own, ...ofVehicle]);
}

/** What is said of tweeters beside a speaker that no set of the catalogue begins with. */
function noSet({ parts }: JobSurroundings, named: unknown): string | null {
  const { tweeter, crossover } = namesOfSet(String(named));
  const lacking = [tweeter, crossover].filter((name) => parts[String(named)] && !parts[name]);
  if (lacking.length === 0) return null;
  return `has tweeters beside ${String(named)}, and there is no ${lacking.join(' and no ')}: rackleaf new part writes all three of a speaker of the band ${componentSet}; else leave them out, and give each speaker its row`;
}

/** A level is of what is heard: the speakers behind a crossover have it. */
function levelFault({ parts }: JobSurroundings, { part, level }: Row['cells']): string | null {
  return level !== undefined && parts[String(part)]?.kind === 'crossover'
    ? `has the level ${String(level)}, and ${String(part)} is a crossover: write it in the rows of its speakers`
    : null;
}

/** A name that another device of the job has. */
function twice(named: unknown, answers: Answers): string | null {
  const rows = (['device', 'speaker'] as const).flatMap((key) => jobRows(answers, key));
  return rows.some(({ cells }) => cells.name === named)
    ? `is called ${String(named)}, and there is one of that name already`
    : null;
}
