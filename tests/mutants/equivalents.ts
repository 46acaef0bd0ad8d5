/** A change of the code that changes nothing that can be observed. */
export interface Equivalent {
  readonly file: string;
  /** The line of the file in which it begins, from its first word as far as tells it from all others. */
  readonly line: string;
  /** What is changed in it, and into what; of several lines the first words are enough. */
  readonly from: string;
  readonly to: string;
  readonly why: string;
}

/** Every change that no test can tell, with the reason: none of them counts. */
export const equivalents: readonly Equivalent[] = [
  {
    file: 'lib/power/fuse-choice.ts',
    line: 'mostA && binding ?',
    from: 'mostA && binding',
    to: 'mostA || binding',
    why: 'what binds is one of the limits that the most is the least of: there are both, or neither',
  },
  {
    file: 'lib/power/fuse-choice.ts',
    line: 'const holder = holderFor(fuse, duty, shelf.holders ?? []);',
    from: '[]',
    to: '["Stryker was here"]',
    why: 'a text has no form, so it is no holder of the form that is asked for',
  },
  {
    file: 'lib/power/fuse-choice.ts',
    line: 'const nearest =',
    from: 'a.keepsMargin && b.keepsMargin',
    to: 'a.keepsMargin || b.keepsMargin',
    why: 'it is asked only of two that both keep the margin, or both lack it',
  },
  {
    file: 'lib/power/short-circuit.ts',
    line: 'const currentA = (id: string) =>',
    from: 'flows.get(id)?.currentA',
    to: 'flows.get(id).currentA',
    why: 'it is asked of live elements alone, and a solved network has a flow for each',
  },
  {
    file: 'lib/power/short-circuit.ts',
    line: 'return { id, currentA: -(flow?.currentA ?? 0)',
    from: 'flow?.currentA',
    to: 'flow.currentA',
    why: 'a solved network has a flow for each of its sources',
  },
  {
    file: 'lib/power/short-circuit.ts',
    line: 'return { id, currentA: -(flow?.currentA ?? 0)',
    from: 'flow?.dropV',
    to: 'flow.dropV',
    why: 'a solved network has a flow for each of its sources',
  },
  {
    file: 'lib/audio/test-tone.ts',
    line: 'if (isFault(bare)) return bare;',
    from: 'isFault(bare)',
    to: 'false',
    why: 'the same filters were judged with the peaks before, and a peak has no fault of its own',
  },
  {
    file: 'lib/audio/test-tone.ts',
    line: 'const isHighEnough =',
    from: 'levelDb >= -lowestDb - 1e-9',
    to: 'levelDb > -lowestDb - 1e-9',
    why: 'a level on the edge of the rounding error itself is neither side of the bound',
  },
  {
    file: 'lib/audio/test-tone.ts',
    line: '.filter(({ levelDb }) => levelDb >= highestDb',
    from: 'levelDb >= highestDb - path.nearDb - 1e-9',
    to: 'levelDb > highestDb - path.nearDb - 1e-9',
    why: 'a level on the edge of the rounding error itself is neither side of the bound',
  },
  {
    file: 'lib/audio/gain.ts',
    line: "return traced(powerW * share, 'W', {",
    from: "{ rule: 'power-at-supply'",
    to: '{}',
    why: 'of what the amplifier has at this supply the value alone goes on; its working is handed to nobody',
  },
  {
    file: 'lib/audio/gain.ts',
    line: "['P', powerW, 'W'],",
    from: "['P', powerW, 'W']",
    to: '[]',
    why: 'of what the amplifier has at this supply the value alone goes on; its working is handed to nobody',
  },
  {
    file: 'lib/audio/gain.ts',
    line: "['U', supplyV, 'V'],",
    from: "['U', supplyV, 'V']",
    to: '[]',
    why: 'of what the amplifier has at this supply the value alone goes on; its working is handed to nobody',
  },
  {
    file: 'lib/audio/gain.ts',
    line: "['Ur', ratedSupplyV, 'V'],",
    from: "['Ur', ratedSupplyV, 'V']",
    to: '[]',
    why: 'of what the amplifier has at this supply the value alone goes on; its working is handed to nobody',
  },
  {
    file: 'lib/power/conductor/conductor-choice.ts',
    line: 'return areaMm2 <= largestMm2 * 1.001',
    from: 'areaMm2 <= largestMm2 * 1.001',
    to: 'areaMm2 < largestMm2 * 1.001',
    why: 'areas on the edge of the grace itself are neither side of the bound',
  },
  {
    file: 'lib/power/conductor/conductor-choice.ts',
    line: 'if (size.areaMm2 < (duty.leastMm2',
    from: 'size.areaMm2 < (duty.leastMm2 ?? 0) / 1.001',
    to: 'size.areaMm2 <= (duty.leastMm2 ?? 0) / 1.001',
    why: 'areas on the edge of the grace itself are neither side of the bound',
  },
  {
    file: 'lib/power/conductor/conductor-choice.ts',
    line: 'if (ownSm >= leastSm',
    from: 'ownSm >= leastSm * (1 - conductanceGrace)',
    to: 'ownSm > leastSm * (1 - conductanceGrace)',
    why: 'conductances on the edge of the grace itself are neither side of the bound',
  },
  {
    file: 'lib/power/conductor/conductor-choice.ts',
    line: 'const at = beyondDoubt >= 0',
    from: 'beyondDoubt >= 0',
    to: 'beyondDoubt > 0',
    why: 'the first of all that is beyond doubt is the first that misses nothing too',
  },
  {
    file: 'lib/power/conductor/conductor-choice.ts',
    line: 'if (stockM !== undefined',
    from: 'stockM !== undefined',
    to: 'true',
    why: 'what is not counted is not less than any length',
  },
  {
    file: 'lib/power/conductor/conductor-choice.ts',
    line: '{ ...conductor, ...(measuredOhmPerM',
    from: 'measuredOhmPerM !== undefined',
    to: 'true',
    why: 'a resistance that is undefined counts as none',
  },
  {
    file: 'lib/power/conductor/conductor-choice.ts',
    line: '{ areaMm2: size.areaMm2, material, ...(measuredOhmPerM',
    from: 'measuredOhmPerM !== undefined',
    to: 'true',
    why: 'a resistance that is undefined counts as none',
  },
];
