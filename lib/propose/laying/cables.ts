import { linkEndOf } from '../../model/content/resolved-job.ts';
import type { PartOf } from '../../model/kinds/index.ts';
import type { Carried } from '../../model/vocabulary.ts';
import { shelfLengths } from '../../shelf/shelf-lengths.ts';
import type { Draft, Why } from '../draft/draft.ts';
import { pairOf } from '../draft/draft-device.ts';
import { sourceOutputs } from '../sound/source-outputs.ts';
import { compareShelved } from '../supply/turn-on.ts';
import { linkLengthM } from './link-way.ts';
import { carries, linkRole } from './runs.ts';
import { twistBesideSupply } from './twisted-pairs.ts';

type Cable = PartOf<'cable'>;

/** Colours of the usual code by what a pair carries, its negative with a black stripe: common practice, no source. */
const pairColours: Readonly<Partial<Record<Carried, string>>> = {
  'front-left': 'WH',
  'front-right': 'GY',
  'rear-left': 'GN',
  'rear-right': 'VT',
};
const turnOnColour = 'BU';

/** A link of a run that goes into a cable, with the colours that it has by the usual code. */
interface CabledLink {
  readonly id: string;
  readonly colours: readonly (string | null)[];
}

/**
 * Puts the speaker-level pairs of a run and its turn-on into one cable, unless they lie beside supply wires and the shelf has
 * twisted pairs for them: of the cables on the shelf, in one piece, the one with fewest conductors left over. The turn-on
 * lies beside it where only then one of the shelf does; where the shelf has none, it is the best of the catalogue.
 */
export function cableRuns(draft: Draft): void {
  for (const [run, { links }] of Object.entries(draft.runs)) {
    const open = links.filter((id) => draft.isProposed('links', id) && draft.links[id]?.cable === undefined);
    const all = open.flatMap((id) => pairLink(draft, id) ?? []);
    // What is joined to another before their port lies in a cable of its own: the usual colours are those of the other.
    const pairs = all.filter(({ id }) => draft.links[id]?.joint === undefined);
    for (const one of all.filter((link) => !pairs.includes(link)))
      cableFor(draft, run, [{ ...one, colours: one.colours.map(() => null) }], { name: `cable-${one.id}` });
    if (pairs.length === 0) continue;
    const ids = pairs.map(({ id }) => id);
    if (twistBesideSupply(draft, run, ids)) continue;
    const turnOn = open.find((id) => carries(draft, id, 'turn-on'));
    const whole = turnOn === undefined ? pairs : [...pairs, { id: turnOn, colours: [turnOnColour] }];
    const tries = [whole, ...(turnOn === undefined ? [] : [pairs])];
    const kept = [true, false].flatMap((onShelf) => tries.map((own) => ({ own, onShelf })));
    kept.some(({ own, onShelf }) => cableFor(draft, run, own, { onShelf }));
  }
}

/** A link between two pairs that carries a signal: from speaker outputs to speaker-level inputs. */
function pairLink(draft: Draft, id: string): CabledLink | null {
  const link = draft.links[id];
  if (!link || linkRole(draft, link) !== 'signal') return null;
  const [from, to] = [linkEndOf(link.from), linkEndOf(link.to)];
  const [source, device] = [draft.device(from.device), draft.device(to.device)];
  if (!source || !device || !pairOf(source, from.terminal) || !pairOf(device, to.terminal)) return null;
  const carried = sourceOutputs(draft, source, 'speaker').find(({ name }) => name === from.terminal)?.carries;
  const colour = carried === undefined ? undefined : pairColours[carried];
  return { id, colours: colour === undefined ? [null, null] : [colour, `${colour}/BK`] };
}

interface CableWish {
  readonly name?: string;
  /** Whether it is to lie on the shelf in one piece. */
  readonly onShelf?: boolean;
}

function cableFor(
  draft: Draft,
  run: string,
  links: readonly CabledLink[],
  { name = 'source-cable', onShelf = false }: CableWish,
): boolean {
  const asked = links.reduce((sum, { colours }) => sum + colours.length, 0);
  const lengthM = Math.max(0, ...links.map(({ id }) => linkLengthM(draft, id)));
  const lies = (part: string) =>
    shelfLengths(draft.around.shop.stock[part]).some(({ freeM }) => freeM >= lengthM);
  const fitting = Object.entries(draft.around.parts).flatMap(([part, spec]) => {
    if (spec.kind !== 'cable' || spec['made-length'] !== undefined || !spec.for.includes('signal')) return [];
    if (onShelf && !lies(part)) return [];
    const dealt = dealConductors(spec, links);
    return dealt ? [{ part, spare: Object.keys(spec.conductors).length - asked, dealt }] : [];
  });
  const [best] = fitting.toSorted(
    (a, b) => a.spare - b.spare || compareShelved(draft, a.part, b.part) || (a.part < b.part ? -1 : 1),
  );
  if (!best) return false;
  const cable = draft.freeName(name, run);
  const why: Why = {
    rule: 'cables',
    reason: `one cable for ${links.length === 1 ? 'a link' : `${links.length} links`} of the run ${run}, ${best.spare} conductors left over`,
    cp: true,
  };
  const about = linkEndOf(draft.links[links[0]?.id ?? '']?.to ?? '').device;
  draft.addCable(cable, best.part, why, about);
  for (const [id, conductors] of best.dealt) draft.refineLink(id, { cable, conductors: [...conductors] });
  return true;
}

/** Conductors for each link: by the usual colours where the cable has them, else in turn; null where they run out. */
function dealConductors(
  spec: Cable,
  links: readonly CabledLink[],
): ReadonlyMap<string, readonly string[]> | null {
  const left = new Set(Object.keys(spec.conductors));
  const dealt = new Map<string, readonly string[]>();
  const byColour = (colour: string | null) =>
    [...left].find((name) => colour !== null && spec.conductors[name]?.colour === colour);
  const inTurn = links.toSorted(
    (a, b) =>
      Number(b.colours.every((one) => byColour(one) !== undefined)) -
      Number(a.colours.every((one) => byColour(one) !== undefined)),
  );
  for (const { id, colours } of inTurn) {
    const usual = colours.flatMap((colour) => byColour(colour) ?? []);
    const names = usual.length === colours.length ? usual : [...left].slice(0, colours.length);
    if (names.length < colours.length) return null;
    for (const name of names) left.delete(name);
    dealt.set(id, names);
  }
  return dealt;
}
