import type { PlanWire } from '../../model/plan/index.ts';
import type { ConductorRole } from '../../model/vocabulary.ts';
import { groupsOf } from '../groups-of.ts';
import { deviceIdOf, endsOf, hasRole, jobWires, wireSpot } from '../look-up.ts';
import type { Rule, Verdict } from '../rule.ts';
import { listed } from '../words.ts';

interface Misled {
  /** What one takes it for, and why. */
  readonly why: string;
  readonly instead: string;
}

/** Insulation that warns of something whatever it carries, by its whole colour or its base. */
const warning: Readonly<Record<string, string>> = {
  YE: 'yellow marks restraint wiring, which nobody may touch',
  OG: 'orange marks high voltage',
  'GN/YE': 'green and yellow is the protective earth of mains',
};

/** Colours that belong to another role than the one that they are used for. */
const belongs: Readonly<Partial<Record<ConductorRole, Readonly<Record<string, string>>>>> = {
  ground: { RD: 'red is a feed: whoever works there takes it for live, or a live one for ground' },
  power: {
    BK: 'black is ground: whoever works there bolts it to the body',
    BN: "brown is ground in many makers' vehicles: whoever works there bolts it to the body",
  },
};

const baseOf = (colour: string): string => colour.split('/')[0] ?? colour;

/** What is wrong with the colour of a wire for what it carries; null where nothing is. */
function misled({ colour, role }: PlanWire): Misled | null {
  if (colour === null) return null;
  const warns = warning[colour] ?? warning[baseOf(colour)];
  const instead = role === 'power' ? 'red' : role === 'ground' ? 'black' : 'another colour';
  if (warns !== undefined) return { why: warns, instead };
  const other = belongs[role]?.[baseOf(colour)];
  return other === undefined ? null : { why: other, instead };
}

const colourMisleads: Rule = {
  id: 'colour-misleads',
  judge(about) {
    return jobWires(about).flatMap((wire): Verdict<'colour-misleads'>[] => {
      const found = misled(wire);
      if (!found) return [];
      return [
        {
          level: 'caution',
          of: [wire.id, ...(wire.part === null ? [] : [wire.part])],
          message: `${wire.id} carries ${wire.role} in ${wire.colour ?? 'its'} insulation, but ${found.why}`,
          value: wire.colour ?? '',
          remedy: `run it from a reel in ${found.instead}, or sleeve both its ends so and label them`,
          ...wireSpot(about, wire.id),
        },
      ];
    });
  },
};

/** What goes in pairs: to a coil, or at speaker level. */
const isPaired = ({ role }: PlanWire): boolean => role === 'speaker' || role === 'signal';

/** The plain colour of a pair and its striped one: the stripe is minus, as the plan gives them to open pairs. */
const pairColours: Rule = {
  id: 'pair-colours-wrong',
  judge(about) {
    const wires = jobWires(about);
    return wires.flatMap((plus): Verdict<'pair-colours-wrong'>[] => {
      if (!isPaired(plus) || !plus.id.endsWith('.+') || plus.colour === null) return [];
      const minus = wires.find(({ id }) => id === `${plus.id.slice(0, -2)}.-`);
      if (!minus || minus.colour === null) return [];
      const alike = minus.colour === plus.colour;
      const swapped = plus.colour.includes('/') && plus.colour.startsWith(`${minus.colour}/`);
      if (!alike && !swapped) return [];
      return [
        {
          level: 'caution',
          of: [plus.link, plus.id, minus.id],
          message: alike
            ? `both conductors of ${plus.link} are ${plus.colour}: plus and minus can't be told apart at its ends`
            : `${plus.link} has its striped conductor (${plus.colour}) on plus and the plain one (${minus.colour}) on minus: the stripe is minus`,
          value: `${plus.colour}, ${minus.colour}`,
          remedy: alike ? twoColours(plus) : 'write the plain conductor first',
          ...wireSpot(about, plus.id),
        },
      ];
    });
  },
};

/** How a pair gets two colours: of the cable that it lies in, or from reels. */
function twoColours({ role, size, cable }: PlanWire): string {
  return cable === undefined
    ? `put a plain reel and one with a black stripe, ${size.label} with ${role} under for:, into the catalogue, and leave wire: and colour: out`
    : `name two conductors of different colours of ${cable} under conductors:`;
}

/** Pairs of one use that end at the same device in the same colours: a hand takes the one for the other there. */
const pairsAlike: Rule = {
  id: 'pairs-alike',
  judge(about) {
    const pairs = jobWires(about).flatMap((plus) => {
      const minus = about.plan.wires.find(({ id }) => id === `${plus.id.slice(0, -2)}.-`);
      if (!isPaired(plus) || !plus.id.endsWith('.+') || plus.colour === null || !minus) return [];
      if (plus.cable !== undefined) return [];
      return endsOf(plus).map((end) => ({
        plus,
        at: deviceIdOf(end),
        colours: `${plus.colour}, ${minus.colour}`,
      }));
    });
    const groups = groupsOf(pairs, ({ plus, at, colours }) => `${at} ${plus.role} ${colours}`);
    return groups.flatMap((group): Verdict<'pairs-alike'>[] => {
      const [first] = group;
      const links = [...new Set(group.map(({ plus }) => plus.link))];
      if (!first || links.length < 2) return [];
      const { plus, at, colours } = first;
      return [
        {
          level: 'note',
          of: links,
          message: `${listed(links)} are ${links.length === 2 ? 'both' : 'all'} ${colours} at ${at}: their labels alone tell them apart`,
          value: colours,
          remedy: `label both ends of each before it is laid; or put reels of another colour, ${plus.size.label} with ${plus.role} under for:, on the shelf`,
          ...wireSpot(about, plus.id),
        },
      ];
    });
  },
};

/** A reel that is sold for other uses than what its wire carries. */
const reelForOther: Rule = {
  id: 'reel-for-other-use',
  judge(about) {
    return jobWires(about).flatMap((wire): Verdict<'reel-for-other-use'>[] => {
      const part = wire.part === null ? undefined : about.job.parts[wire.part];
      if (wire.part === null || part?.kind !== 'wire' || misled(wire)) return [];
      const uses: readonly string[] = part.for;
      // A battery's strap is ground and feed at once.
      const isStrap = endsOf(wire).every((end) =>
        hasRole(about.job, end, 'source-positive', 'source-negative'),
      );
      if (uses.includes(wire.role) || isStrap) return [];
      return [
        {
          level: 'note',
          of: [wire.id, wire.part],
          message: `${wire.id} carries ${wire.role}, and the reel ${wire.part} is for ${uses.join(', ')}`,
          remedy: `take a reel for ${wire.role}, or write ${wire.role} under for: of ${wire.part}`,
          ...wireSpot(about, wire.id),
        },
      ];
    });
  },
};

export const colourRules: readonly Rule[] = [colourMisleads, pairColours, pairsAlike, reelForOther];
