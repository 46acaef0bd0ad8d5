import { type Traced, traced } from '../../model/trace.ts';
import { add, type Complex, reciprocal } from '../filter/complex.ts';
import { type Coil, coilsOf, type Wiring } from './coil-wiring.ts';

/** The coils of a channel that it drives in its whole band: what a capacitor or a filter keeps bass from left out. */
export interface WithoutFiltered {
  readonly wiring: Wiring;
  readonly coils: readonly Coil[];
}

/** Least that a channel sees, and where. */
export interface LeastLoad {
  readonly ohm: Traced<number>;
  readonly atHz: number;
}

/**
 * A wiring without the branches that a filter in their lead opens towards the bass, where something stands beside them:
 * of these its load, its power and its direct-current resistance are. Where a filter has the channel to itself the wiring
 * is left as it is.
 */
export function withoutFiltered(wiring: Wiring, coils: readonly Coil[]): WithoutFiltered {
  const filtered = new Set(coils.filter(({ inLine }) => inLine).map(({ id }) => id));
  if (filtered.size === 0) return { wiring, coils };
  const kept = pruned(wiring, filtered);
  const left = new Set(coilsOf(kept));
  return { wiring: kept, coils: coils.filter(({ id }) => left.has(id)) };
}

function pruned(wiring: Wiring, filtered: ReadonlySet<string>): Wiring {
  if (wiring.kind === 'coil') return wiring;
  const members = wiring.members.map((member) => pruned(member, filtered));
  if (wiring.kind === 'series') return { ...wiring, members };
  const open = members.filter((member) => member.kind !== 'coil' || !filtered.has(member.coil));
  const [only, second] = open;
  if (!only) return { ...wiring, members };
  return second ? { ...wiring, members: open } : only;
}

/** What a coil reads at the least, of its nominal load: IEC 60268-5, rated impedance. */
export const leastOfNominal = 0.8;

/** Steps of the search over the heard band; each is under 1 % of its frequency. */
const steps = 1000;
const [lowestHz, highestHz] = [20, 20_000];

/**
 * The least modulus of what a channel sees between 20 Hz and 20 kHz: each coil as its resistance (as measured, at least
 * 0.8 of nominal) with its inductance, a filter in a lead as the Butterworth ladder of its order that ends in what it
 * feeds, a capacitor where its order is 1. Coils move nothing here: what the cone adds only lifts the load.
 */
export function leastLoad(wiring: Wiring, coils: readonly Coil[]): LeastLoad {
  const byId = new Map(coils.map((coil) => [coil.id, coil]));
  const seen = Array.from({ length: steps + 1 }, (_, step) => {
    const hz = lowestHz * (highestHz / lowestHz) ** (step / steps);
    const { re, im } = impedance(wiring, byId, hz);
    return { hz, ohm: Math.hypot(re, im) };
  });
  const least = seen.reduce((low, one) => (one.ohm < low.ohm ? one : low));
  return {
    atHz: least.hz,
    ohm: traced(least.ohm, 'ohm', {
      rule: 'least-load',
      formula: 'Z = min |Z(f)|, 20 Hz to 20 kHz; a coil R + j w L, a filter in a lead the ladder into its R',
      citation: "Ohm's and Kirchhoff's laws; IEC 60268-5",
      inputs: coils.map((coil) => [coil.id, resistance(coil), 'ohm']),
    }),
  };
}

/** Whether a least modulus is that of a load that is rated at a minimum or above: IEC 60268-5 lets it be 0.8 of it. */
export function isLeastEnough(leastOhm: number, minimumOhm: number): boolean {
  return leastOhm >= leastOfNominal * minimumOhm * (1 - 1e-9);
}

function resistance({ nominalOhm, dcOhm }: Coil): number {
  return Math.max(leastOfNominal * nominalOhm, dcOhm ?? 0);
}

function impedance(wiring: Wiring, coils: ReadonlyMap<string, Coil>, hz: number): Complex {
  if (wiring.kind === 'coil') {
    const coil = coils.get(wiring.coil);
    return coil ? ofCoil(coil, hz) : { re: 0, im: 0 };
  }
  const members = wiring.members.map((member) => impedance(member, coils, hz));
  if (wiring.kind === 'series') return members.reduce(add);
  return reciprocal(members.map(reciprocal).reduce(add));
}

function ofCoil(coil: Coil, hz: number): Complex {
  const re = resistance(coil);
  const own = { re, im: 2 * Math.PI * hz * (coil.inductanceH ?? 0) };
  return coil.inLine ? throughLadder(own, re, coil.inLine.order, hz / coil.inLine.fromHz) : own;
}

/**
 * A load behind a high-pass ladder that is reckoned for the resistance `ohm`, at `x` times its corner: in series where
 * nothing follows towards the amplifier, across otherwise, by turns.
 */
function throughLadder(load: Complex, ohm: number, order: number, x: number): Complex {
  return butterworthLadder(order).reduce((z, g, at) => {
    if ((order - 1 - at) % 2 === 0) return add(z, { re: 0, im: (-ohm * g) / x });
    return reciprocal(add(reciprocal(z), { re: 0, im: -g / (ohm * x) }));
  }, load);
}

/**
 * Elements of a Butterworth ladder between a source without resistance and 1 ohm, from the load on: g1 = a1,
 * gk = ak ak-1 / (ck-1 gk-1), ak = sin((2k - 1) pi / 2n), ck = cos^2(k pi / 2n) (Weinberg, Network Analysis and
 * Synthesis, from memory).
 */
function butterworthLadder(order: number): readonly number[] {
  const a = (k: number) => Math.sin(((2 * k - 1) * Math.PI) / (2 * order));
  const c = (k: number) => Math.cos((k * Math.PI) / (2 * order)) ** 2;
  const elements: number[] = [];
  for (let k = 1; k <= order; k += 1)
    elements.push(k === 1 ? a(1) : (a(k) * a(k - 1)) / (c(k - 1) * (elements[k - 2] ?? 1)));
  return elements;
}
