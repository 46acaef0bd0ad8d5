/** What a drill is set up for: its bit, how deep it goes, and the screw that the hole is the pilot of. */
export interface HoleSetUp {
  readonly diameterM: number;
  /** Null: right through. */
  readonly depthM: number | null;
  readonly pilotFor: string | null;
}

/** The holes of one set-up of the drill, by the letter that stands beside each of them. */
export interface LetteredHoles<H extends HoleSetUp> {
  readonly letter: string;
  readonly setUp: HoleSetUp;
  readonly holes: readonly H[];
}

/** I, O and Q are left out: on a drawing they read as figures. */
const alphabet = 'ABCDEFGHJKLMNPRSTUVWXYZ';

/**
 * Holes by letter: one letter for each diameter, depth and screw, the widest first, then those right through, then the
 * deeper. The same holes get the same letters, in whatever order they are written.
 */
export function letteredHoles<H extends HoleSetUp>(holes: readonly H[]): LetteredHoles<H>[] {
  const groups = new Map<string, H[]>();
  for (const hole of holes) {
    const { diameterM, depthM, pilotFor } = hole;
    const key = JSON.stringify([
      micrometres(diameterM),
      depthM === null ? null : micrometres(depthM),
      pilotFor,
    ]);
    groups.set(key, [...(groups.get(key) ?? []), hole]);
  }
  return [...groups.values()]
    .flatMap((own) => (own[0] ? [{ setUp: own[0], holes: own }] : []))
    .toSorted((a, b) => compareSetUps(a.setUp, b.setUp))
    .map(({ setUp, holes: own }, nth) => {
      const { diameterM, depthM, pilotFor } = setUp;
      return { letter: letterOf(nth), setUp: { diameterM, depthM, pilotFor }, holes: own };
    });
}

/** Sizes that differ by less are one: what inches and millimetres leave behind. */
const micrometres = (lengthM: number): number => Math.round(lengthM * 1e6);

function compareSetUps(a: HoleSetUp, b: HoleSetUp): number {
  const [nameA, nameB] = [a.pilotFor ?? '', b.pilotFor ?? ''];
  const byDepth = (b.depthM ?? Number.MAX_VALUE) - (a.depthM ?? Number.MAX_VALUE);
  return b.diameterM - a.diameterM || byDepth || (nameA < nameB ? -1 : nameA > nameB ? 1 : 0);
}

/** A to Z, then A2 to Z2. */
function letterOf(nth: number): string {
  const round = Math.floor(nth / alphabet.length) + 1;
  return `${alphabet.charAt(nth % alphabet.length)}${round === 1 ? '' : round}`;
}
