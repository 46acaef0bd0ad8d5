import { printedLength } from '../../model/printed/lengths.ts';
import { listed } from '../../model/printed/listed.ts';
import type { Around } from '../draft/around.ts';
import { type BoltStack, nearestStacks, type OverPoints } from './bolt-stacks.ts';
import { boltLengths, boltsInto, type NamedBolt, type SoundPoint, sheetsFor } from './bolts.ts';

/** How many bolts that do not do are told with why. */
const mostBolts = 3;

/** Points of a board that take the same, and one of them. */
export interface AlikePoints {
  readonly names: readonly string[];
  readonly point: SoundPoint;
}

/** Bolts are made in millimetres, whatever the shop measures in; what is asked for at least is never told as less. */
const atLeast = (lengthM: number) => mm('room-asked', lengthM);
const atMost = (lengthM: number) => mm('at-most', lengthM);
function mm(name: 'room-asked' | 'at-most' | 'made', lengthM: number): string {
  return printedLength(name, lengthM, { system: 'mm', fraction: 16, mmDecimals: name === 'made' ? 1 : 0 }).mm;
}

/**
 * That no bolt holds a board at points that take the same: what was reckoned with, which bolts were tried with what each
 * lacks, and what to write instead, which was tried on all points of the board.
 */
export function noBolt(
  around: Around,
  board: string,
  over: OverPoints,
  { names, point }: AlikePoints,
): { readonly message: string; readonly remedy: string } {
  const { message, asks } = reckonedText(around, over, point);
  const stacks = nearestStacks(around, over);
  const ways = stacks.map((stack) => stackText(over, stack));
  return {
    message: `no bolt of the catalogue holds ${board} at ${listed(names)}: ${message}`,
    remedy: [
      ...(ways.length > 0 ? ways : ['no sheet and spacer of the shelf do with a bolt of the catalogue']),
      `put ${asks} into the catalogue`,
      'or write fixings: yourself',
    ].join('; '),
  };
}

/** What was reckoned with: a stack, how long a bolt has to be for it, and what those lack that there are. */
function reckonedText(
  around: Around,
  { board }: OverPoints,
  point: SoundPoint,
): { readonly message: string; readonly asks: string } {
  // Where the sheet is open, no bolt holds through any: the thinnest stands for all.
  const [sheet] = sheetsFor(around, board).toSorted((a, b) => a.part.thickness - b.part.thickness);
  const spacerM = board.spacer ?? 0;
  const stackM = (sheet?.part.thickness ?? 0) + spacerM;
  const lengths = boltLengths(around, stackM, point);
  const spacer = spacerM > 0 ? ` and a spacer of ${mm('made', spacerM)}` : ' on no spacer';
  const through = sheet ? `${sheet.id}, ${mm('made', sheet.part.thickness)},` : 'its sheet';
  const free = point['free-depth'];
  const range = Number.isFinite(lengths.mostM)
    ? `${atLeast(lengths.leastM)} to ${atMost(lengths.mostM)} long`
    : `${atLeast(lengths.leastM)} long or more`;
  const why = free === undefined ? '' : `, with ${atMost(free)} free behind`;
  const bolts = boltsInto(around, point);
  const tried = nearestBolts(bolts, lengths).map((bolt) => lackText(bolt, stackM, lengths));
  const told = tried.length > 0 ? tried.join('; ') : `there is no bolt ${point.stud} in it`;
  return {
    message: `through ${through}${spacer} it has to be ${range}${why}; ${told}`,
    asks: `a bolt ${point.stud} ${range}`,
  };
}

interface Lengths {
  readonly leastM: number;
  readonly mostM: number;
}

const lackM = ({ lengthM }: NamedBolt, { leastM, mostM }: Lengths) =>
  Math.max(leastM - lengthM, lengthM - mostM);

function nearestBolts(bolts: readonly NamedBolt[], lengths: Lengths): readonly NamedBolt[] {
  return bolts.toSorted((a, b) => lackM(a, lengths) - lackM(b, lengths)).slice(0, mostBolts);
}

/** What a bolt comes to behind the panel, and what it lacks. */
function lackText(bolt: NamedBolt, stackM: number, { leastM, mostM }: Lengths): string {
  const { id, lengthM } = bolt;
  const out =
    lengthM > stackM
      ? `${id} comes out ${mm('made', lengthM - stackM)} behind`
      : `${id} does not come through`;
  return lengthM > mostM
    ? `${out}, ${atLeast(lengthM - mostM)} too far`
    : `${out}, ${atLeast(leastM - lengthM)} too short`;
}

/** What to write for a stack that does, and the bolts that hold then. */
function stackText({ board }: OverPoints, { sheet, spacerM, bolts }: BoltStack): string {
  const ofSheet = `sheet: ${sheet.id}`;
  const height = `spacer: ${Math.round(spacerM * 1000)} mm`;
  const isOwn = sheet.id === board.sheet;
  const isHigh = Math.abs(spacerM - (board.spacer ?? 0)) < 1e-9;
  const lines = [...(isOwn ? [] : [ofSheet]), ...(isHigh || spacerM === 0 ? [] : [height])];
  const done = [
    ...(lines.length > 0 ? [`write ${listed(lines)}`] : []),
    ...(isHigh || spacerM > 0 ? [] : ['take spacer: out']),
  ];
  const left = isOwn ? ` with ${ofSheet}` : isHigh && spacerM > 0 ? ` with ${height}` : '';
  return `${listed(done)}${left}, and ${listed(bolts)} ${bolts.length === 1 ? 'holds' : 'hold'} at all of its points`;
}
