import { type Fault, faultOf, isPositive } from '../model/fault.ts';
import { type Traced, traced } from '../model/trace.ts';
import type { InputVerdict } from '../model/vocabulary.ts';

/** A clean voltage on its way into the next device. All RMS. */
export interface InputRequest {
  /** The input, such as `processor.IN-1`. */
  readonly input: string;
  /** The greatest clean voltage that arrives. */
  readonly sourceV: number;
  /** Sensitivity range of the input: full output at the least, where its maker tells it, and the most that it takes. */
  readonly leastV: number | null;
  readonly greatestV: number;
}

export interface InputMatch {
  readonly input: string;
  /**
   * `too-high` clips the input itself, which no gain control mends; `too-low` never reaches full output. `unknown` where
   * it takes what arrives, and nothing tells whether that is enough.
   */
  readonly verdict: InputVerdict;
  /** Input limit over source; below zero where the input clips. */
  readonly headroomDb: Traced<number>;
  /** Source over the highest sensitivity; below zero where full output isn't reached, null where that is not told. */
  readonly reserveDb: Traced<number> | null;
}

/**
 * Whether a source suits an input: headroom = 20 log10(greatest / source), reserve = 20 log10(source /
 * least), in dB. High-level and low-level inputs differ only in their range.
 */
export function inputMatch(request: InputRequest): InputMatch | Fault<'input-range-unclear'> {
  const { sourceV, leastV, greatestV } = request;
  if (![sourceV, leastV ?? greatestV, greatestV].every(isPositive) || (leastV ?? 0) > greatestV)
    return faultOf(
      'input-range-unclear',
      [request.input],
      `the source voltage or the sensitivity range of ${request.input} is missing or out of order`,
      "measure the clean voltage of the source, and write the input's range from the maker's data",
    );
  const ratio = (name: string, rule: string, over: [string, number], under: [string, number]) =>
    traced(20 * Math.log10(over[1] / under[1]), 'dB', {
      rule,
      formula: `${name} = 20 * log10(${over[0]} / ${under[0]})`,
      citation: "Definition of the level in dB; the parts' data",
      inputs: [
        [over[0], over[1], 'V'],
        [under[0], under[1], 'V'],
      ],
    });
  return {
    input: request.input,
    verdict:
      sourceV > greatestV
        ? 'too-high'
        : leastV === null
          ? 'unknown'
          : sourceV < leastV
            ? 'too-low'
            : 'within',
    headroomDb: ratio('headroom', 'input-headroom', ['Vmax', greatestV], ['Vs', sourceV]),
    reserveDb: leastV === null ? null : ratio('reserve', 'input-reserve', ['Vs', sourceV], ['Vmin', leastV]),
  };
}
