import { type BoardRemark, length, phrase } from '../../board/remark.ts';
import { bendRadiusM } from '../../board/route/bend-radius.ts';
import { kinkedBend } from '../../board/route/bends.ts';
import { isPoint, type Route, type RouteWire } from '../../board/route/route.ts';
import { routingDefaults } from '../../board/route/routing.ts';
import type { Job, Link } from '../../model/content/resolved-job.ts';
import { linkEntry } from '../../model/ports/pair-name.ts';
import { amps, ampsDrawn, voltsLost } from '../../model/printed/told.ts';
import type { JudgedCable } from '../../power/conductor/conductor-choice.ts';
import { isKink } from '../power/sizing/bend-bounds.ts';
import type { SizedConductor } from '../power/sizing/conductor-sizing.ts';
import { wireDiameterM } from '../wiring/wire-diameter.ts';
import type { BoardWire } from './board-wires.ts';

/** What was routed on a board, and how thick its conductors are. */
interface Routed {
  readonly wires: readonly BoardWire[];
  readonly tasks: readonly RouteWire[];
  readonly routes: readonly Route[];
  readonly sized: ReadonlyMap<string, SizedConductor>;
}

/** A wire that kinks, and those that leave the same device by the same side. */
interface Kinked {
  readonly own: SizedConductor;
  readonly task: RouteWire;
  readonly mates: readonly { readonly sized: SizedConductor; readonly task: RouteWire }[];
}

/**
 * The remarks of routing, with more said of a conductor that kinks: its size; the straight way that all conductors of
 * that end ask for, one beside the other; and the thickest size that bends there, with the lines to write where its fuse
 * allows it, else by how much it does not.
 */
export function withThinnerForBend(
  job: Job,
  faults: readonly BoardRemark[],
  routed: Routed,
): readonly BoardRemark[] {
  return faults.map((fault): BoardRemark => {
    const kinked = fault.rule === 'bend-too-tight' && isKink(fault) ? kinkedWire(fault.of[0], routed) : null;
    const route = routed.routes.find(({ wire }) => wire === kinked?.own.link.id);
    const { label } = kinked?.own.cable.size ?? {};
    if (!kinked || !route || label === undefined || fault.rule !== 'bend-too-tight') return fault;
    const { task, own } = kinked;
    const open = { from: !isPoint(task.from), to: !isPoint(task.to) };
    const bend = kinkedBend(route, task.kinkRadiusM ?? 0, open);
    if (!bend) return fault;
    const lackM = bend.bends * ((task.bendRadiusM ?? 0) - bend.radiusM) + besideM(kinked);
    const others = kinked.mates.map(({ sized }) => sized.link.id);
    const beside = others.length > 0 ? `, room for ${others.join(', ')} beside it counted` : '';
    const thinner = thinnerText(job, kinked, bend.radiusM);
    return {
      ...fault,
      ...(thinner.writesAt.length > 0 && { writesAt: thinner.writesAt }),
      message: phrase`${fault.message}; ${own.link.id} is ${label}`,
      remedy: phrase`${thinner.text === '' ? '' : `${thinner.text}; or `}give it ${length('room-asked', lackM)} more of straight way there${beside}: move the part that it runs to, turn its terminal, or take a finer-stranded conductor`,
    };
  });
}

function kinkedWire(id: string | undefined, { wires, tasks, sized }: Routed): Kinked | null {
  const board = wires.find(({ link }) => link.id === id);
  const task = tasks.find((one) => one.id === id);
  const own = id === undefined ? undefined : sized.get(id);
  if (!board || !task || !own) return null;
  const mates = wires.flatMap(({ link }) => {
    const other = tasks.find((one) => one.id === link.id);
    const thick = sized.get(link.id);
    return other && thick && thick !== own && isBeside(board.link, task, link, other)
      ? [{ sized: thick, task: other }]
      : [];
  });
  return { own, task, mates: mates.filter(({ sized: { role } }) => role === 'power' || role === 'ground') };
}

/** True for two wires that leave one device by the same side. */
function isBeside(link: Link, task: RouteWire, other: Link, otherTask: RouteWire): boolean {
  const ends = (one: Link, { from, to }: RouteWire) => [
    ...(isPoint(from) ? [`${one.from.device} ${from.faces}`] : []),
    ...(isPoint(to) ? [`${one.to.device} ${to.faces}`] : []),
  ];
  return ends(link, task).some((end) => ends(other, otherTask).includes(end));
}

/** What the conductors beside a wire take of the room before their end, each on a line of its own. */
function besideM({ mates }: Kinked): number {
  return mates.reduce((sum, { task }) => sum + task.diameterM + routingDefaults.clearanceM, 0);
}

/** The limits of a conductor that a bend is no reason to pass. */
const lawful: readonly JudgedCable['misses'][number]['limit'][] = ['fuse', 'port'];

/** What the thickest conductor that bends to a radius would carry and lose, and the lines that ask for it. */
function thinnerText(
  job: Job,
  { own, mates }: Kinked,
  radiusM: number,
): { readonly text: string; readonly writesAt: readonly (readonly string[])[] } {
  const kinkDiameters = job.rules['bend-diameters-limit'].value;
  const bends = own.thinner.find(
    ({ candidate }) => bendRadiusM(wireDiameterM(job, candidate), kinkDiameters) <= radiusM + 1e-9,
  );
  if (!bends) return { text: '', writesAt: [] };
  const { size } = bends.candidate;
  const misses = bends.misses.filter(({ limit }) => lawful.includes(limit));
  if (misses.length > 0)
    return {
      text: `${size.label} would bend there, but ${misses.map(({ text }) => text).join('; ')}: a smaller fuse lets a thinner one be taken`,
      writesAt: [],
    };
  const all = [own, ...mates.map(({ sized }) => sized)];
  const thick = all.filter(({ cable }) => cable.size.areaMm2 > size.areaMm2 * 1.001);
  const lostV = bends.dropV.value - (own.judged?.dropV.value ?? bends.dropV.value);
  const loses = lostV > 0 ? `, and loses ${voltsLost(lostV)} more at rated power` : '';
  const fuse = own.neededA > 0 ? ` for a fuse of ${ampsDrawn(own.neededA)}` : '';
  return {
    text: `write size: ${size.label} at ${thick.map(({ link }) => link.id).join(' and ')}: it bends there, carries ${amps(bends.ampacity.ampacityA.value)}${fuse}${loses}`,
    writesAt: thick.map(({ link }) => linkEntry(link.id)),
  };
}
