import { type Item, type PlacedTerminal, type Placement, terminalOnBoard } from '../../board/layout/item.ts';
import { boxOf, type Point } from '../../board/shape/point.ts';
import { hasFields } from '../../model/content/proposal.ts';
import {
  bodyId,
  type Job,
  type Link,
  type LinkEnd,
  type Run,
  terminalId,
} from '../../model/content/resolved-job.ts';
import { linkName } from '../../model/ports/pair-name.ts';
import { printedMetres } from '../../model/printed/lengths.ts';
import type { ValueOrigin } from '../../model/trace.ts';
import type { Edge } from '../../model/vocabulary.ts';
import type { LaidBoard } from '../board/laid-board.ts';
import type { DevicesById } from './conductor-role.ts';
import { alongRunM, liesOnWay } from './joints.ts';
import { boardToRim } from './lengths/board-to-rim.ts';
import { ownWay } from './runs/own-way.ts';

/** Length of a link's conductor, and how it came about. */
export interface WireLength {
  readonly lengthM: number;
  /** In words, for the cut list: `given`, what rule computed or assumed it, or the sum. */
  readonly measured: string;
  /** Who says the whole length, where it is cut as it stands with no loop added. */
  readonly cutAs?: ValueOrigin;
  /** What it is the sum of, by name (m); none where it was given. */
  readonly parts: readonly (readonly [name: string, lengthM: number])[];
}

/** Lengths by link id, of one pass. */
export type WireLengths = (link: string) => WireLength;

/** A wire on its boards as routed (m), and from there to the rim of the space, where its way through the vehicle begins. */
export interface RoutedWay {
  readonly boardM: number;
  readonly rimM: number;
}

/** Wires on their boards as routed, by link id; none before the first routing. */
export type RoutedWays = ReadonlyMap<string, RoutedWay>;

/**
 * The length of every conductor: as given, as made, as the vehicle's maker laid it, or the sum of its way on
 * the board (routed, or across the placed terminals until it is), from the board to the rim of its space, its run through
 * the vehicle and its service loops.
 */
export function wireLengths(
  job: Job,
  devices: DevicesById,
  laid: readonly LaidBoard[],
  routed: RoutedWays,
): WireLengths {
  const lengths = new Map(job.links.map((link) => [link.id, lengthOf(job, devices, laid, routed, link)]));
  return (link) => {
    const found = lengths.get(link);
    if (!found) throw new Error(`No length for the link ${link}: it is not of this job.`);
    return found;
  };
}

function lengthOf(
  job: Job,
  devices: DevicesById,
  laid: readonly LaidBoard[],
  routed: RoutedWays,
  link: Link,
): WireLength {
  const whole = (lengthM: number, measured: string): WireLength => ({ lengthM, measured, parts: [] });
  if (link.fitted) return whole(link.fitted.length, 'fitted by the vehicle maker');
  if (link.given?.length !== undefined) return writtenLength(job, link, link.given.length);
  const cable = link.cable ? job.parts[link.cable.part] : undefined;
  if (cable?.kind === 'cable' && cable['made-length'] !== undefined)
    return whole(cable['made-length'], 'made length of the lead');
  const branch = link.given?.branch;
  const { run, ends, runM, hingesM, loopsM } = offBoard(job, devices, link);
  const { boardM, rimM } = routed.get(link.id) ?? acrossBoard(ends, laid, run?.route);
  const parts = [
    ...(branch ? [['shared', branch.after] as const, ['leg', branch.leg] as const] : []),
    ...(!branch && runM > 0 ? [['run', runM] as const] : []),
    ...(hingesM > 0 ? [['hinges', hingesM] as const] : []),
    ...(boardM > 0 ? [['board', boardM] as const] : []),
    ...(rimM > 0 ? [['board to rim', rimM] as const] : []),
    ['loops', loopsM] as const,
  ];
  const told = (name: string): string =>
    name.startsWith('board') && !routed.has(link.id) ? ' estimated' : '';
  const texts = parts.map(
    ([name, lengthM]) => `${name} ${printedMetres('wire', lengthM).replace(' m', '')}${told(name)}`,
  );
  return {
    lengthM: parts.reduce((sum, [, lengthM]) => sum + lengthM, 0),
    measured: `${texts.join(' + ')} m`,
    parts,
  };
}

/** What of a link that is cut to its way lies off its boards and their spaces: its run, slack at hinges, loops (m). */
export function offBoard(job: Job, devices: DevicesById, link: Link) {
  const run = job.runs.find(({ id }) => id === link.run);
  const runM = run ? alongRunM(job, link, run) : 0;
  const hingesM = ownWay(job, devices, link).hinges * job.rules['hinge-slack'].value;
  const ends = [link.from, link.to].filter((end) => !liesOnWay(job, link, end));
  const loopsM = ends.reduce((sum, end) => sum + loopM(job, devices, end), 0);
  return { run, ends, runM, hingesM, loopsM };
}

/** A length that stands in the job: of one that rules proposed, what of it was reckoned and what nobody measured. */
function writtenLength(job: Job, { id }: Link, lengthM: number): WireLength {
  if (job.held?.lengths.includes(id))
    return { lengthM, measured: `as cut for revision ${job.held.revision}`, parts: [] };
  const proposal = job.proposals.find(
    ({ path: [section, link], value }) =>
      section === 'links' && link === linkName(id) && hasFields(value) && value.length !== undefined,
  );
  if (!proposal) return { lengthM, measured: 'given', cutAs: 'given', parts: [] };
  const cutAs = proposal.doubt === 'not-measured' ? 'assumed' : 'computed';
  return { lengthM, measured: `${cutAs} by the rule ${proposal.rule}`, cutAs, parts: [] };
}

/**
 * Service loop at one end of a link: none in a length that was given or made, which is cut and laid as it is; otherwise
 * more at a speaker and in the vehicle than on the board.
 */
export function endLoopM(job: Job, devices: DevicesById, link: Link, end: LinkEnd): number {
  return isCutToMeasure(job, link) ? loopM(job, devices, end) : 0;
}

/** True for a conductor whose length is reckoned from its way, and neither given nor made. */
export function isCutToMeasure(job: Pick<Job, 'parts'>, link: Link): boolean {
  const cable = link.cable ? job.parts[link.cable.part] : undefined;
  const isMade = cable?.kind === 'cable' && cable['made-length'] !== undefined;
  return !link.fitted && link.given?.length === undefined && !isMade;
}

/** Service loop at an end of a conductor that is cut to measure: more at a speaker and in the vehicle than on the board. */
export function loopM({ rules }: Pick<Job, 'rules'>, devices: DevicesById, end: LinkEnd): number {
  const device = devices.get(end.device);
  if (device?.board) return rules['loop-board'].value;
  if (end.device === bodyId) return 0;
  const isSpeaker = device?.spec?.kind === 'speaker' || device?.spec?.kind === 'enclosure';
  return rules[isSpeaker ? 'loop-speaker' : 'loop-vehicle'].value;
}

/** Level and upright distance on the board between the ends of a link, or from its end to where it leaves and on to the rim. */
function acrossBoard(
  within: readonly LinkEnd[],
  laid: readonly LaidBoard[],
  route: Run['route'] | undefined,
): RoutedWay {
  const ends = within.flatMap((end) => terminalPoint(laid, end) ?? []);
  const [first, second] = ends;
  if (!first) return { boardM: 0, rimM: 0 };
  if (second && second.board === first.board)
    return { boardM: Math.abs(first.at.xM - second.at.xM) + Math.abs(first.at.yM - second.at.yM), rimM: 0 };
  const edge = route?.reaches?.edge;
  const leaving = ends.map(({ board, at }) => {
    const exits = exitsStraight(board, at).filter((exit) => !edge || exit.edge === edge);
    const boardM = Math.max(0, ...exits.map(({ lengthM }) => lengthM));
    const rims = exits.map((exit) => boardToRim(board.board, route, exit)?.mostM ?? 0);
    return { boardM, rimM: Math.max(0, ...rims) };
  });
  return {
    boardM: leaving.reduce((sum, { boardM }) => sum + boardM, 0),
    rimM: leaving.reduce((sum, { rimM }) => sum + rimM, 0),
  };
}

/** The edges of a board straight from a point, and where on each (m). */
function exitsStraight(
  { shape }: LaidBoard,
  { xM, yM }: Point,
): readonly (Point & { readonly edge: Edge; readonly lengthM: number })[] {
  const { minX, maxX, minY, maxY } = boxOf(shape.outline);
  return [
    { edge: 'left', xM: minX, yM, lengthM: xM - minX },
    { edge: 'right', xM: maxX, yM, lengthM: maxX - xM },
    { edge: 'bottom', xM, yM: minY, lengthM: yM - minY },
    { edge: 'top', xM, yM: maxY, lengthM: maxY - yM },
  ];
}

interface OnBoard {
  readonly board: LaidBoard;
  readonly at: PlacedTerminal;
}

function terminalPoint(laid: readonly LaidBoard[], end: LinkEnd): OnBoard | null {
  for (const board of laid) {
    const item = board.items.find(({ id }) => id === end.device);
    const at = board.placements.find(({ item: id }) => id === end.device);
    const point = item && at ? placedTerminal(item, at, end) : null;
    if (point) return { board, at: point };
  }
  return null;
}

function placedTerminal(item: Item, at: Placement, end: LinkEnd): PlacedTerminal | null {
  const terminal = item.terminals.find(({ id }) => id === terminalId(end));
  return terminal ? terminalOnBoard(item, at, terminal) : null;
}
