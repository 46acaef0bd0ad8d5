import { type Fault, faultOf, positiveFault } from '../../model/fault.ts';
import { printedMade } from '../../model/printed/holes.ts';
import { squareMm, squareMmAtLeast } from '../../model/printed/told.ts';
import { type Ferrule, ferruleFor, largestTwinMm2 } from '../../model/tables/ferrules.ts';
import { lugHoleM } from '../../model/tables/lugs.ts';
import { type Traced, traced } from '../../model/trace.ts';
import type { ConductorMaterial, IfTooWide } from '../../model/vocabulary.ts';
import type { PowerRules } from '../power-rules.ts';
import { barrelStripM, ferruleStripM, lugStripM } from './strip-length.ts';

/** Where a conductor ends. */
export type Port =
  | {
      readonly kind: 'set-screw' | 'spring-clamp';
      readonly id: string;
      readonly smallestMm2: number;
      readonly largestMm2: number;
      /** Depth of the hole (m), which sets the strip length. */
      readonly depthM?: number;
      /** The maker allows two conductors. */
      readonly twin?: boolean;
      /** The maker, or the set screw, calls for a ferrule. */
      readonly ferrule?: boolean;
      /** The largest ferrule that the maker allows, by the conductor that it is named for, where that is told. */
      readonly largestFerruleMm2?: number;
    }
  | {
      readonly kind: 'stud';
      readonly id: string;
      /** Diameter of the thread (m); null where the part does not tell it: no lug can then be chosen. */
      readonly studM: number | null;
      readonly largestMm2?: number;
    }
  | {
      readonly kind: 'push-on' | 'plug';
      readonly id: string;
      readonly smallestMm2: number;
      readonly largestMm2: number;
      /** How many conductors its maker allows in one contact; one where left out. */
      readonly most?: number;
    };

/** A conductor's end. */
export interface ConductorEnd {
  readonly id: string;
  readonly areaMm2: number;
  readonly material: ConductorMaterial;
}

/** How the conductors of one port are prepared. */
export type EndPreparation =
  | {
      readonly prep: 'ferrule' | 'twin-ferrule';
      readonly ferrule: Ferrule;
      /** Where nobody tells that it goes into the port: what to do if it does not. */
      readonly ifTooWide?: IfTooWide;
      readonly stripM: number;
      readonly strip: Traced<number>;
      readonly notes: readonly string[];
    }
  | {
      readonly prep: 'lug';
      readonly barrelMm2: number;
      readonly holeM: number;
      readonly stripM: number;
      readonly strip: Traced<number>;
      readonly notes: readonly string[];
    }
  | {
      readonly prep: 'crimp' | 'bare';
      readonly stripM: number;
      readonly strip: Traced<number>;
      readonly notes: readonly string[];
    }
  | { readonly prep: 'refused'; readonly reason: string; readonly alternatives: readonly string[] };

/** Areas within a tenth of a per cent are the same: 21.15 mm2 goes into a port for 4 AWG. */
const grace = 1.001;
const retorque = 'copper-clad aluminium: tighten again after the first weeks';
const refused = (reason: string, alternatives: readonly string[]): EndPreparation => ({
  prep: 'refused',
  reason,
  alternatives,
});

/**
 * How the conductors that share a port are ended: a ferrule of the next size up (DIN 46228-4), a twin ferrule where
 * the maker allows two (to 2 x 16 mm2), a lug with the hole of its stud, a crimp, or bare where strands may be
 * clamped. What the port does not take is refused, with what would do instead. A conductor thinner than the port's
 * smallest is noted, not refused. Strip lengths: common practice. Fault on an area not above zero.
 */
export function prepareEnd(
  ends: readonly ConductorEnd[],
  port: Port,
  rules: PowerRules,
): EndPreparation | Fault {
  const bad = positiveFault(Object.fromEntries(ends.map(({ id, areaMm2 }) => [`area of ${id}`, areaMm2])));
  if (bad) return bad;
  const [first, second, ...more] = ends;
  if (!first)
    return faultOf(
      'nothing-ends-here',
      [port.id],
      `nothing ends at ${port.id}`,
      'lead a conductor to it, or leave it open',
    );
  if (port.kind === 'stud') return lugOn(port, ends, rules.mostLugsOnStud);
  const clamp = port.kind === 'set-screw' || port.kind === 'spring-clamp';
  if (!clamp) return crimped(ends, port);
  if (more.length > 0)
    return refused(`${ends.length} conductors end at ${port.id}`, [
      'a distribution part with a port for each',
    ]);
  return second ? twin(first, second, port) : clamped(first, port);
}

/** The depth of the port where its maker tells it, else the usual length. */
function stripped(
  { depthM }: { readonly depthM?: number },
  usual: Traced<number>,
): { readonly stripM: number; readonly strip: Traced<number> } {
  const strip =
    depthM === undefined
      ? usual
      : traced(depthM, 'm', { origin: 'given', rule: 'strip-length', citation: "the port's data" });
  return { stripM: strip.value, strip };
}

type Clamp = Extract<Port, { readonly kind: 'set-screw' | 'spring-clamp' }>;

function notesOf(
  areaMm2: number,
  ends: readonly ConductorEnd[],
  port: { readonly id: string; readonly smallestMm2: number },
): string[] {
  const thin = areaMm2 * grace < port.smallestMm2;
  return [
    ...(thin
      ? [
          `${squareMm(areaMm2)} is thinner than ${port.id} is made for, ${squareMmAtLeast(port.smallestMm2)} or more`,
        ]
      : []),
    ...(ends.some(({ material }) => material !== 'copper') ? [retorque] : []),
  ];
}

function clamped(end: ConductorEnd, port: Clamp): EndPreparation {
  const { areaMm2 } = end;
  if (areaMm2 > port.largestMm2 * grace)
    return refused(
      `${squareMmAtLeast(areaMm2)} does not go into ${port.id}, which takes at most ${squareMm(port.largestMm2)}`,
      [
        `a reducer to ${squareMm(port.largestMm2)} or less`,
        'a port for a larger conductor',
        'a thinner conductor with a fuse to match',
      ],
    );
  const notes = notesOf(areaMm2, [end], port);
  const wantsFerrule = port.kind === 'set-screw' || port.ferrule === true || end.material !== 'copper';
  const ferrule = wantsFerrule ? ferruleFor(areaMm2) : null;
  const mustHave = port.ferrule === true || end.material !== 'copper';
  const allowedMm2 = port.largestFerruleMm2 ?? Number.POSITIVE_INFINITY;
  if (ferrule && ferrule.areaMm2 <= allowedMm2 * grace)
    return {
      ...{ prep: 'ferrule', ferrule, ...stripped(port, ferruleStripM(areaMm2)), notes },
      ...widthOf(ferrule.areaMm2, port, mustHave),
    };
  if (ferrule && mustHave)
    return refused(
      `${port.id} needs a ferrule and takes at most one of ${squareMm(allowedMm2)}, and ${squareMmAtLeast(areaMm2)} asks for one of ${squareMm(ferrule.areaMm2)}`,
      ['a port for a larger ferrule', 'a thinner conductor with a fuse to match'],
    );
  if (wantsFerrule && mustHave)
    return refused(`${port.id} needs a ferrule, and none is made for ${squareMm(areaMm2)}`, [
      'a lug on a stud',
      'a pin adapter made for the conductor',
    ]);
  return { prep: 'bare', ...stripped(port, barrelStripM(areaMm2)), notes };
}

/**
 * A ferrule's name is the conductor that it takes, and the range of a port that of the bare conductor: named above it, it
 * may go in or not, and no table tells how wide it is crimped. Common practice, no source.
 */
function widthOf(nameMm2: number, port: Clamp, mustHave: boolean): { readonly ifTooWide?: IfTooWide } {
  if (port.largestFerruleMm2 !== undefined || nameMm2 <= port.largestMm2 * grace) return {};
  return { ifTooWide: mustHave ? 'pin-adapter' : 'bare' };
}

function twin(first: ConductorEnd, second: ConductorEnd, port: Clamp): EndPreparation {
  const instead = ['a distribution part with a port for each'];
  if (port.twin !== true)
    return refused(`the maker of ${port.id} does not allow two conductors in it`, instead);
  const ferrule = ferruleFor(Math.max(first.areaMm2, second.areaMm2));
  if (!ferrule || ferrule.areaMm2 > largestTwinMm2)
    return refused(`twin ferrules end at 2 x ${largestTwinMm2} mm2`, instead);
  const bothMm2 = first.areaMm2 + second.areaMm2;
  if (bothMm2 > port.largestMm2 * grace)
    return refused(
      `${squareMmAtLeast(bothMm2)} in all does not go into ${port.id}, which takes ${squareMm(port.largestMm2)}`,
      instead,
    );
  const notes = notesOf(bothMm2, [first, second], port);
  return { prep: 'twin-ferrule', ferrule, ...stripped(port, ferruleStripM(ferrule.areaMm2)), notes };
}

function lugOn(
  port: Extract<Port, { readonly kind: 'stud' }>,
  ends: readonly ConductorEnd[],
  mostLugs: number,
): EndPreparation {
  if (port.studM === null)
    return refused(`the stud size of ${port.id} is not known: no lug can be chosen for it`, [
      'measure it and write it as stud: of the terminal in its part, such as M8',
    ]);
  const holeM = lugHoleM(port.studM);
  if (holeM === null)
    return refused(`no lug hole is known for a ${printedMade(port.studM)} stud`, [
      "the lug that the stud's maker names",
    ]);
  if (ends.length > mostLugs)
    return refused(
      `${ends.length} lugs are on ${port.id}, at most ${mostLugs} may be (ABYC E-11, from memory)`,
      ['a second stud', 'a bus bar'],
    );
  const thickest = Math.max(...ends.map(({ areaMm2 }) => areaMm2));
  if (port.largestMm2 !== undefined && thickest > port.largestMm2 * grace)
    return refused(
      `${squareMmAtLeast(thickest)} is above the ${squareMm(port.largestMm2)} that ${port.id} takes`,
      ['a larger stud', 'two thinner conductors, each with its fuse'],
    );
  const notes = ends.some(({ material }) => material !== 'copper') ? [retorque] : [];
  return { prep: 'lug', barrelMm2: thickest, holeM, ...stripped({}, lugStripM(thickest)), notes };
}

/** Conductors that share the contact of a plug are crimped in it together, as many as its maker allows. */
function crimped(
  ends: readonly ConductorEnd[],
  port: {
    readonly id: string;
    readonly smallestMm2: number;
    readonly largestMm2: number;
    readonly most?: number;
  },
): EndPreparation {
  const most = port.most ?? 1;
  if (ends.length > most)
    return refused(`${ends.length} conductors end at ${port.id}, whose maker allows ${most} in it`, [
      'a distribution part with a port for each',
    ]);
  const areaMm2 = ends.reduce((sum, end) => sum + end.areaMm2, 0);
  if (areaMm2 > port.largestMm2 * grace)
    return refused(
      `${squareMmAtLeast(areaMm2)} does not go into the terminal of ${port.id}, at most ${squareMm(port.largestMm2)}`,
      [
        `a short tail of ${squareMm(port.largestMm2)} or less, protected by its own fuse`,
        'a terminal for a larger conductor',
      ],
    );
  return {
    prep: 'crimp',
    ...stripped({}, barrelStripM(areaMm2)),
    notes: notesOf(areaMm2, ends, port),
  };
}
