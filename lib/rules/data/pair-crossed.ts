import { type Device, type LinkEnd, terminalId } from '../../model/content/resolved-job.ts';
import { terminalsOf } from '../../model/kinds/kind.ts';
import { type Told, toldBy } from '../../model/ports/carried-by-name.ts';
import { linkName, stemName } from '../../model/ports/pair-name.ts';
import type { SignalPair } from '../../model/vocabulary.ts';
import { toldAt } from '../../plan/audio/carried-sides.ts';
import { channelInputs } from '../../plan/audio/signal-path.ts';
import { sourcesOf } from '../../plan/audio/signal-sources.ts';
import { devicesById } from '../../plan/wiring/conductor-role.ts';
import { deviceOf, deviceSpot, hasRole, wireSpot } from '../look-up.ts';
import type { Case, Rule, Verdict } from '../rule.ts';
import { listed } from '../words.ts';

/** An output of a source, and what its name or what is written of it tells. */
interface ToldOutput {
  readonly end: LinkEnd;
  readonly told: Told;
}

/** What plays outputs of a source, and what it is to play; null where nothing tells. */
interface Played extends Told {
  readonly of: readonly string[];
  /** In words. */
  readonly by: string;
  readonly isBass: boolean;
  /** True behind amplifiers: a side alone has a finding of its own there, which sees the conductors of leads as well. */
  readonly isSidedElsewhere?: boolean;
  readonly outputs: readonly ToldOutput[];
}

function toldOutput({ job }: Case, end: LinkEnd): ToldOutput | null {
  const device = deviceOf(job, end.device);
  const told = device && toldAt(job, device, end.terminal);
  return told ? { end, told } : null;
}

function byChannels(about: Case): readonly Played[] {
  const { job, plan } = about;
  const devices = devicesById(job);
  return plan.audio.channels.flatMap((channel): Played[] => {
    const { outputs, isTold } = sourcesOf(job, devices, channelInputs(job, channel));
    const told = outputs.flatMap((end) => toldOutput(about, end) ?? []);
    if (!isTold || told.length < outputs.length || channel.speakers.length === 0) return [];
    const speakers = channel.speakers.flatMap((id) => deviceOf(job, id) ?? []);
    return [{ ...played(about, channel.id, speakers), isSidedElsewhere: true, outputs: told }];
  });
}

function played({ job }: Case, at: string, speakers: readonly Device[]): Omit<Played, 'outputs'> {
  const ids = speakers.map(({ id }) => id);
  const pairs = new Set(
    speakers.map(({ given, seat }) => given?.signal ?? job.vehicle.places[seat ?? '']?.row ?? null),
  );
  const [pair = null] = pairs;
  const [side = 'middle'] = speakers.map((one) => one.side);
  return {
    of: [at, ...ids],
    by: listed(ids),
    isBass: speakers.some(({ spec }) => spec?.kind === 'speaker' && spec.band === 'subwoofer'),
    pair: pairs.size === 1 ? pair : null,
    side: side === 'middle' ? null : side,
  };
}

/** Speakers that a source drives itself, and inputs of processors whose names tell what they take. */
function byLinks(about: Case): readonly Played[] {
  const { job } = about;
  return job.links.flatMap(({ id, from, to }): Played[] => {
    const end = [from, to].find((one) => hasRole(job, terminalId(one), 'speaker-out-positive', 'signal-out'));
    const output = end && toldOutput(about, end);
    const other = end === from ? to : from;
    const device = deviceOf(job, other.device);
    if (!output || !device) return [];
    if (device.spec?.kind === 'speaker')
      return [{ ...played(about, linkName(id), [device]), outputs: [output] }];
    const told = device.spec?.kind === 'processor' ? toldBy(stemName(other.terminal)) : null;
    return told ? [{ of: [linkName(id)], by: named(other), isBass: false, ...told, outputs: [output] }] : [];
  });
}

const named = ({ device, terminal }: LinkEnd) => `${device}.${stemName(terminal)}`;
const inWords = ({ pair, side }: Told) => [pair, side].flatMap((one) => one ?? []).join(' ');

const pairCrossed: Rule = {
  id: 'pair-crossed',
  judge(about) {
    return [...byChannels(about), ...byLinks(about)].flatMap((one): Verdict<'pair-crossed'>[] => {
      const told = one.isBass ? twoPairs(one) : crossed(about, one);
      const [first] = one.outputs;
      if (told === null || !first) return [];
      const wire = about.plan.wires.find(({ from, to }) => [from, to].includes(terminalId(first.end)));
      const spot = wire ? wireSpot(about, wire.id) : deviceSpot(about.job, first.end.device);
      return [
        { level: 'caution', of: [...one.of, ...one.outputs.map(({ end }) => named(end))], ...told, ...spot },
      ];
    });
  },
};

type Said = Pick<Verdict<'pair-crossed'>, 'message' | 'remedy'>;

/** An output of another row or side than what it is linked to, where the source has one of this; null where none is. */
function crossed(about: Case, { by, pair, side, isSidedElsewhere, outputs }: Played): Said | null {
  for (const { end, told } of outputs) {
    const isPair = pair !== null && told.pair !== null && told.pair !== pair;
    const isSide = !isSidedElsewhere && side !== null && told.side !== null && told.side !== side;
    const wanted = { pair: isPair ? pair : told.pair, side: side ?? told.side };
    const own = isPair || isSide ? outputsLike(about, end, wanted) : [];
    if (own.length === 0) continue;
    return {
      message: `${by} is of the ${inWords({ pair, side })}, and is linked to ${named(end)}, which carries ${inWords(told)}`,
      remedy: `link it to ${listed(own)}; or, where the other is meant, write signal: at the speakers; where a name misleads, carries: at the output`,
    };
  }
  return null;
}

/** The outputs of a source, of the form of one, that are told to carry a row and a side. */
function outputsLike(
  { job }: Case,
  { device: id, terminal }: LinkEnd,
  { pair, side }: { readonly pair: SignalPair | null; readonly side: Told['side'] },
): readonly string[] {
  const device = deviceOf(job, id);
  const role = device?.facts.terminals[terminal]?.role;
  if (!device || !role) return [];
  return terminalsOf(device.facts.terminals, role).flatMap((name) => {
    const told = toldAt(job, device, name);
    const isLike = told?.pair === pair && (side === null || told.side === side);
    return isLike ? [named({ device: id, terminal: name })] : [];
  });
}

/** Bass that is added up from one side of a pair and another pair: a fader takes a side of it away. Whole pairs may be summed. */
function twoPairs({ by, outputs }: Played): Said | null {
  const pairs = [...new Set(outputs.flatMap(({ told }) => told.pair ?? []))];
  const isHalf = (pair: SignalPair) => {
    const sides = new Set(outputs.flatMap(({ told }) => (told.pair === pair ? [told.side] : [])));
    return sides.size === 1 && !sides.has(null);
  };
  if (pairs.length < 2 || !pairs.some((pair) => pair !== 'bass' && isHalf(pair))) return null;
  const texts = outputs.map(({ end, told }) => `${named(end)} (${inWords(told)})`);
  return {
    message: `${by} plays ${listed(texts)}: outputs of two pairs, of which a fader takes one away`,
    remedy: `link left and right of one pair to it: ${pairs.map((pair) => `both of the ${pair}`).join(', or ')}`,
  };
}

export const pairCrossedRules: readonly Rule[] = [pairCrossed];
