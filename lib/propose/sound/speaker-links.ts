import type { Around } from '../draft/around.ts';
import type { Draft, Why } from '../draft/draft.ts';
import { type DraftDevice, pairOf } from '../draft/draft-device.ts';
import { lengthOver } from '../draft/shop-lengths.ts';
import type { DrivenOutputs } from './bass-channels.ts';
import { postsOf } from './box-posts.ts';
import { type CoilJoin, coilsOf, type WiredOutput } from './coil-wiring.ts';

/** Writes the links from the outputs of amplifiers to their speakers, and those between the coils of a speaker. */
export function linkSpeakers(draft: Draft, driven: readonly DrivenOutputs[]): void {
  for (const { outputs, reason } of driven)
    for (const output of outputs) {
      const why: Why = { rule: 'channels', reason, cp: true };
      if (output.join.speakers === 'series') linkInSeries(draft, output, why);
      else for (const speaker of output.speakers) linkSpeaker(draft, speaker, output, why);
    }
}

/** Links speakers one after the other: from the output to the first, from each to the next, from the last back. */
function linkInSeries(draft: Draft, { output, speakers, join }: WiredOutput, why: Why): void {
  let from = `${output.amplifier}.${output.spec.positive}`;
  for (const [at, speaker] of speakers.entries()) {
    const ends = endsOf(draft, speaker, join.coils);
    if (!ends) return;
    const name = `to-${speaker.id}-${at === 0 ? 'plus' : 'series'}`;
    draft.addLink(name, { from, to: `${ends.device.id}.${ends.plus}` }, why, speaker.id);
    linkInside(draft, speaker, join.coils);
    joinCoils(draft, speaker, join.coils, why);
    from = `${ends.device.id}.${ends.minus}`;
  }
  const end = speakers.at(-1)?.id ?? '';
  const back = { from: `${output.amplifier}.${output.spec.negative}`, to: from };
  draft.addLink(`to-${end}-minus`, back, why, end);
}

function linkSpeaker(draft: Draft, speaker: DraftDevice, { output, join }: WiredOutput, why: Why): void {
  const device = draft.device(output.amplifier);
  const { positive, negative } = output.spec;
  if (device) linkToOutput(draft, speaker, { device, positive, negative, coils: join.coils }, why);
}

/** The terminals of an output, and how the coils of a speaker hang on it. */
export interface OutputEnds {
  readonly device: DraftDevice;
  readonly positive: string;
  readonly negative: string;
  readonly coils: CoilJoin['coils'];
}

/** Links a speaker to an output, as a pair where both ends are one, and its coils with each other. */
export function linkToOutput(
  draft: Draft,
  speaker: DraftDevice,
  { device, positive, negative, coils: how }: OutputEnds,
  why: Why,
): void {
  const to = endsOf(draft, speaker, how);
  if (!to) return;
  const from = { device, plus: positive, minus: negative };
  linkBoth(draft, `to-${speaker.id}`, { from, to, about: speaker.id, why });
  linkInside(draft, speaker, how);
  joinCoils(draft, speaker, how, why);
}

/** A plus and a minus of one device. */
interface PairEnds {
  readonly device: DraftDevice;
  readonly plus: string;
  readonly minus: string;
}

/** Two conductors from one device to another. */
interface Both {
  readonly from: PairEnds;
  readonly to: PairEnds;
  readonly about: string;
  readonly why: Why;
  readonly length?: string;
}

/** Links plus and minus of two devices: as a pair where both ends are one by their names, else each by itself. */
function linkBoth(draft: Draft, name: string, { from, to, about, why, length }: Both): void {
  const add = (id: string, out: string, end: string): void => {
    const ends = { from: `${from.device.id}.${out}`, to: `${to.device.id}.${end}` };
    draft.addLink(id, { ...ends, ...(length !== undefined && { length }) }, why, about);
  };
  const outer = pairName(from.device, from.plus, from.minus);
  const inner = pairName(to.device, to.plus, to.minus);
  if (outer !== null && inner !== null) add(name, outer, inner);
  else {
    add(`${name}-plus`, from.plus, to.plus);
    add(`${name}-minus`, from.minus, to.minus);
  }
}

/**
 * The lead from the posts of a box to its speaker where none came with it: no two points in a box lie farther apart than its
 * corners, and a loop lets the speaker lie before its opening while it is joined.
 */
function linkInside(draft: Draft, speaker: DraftDevice, how: CoilJoin['coils']): void {
  const posts = postsOf(draft, speaker);
  const coils = coilEnds(speaker, how);
  if (posts?.box.spec.kind !== 'enclosure' || posts.box.spec['lead-inside'] !== false || !coils) return;
  const { box, plus, minus } = posts;
  const { width, depth, height } = posts.box.spec.size;
  const length = lengthOver(
    draft.around,
    Math.hypot(width, depth, height) + draft.around.rules['loop-speaker'].value,
  );
  const why: Why = {
    rule: 'channels',
    reason: `no lead came inside ${box.id}: one as long as from corner to corner of it, and the loop at a speaker`,
    cp: true,
  };
  const from = { device: box, plus, minus };
  linkBoth(draft, `${speaker.id}-lead`, { from, to: coils, about: speaker.id, why, length });
}

/** The outer terminals of the coils of a speaker: plus of the first, minus of the last that hangs in series with it. */
function coilEnds(speaker: DraftDevice, how: CoilJoin['coils']): PairEnds | null {
  const coils = coilsOf(speaker);
  const [first] = coils;
  const last = how === 'series' ? coils.at(-1) : first;
  return first && last ? { device: speaker, plus: first.positive, minus: last.negative } : null;
}

/**
 * Where plus and minus of an output arrive: at the posts of the box where it has a pair, else at the speaker itself, the
 * other way round where it is meant to be wired with reversed polarity.
 */
function endsOf(draft: Draft, speaker: DraftDevice, how: CoilJoin['coils']): PairEnds | null {
  const posts = postsOf(draft, speaker);
  const ends = posts ? { device: posts.box, plus: posts.plus, minus: posts.minus } : coilEnds(speaker, how);
  return ends && meantReversed(speaker) ? { ...ends, plus: ends.minus, minus: ends.plus } : ends;
}

/** True for a speaker that is declared as reversed, or mounted back to front, and not both. */
function meantReversed({ spec, given }: DraftDevice): boolean {
  return spec.kind === 'speaker' && (given?.mounted === 'reversed') !== (given?.reversed !== undefined);
}

/** The jumpers between the coils of a speaker, each as long as its frame is wide, to the next inch or centimetre. */
function joinCoils(draft: Draft, speaker: DraftDevice, how: CoilJoin['coils'], why: Why): void {
  const coils = coilsOf(speaker);
  const length = jumperLength(draft.around, speaker);
  for (const [at, coil] of coils.entries()) {
    const next = coils[at + 1];
    if (!next || how === 'one') return;
    const name =
      coils.length > 2
        ? `${speaker.id}-${how}-${next.name.toLowerCase()}`
        : `${speaker.id}-${how === 'series' ? 'series' : 'jumper'}`;
    const pairs = [coil, next].map((one) => pairName(speaker, one.positive, one.negative));
    const [own, other] = pairs;
    if (how === 'series')
      draft.addLink(
        name,
        { from: `${speaker.id}.${coil.negative}`, to: `${speaker.id}.${next.positive}`, length },
        why,
        speaker.id,
      );
    else if (own && other)
      draft.addLink(
        name,
        { from: `${speaker.id}.${own}`, to: `${speaker.id}.${other}`, length },
        why,
        speaker.id,
      );
    else
      for (const side of ['positive', 'negative'] as const)
        draft.addLink(
          `${name}-${side === 'positive' ? 'plus' : 'minus'}`,
          { from: `${speaker.id}.${coil[side]}`, to: `${speaker.id}.${next[side]}`, length },
          why,
          speaker.id,
        );
  }
}

function jumperLength(around: Around, { spec }: DraftDevice): string {
  return lengthOver(around, spec.kind === 'speaker' ? spec.size.width : 0);
}

/** The name of the pair that two terminals make; null where they make none. */
function pairName(device: DraftDevice, positive: string, negative: string): string | null {
  const stem = positive.replace(/\+$/, '');
  const pair = stem !== positive ? pairOf(device, stem) : null;
  return pair?.[1] === negative ? stem : null;
}
