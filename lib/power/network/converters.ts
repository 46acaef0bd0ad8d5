import type { IndexedNetwork } from './indexed-network.ts';
import { type NetworkFault, networkFault } from './network-fault.ts';
import type { ConverterLoad, EmfSource, NetworkResult } from './network-types.ts';

/** A converter that is switched on, such as a charger between two batteries. */
export interface Converter {
  readonly id: string;
  readonly of: string;
  readonly input: { readonly from: string; readonly to: string };
  readonly output: { readonly from: string; readonly to: string };
  /** What it holds at its output as long as that takes no more than `limitA`. */
  readonly outputV: number;
  readonly limitA: number;
  readonly efficiency: number;
  /** Input voltage under which it stops. */
  readonly cutoutV?: number;
}

/**
 * The two elements of a converter: at its output a source with one voltage and a limit, that takes nothing back; at its
 * input a load of that power over efficiency. One that is off has none: leave it out.
 */
export function converterElements(converter: Converter): readonly [output: EmfSource, input: ConverterLoad] {
  const { id, of, input, output, outputV, limitA, efficiency, cutoutV } = converter;
  const feeds = `${id}:out`;
  return [
    { id: feeds, of, kind: 'source', model: 'emf', ...output, emfV: outputV, ohm: 0, limitA },
    {
      id: `${id}:in`,
      of,
      kind: 'load',
      model: 'converter',
      ...input,
      feeds,
      efficiency,
      ...(cutoutV !== undefined && { cutoutV }),
    },
  ];
}

/** The two sides of a converter in a network, by their places in it. */
export interface ConverterSides {
  readonly input: number;
  /** -1 where the element that it feeds does not exist. */
  readonly output: number;
  readonly efficiency: number;
}

/** Rounds that the powers may take to settle, and how many of them may ask for more than can be fed. */
const mostRounds = 200;
const mostRefused = 6;
/** Powers that differ by no more than this share are the same. */
const settledShare = 1e-12;

/** Where the elements that converters feed stand. */
export function converterSides({ elements }: Pick<IndexedNetwork, 'elements'>): ConverterSides[] {
  return elements.flatMap((element, input): ConverterSides[] => {
    if (element.model !== 'converter') return [];
    const output = elements.findIndex(({ id }) => id === element.feeds);
    return [{ input, output, efficiency: element.efficiency }];
  });
}

/** Converters that feed no source with a limit, or give more than they take. */
export function converterFaults({ elements, hasConverter }: IndexedNetwork): NetworkFault[] {
  if (!hasConverter) return [];
  return elements.flatMap((element): NetworkFault[] => {
    if (element.model !== 'converter') return [];
    const { id, feeds, efficiency } = element;
    const fault = (message: string): NetworkFault[] => [
      networkFault('network-converter-impossible', { elements: [id] }, message),
    ];
    const fed = elements.find((one) => one.id === feeds);
    if (fed?.model !== 'emf' || fed.limitA === undefined)
      return fault(`${id} feeds ${feeds}, which is no source with a current limit`);
    return efficiency > 1 ? fault(`${id} gives more than it takes: its efficiency is ${efficiency}`) : [];
  });
}

/**
 * Solves a network whose converters draw what their other sides deliver: input power = output power / efficiency. From
 * converters that draw nothing on, each round takes over what the last solution says, until all agree to 1e-12; where a
 * round asks for more than can be fed, half of the way to it. What the output delivers hardly depends on what the input
 * draws, so that few rounds are enough. `solve` solves the network at the powers that are written into it.
 */
export function solveConverters(network: IndexedNetwork, solve: () => NetworkResult): NetworkResult {
  const sides = converterSides(network);
  const takenW = sides.map(() => 0);
  const write = (powersW: readonly number[]) => {
    for (const [k, { input }] of sides.entries()) network.powerW[input] = powersW[k] ?? 0;
  };
  write(takenW);
  let result = solve();
  let wantedW: readonly number[] | null = null;
  let refused: NetworkResult | null = null;
  // Once a round was refused all that follow go part of their way, or they would be refused again.
  let reach = 1;
  for (let round = 0; round < mostRounds && reach > 2 ** -mostRefused; round += 1) {
    if (result.state === 'solved' || result.state === 'cut-out') {
      if (wantedW) for (const k of takenW.keys()) takenW[k] = between(takenW[k], wantedW[k], reach);
      wantedW = drawnW(sides, result);
      if (isSettled(takenW, wantedW)) return result;
    } else {
      if (wantedW === null) return result;
      refused ??= result;
      reach /= 2;
    }
    const target = wantedW;
    write(takenW.map((powerW, k) => between(powerW, target[k], reach)));
    result = solve();
  }
  const reason = 'the converters settle on no common state';
  return refused ?? { state: 'no-solution', referenceNode: result.referenceNode, reason };
}

const between = (from = 0, to = 0, share: number): number => (share === 1 ? to : from + share * (to - from));

/** What each converter must draw for what its output delivers (W). */
function drawnW(
  sides: readonly ConverterSides[],
  { elements }: Extract<NetworkResult, { readonly state: 'solved' | 'cut-out' }>,
): number[] {
  return sides.map(({ output, efficiency }) => {
    const { currentA = 0, dropV = 0 } = elements[output] ?? {};
    return Math.max(0, -currentA * dropV) / efficiency;
  });
}

function isSettled(takenW: readonly number[], wantedW: readonly number[]): boolean {
  return takenW.every((powerW, k) => {
    const wanted = wantedW[k] ?? 0;
    return Math.abs(powerW - wanted) <= settledShare * Math.max(1, powerW, wanted);
  });
}
