/** What a crimped end must hold, by conductor size (lb of force). */
export interface PullTest {
  /** A sample crimp of the size and die, pulled until it has held this. */
  readonly sampleLb: number;
  /** The tug that every end gets on the bench. */
  readonly tugLb: number;
}

/** Where the two columns come from. */
export const pullTestSources = {
  sample: "UL 486A, as a terminal maker's published application specification prints it",
  tug: 'ABYC E-11, from memory',
} as const;

/** Pull tests by AWG: the sources stand in `pullTestSources`. */
const pullTests: Readonly<Record<string, PullTest>> = {
  '18': { sampleLb: 20, tugLb: 10 },
  '16': { sampleLb: 30, tugLb: 15 },
  '14': { sampleLb: 50, tugLb: 30 },
  '12': { sampleLb: 70, tugLb: 35 },
  '10': { sampleLb: 80, tugLb: 40 },
  '8': { sampleLb: 90, tugLb: 45 },
  '6': { sampleLb: 100, tugLb: 50 },
  '4': { sampleLb: 140, tugLb: 60 },
  '2': { sampleLb: 180, tugLb: 70 },
  '1/0': { sampleLb: 250, tugLb: 80 },
};

/** The pull test of a size; null for one that none is published for, whose terminal's maker tells. */
export function pullTest(awg: string | null): PullTest | null {
  return awg !== null && Object.hasOwn(pullTests, awg) ? (pullTests[awg] ?? null) : null;
}
