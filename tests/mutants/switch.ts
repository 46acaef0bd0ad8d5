/** What changed code and the tests that run over it share: which change is awake, and what was run through. */
export interface Switch {
  activeMutant?: string | undefined;
  /** How often the awake change was run through; past the limit the changed code throws. */
  hitCount?: number | undefined;
  hitLimit?: number | undefined;
  /** What runs is counted for the test of this name, otherwise for what runs between tests. */
  currentTestId?: string | undefined;
  mutantCoverage?: {
    readonly static: Record<string, number>;
    readonly perTest: Record<string, Record<string, number>>;
  };
}

declare global {
  var __stryker__: Switch | undefined;
}

/** The one that changed code looks at. */
export function codeSwitch(): Switch {
  globalThis.__stryker__ ??= {};
  return globalThis.__stryker__;
}

/** Runs something as a test of that name, and tells how often it ran through each change. */
export async function runsThrough(name: string, run: () => unknown): Promise<ReadonlyMap<string, number>> {
  const at = codeSwitch();
  at.mutantCoverage ??= { static: {}, perTest: {} };
  at.currentTestId = name;
  try {
    await run();
    return new Map(Object.entries(at.mutantCoverage.perTest[name] ?? {}));
  } finally {
    at.currentTestId = undefined;
    delete at.mutantCoverage.perTest[name];
  }
}

/** What ran between tests: when a module was loaded, or a test file collected its tests. */
export const ranBetweenTests = (): readonly string[] =>
  Object.keys(codeSwitch().mutantCoverage?.static ?? {});
