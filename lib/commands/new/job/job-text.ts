import { groundRefs } from '../../../model/content/resolved-job.ts';
import type { Vehicle } from '../../../model/content/vehicle.ts';
import { isInLineFilter, type Part, partFacts } from '../../../model/kinds/index.ts';
import { type Answers, lineOf } from '../ask/question.ts';
import type { Cell, Row } from '../ask/rows.ts';
import { namesOfSet } from '../part/component-set.ts';
import { stillToMeasure } from '../vehicle/still-to-measure.ts';
import { blockText, filled, known, type Named } from '../yaml-text.ts';
import { jobRows } from './job-questions.ts';

type Parts = Readonly<Record<string, Part>>;

/**
 * The text of a job file from its answers: who plays what, and the board. All else is left out, and so proposed.
 * Comments name what the vehicle offers to each section, so that more can be written without another file open.
 */
export function jobText(id: string, answers: Answers, vehicle: Vehicle, parts: Parts): string {
  const space = lineOf(answers, 'space');
  const date = lineOf(answers, 'issued-on');
  const devices = devicesOf(answers, parts);
  const boards = boardsOf(answers);
  return `rackleaf: 1
id: ${id}
title: ${JSON.stringify(lineOf(answers, 'title'))}
revision: A
revisions:
  - { revision: A, date: ${date}, what: First issue }
status: draft
issued-on: ${date}
vehicle: ${vehicle.id}
${space === '' ? '# space: one of the spaces below\n' : `space: ${space}\n`}
${unmeasured(vehicle, parts)}# What is left out is computed or proposed, and what is written is checked: links, cables, fuses, sizes, grounds, turn-on,
# filters, places on the board and routes may all be left out. Quantities have their unit: 13 5/8 in, 20 A, 80 Hz.

# Whom the job is for. Reaches only the pages that need it.
# customer: { name: , contact: , plate: }

# What is built in, each with a part of the catalogue: on: a board of this job, or in: a place of the vehicle, a list of
# places for one in each. A speaker may say what drives it, driven-by:, and the band that it plays:.
${comment('Places', titles(vehicle.places))}
${blockText({ devices }, 2)}${Object.keys(devices).length > 0 ? '' : '#  amp: { part: , on: board }\n#  front: { part: , in: [ , ] }\n'}
# Boards. Left out, outline:, at: and spacer: make the largest rectangle that is free in its space, every sound point under
# one holds it, and sheet: is the lightest that is stiff enough.
${comment('Spaces', titles(vehicle.spaces))}
${comment('Sound points', soundPoints(vehicle, space))}
${blockText({ boards }, 3)}${Object.keys(boards).length > 0 ? '' : '#  board: { at: { x: , y: }, outline: { rectangle: { width: , height: } }, spacer: }\n'}
${furtherSections(vehicle, parts)}`;
}

/** Where the list of what a tape must still tell stands: with the vehicle, once. */
function unmeasured(vehicle: Vehicle, parts: Parts): string {
  const isWhole = stillToMeasure(vehicle, parts).length === 0;
  return isWhole
    ? ''
    : `# Still to be measured: the top of content/vehicles/${vehicle.id}.yaml lists it.\n\n`;
}

/** What may be written as well: each section as a comment, with what the vehicle offers to it. */
function furtherSections(vehicle: Vehicle, parts: Parts): string {
  return `# What is joined to what, terminal to terminal; left out, it is proposed. A pair goes by its name without + and -: amp.CH1.
${comment('Of the vehicle', fittedTerminals(vehicle, parts))}
${comment('Ground points', groundRefs(Object.keys(vehicle.grounds)))}
# links:
#   to-sub: { from: amp.CH1, to: sub.C1 }

# The way of links through the vehicle; left out, by its routes.
${comment('Routes', titles(vehicle.routes))}
# runs:
#   power: { route: , links: [to-sub] }

# Terminals that stay open, each with its reason.
# left-open:
#   amp.LEVEL: no level control on this job

# Cautions that may stand, each at the value and the limit that were seen. The check prints the lines to write. A stop can't be accepted.
# accepted:
#   - { finding: drop-over-limit, of: amp, value: , reason: , by: }
`;
}

function devicesOf(answers: Answers, parts: Parts): Named {
  const devices = jobRows(answers, 'device').map(deviceOf);
  const rows = withPairs(jobRows(answers, 'speaker'), jobRows(answers, 'signal'));
  const speakers = rows.flatMap((row) => setOf(row, rows, parts) ?? [deviceOf(row)]);
  return Object.fromEntries([...devices, ...speakers]);
}

/** Speakers with the pair of the source that was answered for them. */
function withPairs(speakers: readonly Row[], pairs: readonly Row[]): readonly Row[] {
  return speakers.map((row) => {
    const signal = pairs.find(({ cells }) => cells.name === row.cells.name)?.cells.signal;
    return signal === undefined ? row : { ...row, cells: { ...row.cells, signal } };
  });
}

function deviceOf({ cells: { name, in: places, part, ...cells } }: Row): readonly [string, Named] {
  return [String(name), { part: String(part), ...standing(places), ...cells }];
}

/**
 * The devices that one row of a component set tells; null for another speaker. A filter in the lead of the tweeter stands
 * with it and hangs beside its woofer, and a crossover is before both: one that lies elsewhere has a row of its own, and
 * drives the set.
 */
function setOf(
  { cells: { tweeters, ...cells } }: Row,
  rows: readonly Row[],
  parts: Parts,
): readonly Placed[] | null {
  if (tweeters === undefined) return null;
  const { name, part, in: places, 'driven-by': driver, signal, ...own } = cells;
  const woofer = String(name);
  const [called, named] = [namesOfSet(woofer), namesOfSet(String(part))];
  const spec = parts[named.crossover];
  const isBeside = isInLineFilter(spec);
  // Woofer and tweeter of a set play on one channel: both at its level.
  const quieter = known({ level: own.level });
  if (isCrossover(rows, driver, parts)) {
    const behind = by(String(driver));
    return [
      [woofer, { part: String(part), ...standing(places), ...behind, ...own }],
      [called.tweeter, { part: named.tweeter, ...standing(tweeters), ...behind, ...quieter }],
    ];
  }
  const given = known({ 'driven-by': driver, signal });
  const filter = {
    part: named.crossover,
    ...standing(isBeside ? tweeters : places),
    ...(isBeside ? by(woofer) : given),
  };
  const first = { part: String(part), ...standing(places), ...(isBeside ? given : by(called.crossover)) };
  const above = { part: named.tweeter, ...standing(tweeters), ...by(called.crossover), ...quieter };
  const before: Placed = [called.crossover, filter];
  const behind: Placed = [woofer, { ...first, ...own }];
  return [...(isBeside ? [behind, before] : [before, behind]), [called.tweeter, above]];
}

/** True for a device that parts the band of its channel: a row of the job tells it. */
function isCrossover(rows: readonly Row[], named: unknown, parts: Parts): boolean {
  const row = rows.find(({ cells }) => cells.name === named);
  const spec = parts[String(row?.cells.part)];
  return spec?.kind === 'crossover' && !isInLineFilter(spec);
}

type Placed = readonly [name: string, device: Named];

const by = (driver: string) => ({ 'driven-by': driver });

/** Where a device stands: on the board, in a place, or one in each of several places. */
function standing(places: Cell | undefined): Named {
  if (places === undefined) return { on: 'board' };
  const list = String(places).split(/\s+/);
  const [only = ''] = list;
  return { in: list.length === 1 ? only : list };
}

function boardsOf(answers: Answers): Named {
  const [row] = jobRows(answers, 'board');
  if (!row) return {};
  const { x, y, width, height, ...cells } = row.cells;
  const outline = filled('rectangle', known({ width, height }));
  return { board: { ...filled('at', known({ x, y })), ...filled('outline', outline), ...cells } };
}

type Titled = Readonly<Record<string, { readonly title: string }>>;

function titles(things: Titled): string[] {
  return Object.entries(things).map(([id, { title }]) => `${id} (${title})`);
}

function soundPoints({ spaces }: Vehicle, space: string): string[] {
  return Object.entries(spaces)
    .filter(([id]) => space === '' || id === space)
    .map(([id, { 'sound-points': points }]) => `${id}: ${Object.keys(points).join(', ')}`);
}

function fittedTerminals({ fitted }: Vehicle, parts: Parts): string[] {
  return Object.entries(fitted).map(([id, { part }]) => {
    const spec = parts[part];
    return `${id}.${spec ? Object.keys(partFacts(spec).terminals).join(' ') : ''}`;
  });
}

/** A list behind its name, one line each, as comments of a YAML file. */
function comment(name: string, lines: readonly string[]): string {
  const told = lines.length > 0 ? lines : ['none'];
  return [`# ${name}:`, ...told.map((line) => `#   ${line}`)].join('\n');
}
