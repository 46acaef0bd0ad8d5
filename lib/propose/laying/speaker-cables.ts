import { leastBassAwg } from '../../audio/load/bass-lead.ts';
import { speakerWireLoss } from '../../audio/load/speaker-wire-loss.ts';
import type { JobLink } from '../../model/content/job.ts';
import { linkEndOf } from '../../model/content/resolved-job.ts';
import { isFault } from '../../model/fault.ts';
import type { TerminalSpec } from '../../model/kinds/fields/terminal-spec.ts';
import type { PartOf } from '../../model/kinds/index.ts';
import { awgAreaMm2 } from '../../model/tables/awg-sizes.ts';
import type { TerminalRole } from '../../model/vocabulary.ts';
import { ambientRules } from '../../model/zone-ambient.ts';
import { ohmPerM } from '../../power/conductor/resistance.ts';
import { powerRules } from '../../power/house-power-rules.ts';
import { shelfLengths } from '../../shelf/shelf-lengths.ts';
import type { Draft, Why } from '../draft/draft.ts';
import { pairOf, terminalAt } from '../draft/draft-device.ts';
import { isPlain } from '../draft/plain-link.ts';
import type { DrivenOutputs } from '../sound/bass-channels.ts';
import { speakerAt } from '../sound/box-posts.ts';
import type { WiredOutput } from '../sound/coil-wiring.ts';
import { wayOf } from './link-way.ts';
import { linkRole } from './runs.ts';

type Cable = PartOf<'cable'>;

/** Two conductors that lead to one speaker together: of one link that is a pair, or of a plus and a minus. */
interface Pair {
  readonly name: string;
  /** Links in the order plus, minus; a pair is one link. */
  readonly links: readonly string[];
  readonly first: JobLink;
  /** True for one that is led in single conductors where the shelf has them. */
  readonly bySingles: boolean;
}

/** A cable of two conductors on the shelf, of one size. */
interface SpeakerCable {
  readonly part: string;
  readonly spec: Cable;
  readonly areaMm2: number;
  /** Its conductors, that of the plus first. */
  readonly conductors: readonly [plus: string, minus: string];
}

/**
 * Gives each pair to a speaker one lead of two conductors where the shelf has such a cable: the thinnest that goes into the
 * terminals at both ends, keeps the loss that the house allows, is a bass lead of the size that its load asks for, withstands
 * its zones, and lies there in one piece. Where none does, the pair stays two single conductors. What is joined to leads of
 * a maker, and what joins the coils of one speaker, is led in singles as long as the shelf has these.
 */
export function cableSpeakers(draft: Draft, driven: readonly DrivenOutputs[]): void {
  const shelf = shelfOf(draft);
  if (shelf.length === 0) return;
  const outputs = driven.flatMap((one) => one.outputs);
  const left = new Map(
    shelf.map(({ part }) => [part, shelfLengths(draft.around.shop.stock[part]).map(({ freeM }) => freeM)]),
  );
  for (const pair of pairsOf(draft)) {
    const { lengthM } = wayOf(draft, pair.links[0] ?? '', pair.first);
    if (pair.bySingles && hasSingles(draft, lengthM)) continue;
    const chosen = shelf
      .filter((cable) => fits(draft, outputs, pair, cable))
      .find(({ part }) => takeFrom(left.get(part) ?? [], lengthM));
    if (chosen) layIn(draft, pair, chosen);
  }
}

function layIn(draft: Draft, { name, links, first }: Pair, { part, conductors }: SpeakerCable): void {
  const cable = draft.freeName(`cable-${name}`, 'speaker');
  const why: Why = {
    rule: 'cables',
    reason: `one lead of two conductors for ${name}, from the shelf: the thinnest there that its load, its length and its terminals allow`,
    cp: true,
  };
  draft.addCable(cable, part, why, linkEndOf(first.to).device);
  for (const [at, id] of links.entries()) {
    const laid = {
      cable,
      conductors: links.length === 1 ? [...conductors] : [conductors[at] ?? conductors[0]],
    };
    if (draft.isProposed('links', id)) draft.refineLink(id, laid);
    else draft.cableLink(id, laid, why);
  }
}

/** Cables of two conductors of one size that lie on the shelf, thin first. */
function shelfOf({ around: { parts, shop } }: Draft): readonly SpeakerCable[] {
  return Object.entries(parts)
    .flatMap(([part, spec]): SpeakerCable[] => {
      if (spec.kind !== 'cable' || spec['made-length'] !== undefined || !spec.for.includes('speaker'))
        return [];
      if (shelfLengths(shop.stock[part]).length === 0) return [];
      const [one, other, third] = Object.entries(spec.conductors);
      if (!one || !other || third || one[1].size.areaMm2 !== other[1].size.areaMm2) return [];
      const [plus, minus] = isMinus(one[1].colour) && !isMinus(other[1].colour) ? [other, one] : [one, other];
      return [{ part, spec, areaMm2: one[1].size.areaMm2, conductors: [plus[0], minus[0]] }];
    })
    .toSorted((a, b) => a.areaMm2 - b.areaMm2 || (a.part < b.part ? -1 : 1));
}

/** Black, or striped with it, is the negative of a pair: common practice, no source. */
const isMinus = (colour: string) => colour === 'BK' || colour.endsWith('/BK');

/** True where single conductors for a plus and a minus lie on the shelf, each in one piece. */
function hasSingles({ around: { parts, shop } }: Draft, lengthM: number): boolean {
  const reels = Object.entries(parts).filter(
    ([part, spec]) =>
      spec.kind === 'wire' &&
      spec.for.includes('speaker') &&
      shelfLengths(shop.stock[part]).some(({ freeM }) => freeM >= lengthM),
  );
  return reels.length >= 2;
}

/**
 * The pairs to speakers that nothing says a conductor of, proposed or written; a jumper that is written, and what hangs in
 * series from one speaker to the next, are none.
 */
function pairsOf(draft: Draft): readonly Pair[] {
  const open = Object.entries(draft.links).filter(
    ([id, link]) =>
      (draft.isProposed('links', id) || (isPlain(link) && between(link).length === 2)) &&
      link.cable === undefined &&
      linkRole(draft, link) === 'speaker',
  );
  return open.flatMap(([id, first]): Pair[] => {
    const ends = [linkEndOf(first.from), linkEndOf(first.to)];
    const isJumper = between(first).length < 2;
    const bySingles = isJumper || ends.some(({ device, terminal }) => isSupplied(draft, device, terminal));
    if (ends.every(({ device, terminal }) => isPair(draft, device, terminal)))
      return [{ name: id, links: [id], first, bySingles }];
    const minus = isJumper ? null : minusOf(draft, [id, first], open);
    return minus === null ? [] : [{ name: id.replace(/-plus$/, ''), links: [id, minus], first, bySingles }];
  });
}

/**
 * The link that goes the same way as a plus: by its name, or the only one from a negative output between the two devices
 * where there is but one from a positive. Null where there is none, or where it is told otherwise.
 */
function minusOf(
  draft: Draft,
  [id, plus]: readonly [string, JobLink],
  open: readonly (readonly [string, JobLink])[],
): string | null {
  const beside = open.filter(
    ([, link]) => between(link).toSorted().join(' ') === between(plus).toSorted().join(' '),
  );
  const named = beside.find(
    ([other]) => id.endsWith('-plus') && other === `${id.slice(0, -'plus'.length)}minus`,
  );
  if (named) return named[0];
  const from = (role: TerminalRole) =>
    beside.filter(([, link]) => comesFrom(draft, link, role)).map(([one]) => one);
  const [pluses, minuses] = [from('speaker-out-positive'), from('speaker-out-negative')];
  return pluses.length === 1 && minuses.length === 1 && pluses[0] === id ? (minuses[0] ?? null) : null;
}

/** True where one end of a link is a terminal of a role. */
function comesFrom(draft: Draft, { from, to }: JobLink, role: TerminalRole): boolean {
  return [from, to].some((end) => terminalsAt(draft, end).some((terminal) => terminal.role === role));
}

/** The devices at the ends of a link. */
function between({ from, to }: JobLink): readonly string[] {
  return [...new Set([linkEndOf(from).device, linkEndOf(to).device])];
}

const isPair = (draft: Draft, id: string, terminal: string): boolean => {
  const device = draft.device(id);
  return device !== null && pairOf(device, terminal) !== null;
};

/** The terminals that a name stands for, one or a pair. */
function terminalsAt(draft: Draft, reference: string): readonly TerminalSpec[] {
  const { device: id, terminal } = linkEndOf(reference);
  const device = draft.device(id);
  const names = (device && pairOf(device, terminal)) ?? [terminal];
  return names.flatMap((name) => (device && terminalAt(device, name)) ?? []);
}

const isSupplied = (draft: Draft, device: string, terminal: string): boolean =>
  terminalsAt(draft, `${device}.${terminal}`).some(({ joint }) => joint === 'supplied-lead');

function fits(
  draft: Draft,
  outputs: readonly WiredOutput[],
  { links: [id = ''], first }: Pair,
  { spec, areaMm2 }: SpeakerCable,
): boolean {
  const { rules } = draft.around;
  const takes = [first.from, first.to].flatMap((end) =>
    terminalsAt(draft, end).flatMap(({ takes: range, joint }) =>
      range && joint !== 'supplied-lead' ? [range] : [],
    ),
  );
  const mostMm2 = Math.min(...takes.map(({ to }) => to.areaMm2));
  const leastMm2 = Math.max(0, ...takes.map(({ from }) => from.areaMm2));
  if (areaMm2 > mostMm2 * 1.001 || areaMm2 < leastMm2 * 0.999) return false;
  const withstandsC = spec.insulation ?? rules['insulation-unmarked'].value;
  if (wayOf(draft, id, first).zones.some((zone) => rules[ambientRules[zone]].value >= withstandsC))
    return false;
  const output = outputOf(draft, outputs, first);
  // Past the largest that the terminals take, no lead does more.
  return !output || areaMm2 >= mostMm2 * 0.999 || isEnough(draft, output, areaMm2);
}

/** The output of an amplifier that drives what a link leads to, through a passive crossover too. */
function outputOf(draft: Draft, outputs: readonly WiredOutput[], { from, to }: JobLink): WiredOutput | null {
  const ids = [from, to].map((end) => speakerAt(draft, linkEndOf(end).device));
  const own = outputs.find(({ speakers }) => speakers.some(({ id }) => ids.includes(id)));
  return own ?? null;
}

/** True for a size in which the whole way of an output keeps the loss that the house allows, and a bass lead its size. */
function isEnough(draft: Draft, output: WiredOutput, areaMm2: number): boolean {
  const { rules } = draft.around;
  const { speakers, loadOhm } = output;
  const isBass = speakers.some(({ spec }) => spec.kind === 'speaker' && spec.band === 'subwoofer');
  const bassAwg = isBass ? leastBassAwg(loadOhm) : null;
  if (bassAwg !== null && areaMm2 < awgAreaMm2(bassAwg) * 0.999) return false;
  const electrical = powerRules(rules);
  const perM = ohmPerM({ areaMm2, material: 'copper' }, electrical.conductorC, electrical);
  if (isFault(perM)) return false;
  const loss = speakerWireLoss({
    channel: `${output.output.amplifier}.${output.output.name}`,
    loadOhm,
    legs: [{ lengthM: wholeWayM(draft, output), ohmPerM: perM.value }],
  });
  return !isFault(loss) && loss.lossDb.value <= rules['speaker-loss'].value;
}

/** The longest way from an output up to its speakers or crossovers, and the longest from a crossover on (m). */
function wholeWayM(draft: Draft, { output: { amplifier }, speakers }: WiredOutput): number {
  const ids = speakers.map(({ id }) => id);
  const own = Object.entries(draft.links).filter(
    ([, link]) =>
      linkRole(draft, link) === 'speaker' && between(link).some((id) => ids.includes(speakerAt(draft, id))),
  );
  const longestM = (links: typeof own) =>
    Math.max(0, ...links.map(([id, link]) => wayOf(draft, id, link).lengthM));
  const isUpTo = ([, link]: (typeof own)[number]) => between(link).includes(amplifier);
  return longestM(own.filter(isUpTo)) + longestM(own.filter((one) => !isUpTo(one)));
}

/** Cuts a length off the shortest piece that is long enough; false where none is. */
function takeFrom(pieces: number[], lengthM: number): boolean {
  const enough = pieces.filter((one) => one >= lengthM);
  if (enough.length === 0) return false;
  const at = pieces.indexOf(Math.min(...enough));
  pieces[at] = (pieces[at] ?? 0) - lengthM;
  return true;
}
