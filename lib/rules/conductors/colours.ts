import type { PlanWire } from '../../model/plan/index.ts';
import type { ConductorRole } from '../../model/vocabulary.ts';
import { endsOf, hasRole, jobWires, wireSpot } from '../look-up.ts';
import type { Rule, Verdict } from '../rule.ts';

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

/** The plain colour of a pair and its striped one: the stripe is minus, as the plan gives them to open pairs. */
const pairColours: Rule = {
  id: 'pair-colours-wrong',
  judge(about) {
    const wires = jobWires(about);
    return wires.flatMap((plus): Verdict<'pair-colours-wrong'>[] => {
      if (plus.role !== 'speaker' || !plus.id.endsWith('.+') || plus.colour === null) return [];
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
          remedy: alike
            ? 'take a plain conductor for plus and a striped one for minus, or leave wire: out'
            : 'write the plain conductor first',
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

export const colourRules: readonly Rule[] = [colourMisleads, pairColours, reelForOther];
