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
  const ends = endsOf(draft, speaker, how);
  if (!ends) return;
  const about = speaker.id;
  const outputPair = pairName(device, positive, negative);
  const at = ends.device;
  const coilPair = pairName(at, ends.plus, ends.minus);
  if (outputPair !== null && coilPair !== null)
    draft.addLink(
      `to-${speaker.id}`,
      { from: `${device.id}.${outputPair}`, to: `${at.id}.${coilPair}` },
      why,
      about,
    );
  else {
    const plus = { from: `${device.id}.${positive}`, to: `${at.id}.${ends.plus}` };
    const minus = { from: `${device.id}.${negative}`, to: `${at.id}.${ends.minus}` };
    draft.addLink(`to-${speaker.id}-plus`, plus, why, about);
    draft.addLink(`to-${speaker.id}-minus`, minus, why, about);
  }
  linkInside(draft, speaker, how);
  joinCoils(draft, speaker, how, why);
}

/**
 * The lead from the posts of a box to its speaker where none came with it: no two points in a box lie farther apart than its
 * corners, and a loop lets the speaker lie before its opening while it is joined.
 */
function linkInside(draft: Draft, speaker: DraftDevice, how: CoilJoin['coils']): void {
  const posts = postsOf(draft, speaker);
  const [first, ...others] = coilsOf(speaker);
  if (posts?.box.spec.kind !== 'enclosure' || posts.box.spec['lead-inside'] || !first) return;
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
  const negative = how === 'series' ? (others.at(-1) ?? first).negative : first.negative;
  const [outer, inner] = [pairName(box, plus, minus), pairName(speaker, first.positive, negative)];
  const name = `${speaker.id}-lead`;
  const ends: readonly (readonly [string, string, string])[] =
    outer !== null && inner !== null
      ? [[name, outer, inner]]
      : [
          [`${name}-plus`, plus, first.positive],
          [`${name}-minus`, minus, negative],
        ];
  for (const [id, post, end] of ends)
    draft.addLink(id, { from: `${box.id}.${post}`, to: `${speaker.id}.${end}`, length }, why, speaker.id);
}

/**
 * The terminals of a speaker at which plus and minus of its output arrive: of its first coil and its last, the other way
 * round where it is meant to be wired with reversed polarity.
 */
function endTerminals(speaker: DraftDevice, how: CoilJoin['coils']) {
  const coils = coilsOf(speaker);
  const [first] = coils;
  const last = how === 'series' ? coils.at(-1) : first;
  if (!first || !last) return null;
  return meantReversed(speaker)
    ? { plus: last.negative, minus: first.positive }
    : { plus: first.positive, minus: last.negative };
}

/** Where plus and minus of an output arrive: at the posts of the box where it has a pair, else at the speaker itself. */
function endsOf(draft: Draft, speaker: DraftDevice, how: CoilJoin['coils']) {
  const posts = postsOf(draft, speaker);
  if (!posts) {
    const ends = endTerminals(speaker, how);
    return ends && { device: speaker, ...ends };
  }
  const { box: device, plus, minus } = posts;
  return meantReversed(speaker) ? { device, plus: minus, minus: plus } : { device, plus, minus };
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
function pairName(device: DraftDevice | null, positive: string, negative: string): string | null {
  const stem = positive.replace(/\+$/, '');
  const pair = device && stem !== positive ? pairOf(device, stem) : null;
  return pair?.[1] === negative ? stem : null;
}
