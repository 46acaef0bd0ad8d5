import type { Equivalent } from './equivalent.ts';

/** Of boards, their strength and their wires. */
export const boards: readonly Equivalent[] = [
  {
    file: 'lib/board/strength/banded.ts',
    line: 'const [low, high] = row < column',
    from: 'row < column',
    to: 'row <= column',
    why: 'of an entry on the diagonal both are the same',
  },
  {
    file: 'lib/board/strength/plate.ts',
    line: 'if (!(flangeEA > 0 && ribEA > 0))',
    from: 'flangeEA > 0',
    to: 'true',
    why: 'a flange of nothing adds nothing to a rib of something',
  },
  {
    file: 'lib/board/strength/rib.ts',
    line: '.filter((alongM) => alongM > 0',
    from: 'alongM < lengthM',
    to: 'alongM <= lengthM',
    why: 'a stretch of no length between a foot at the end and the end is never the greatest',
  },
  {
    file: 'lib/board/strength/stiffness.ts',
    line: '...(elements === undefined ?',
    from: 'elements === undefined',
    to: 'false',
    why: 'a number of elements that is undefined counts as none',
  },
  {
    file: 'lib/plan/wiring/wire-ends.ts',
    line: 'const part = id === null ? undefined',
    from: 'id === null',
    to: 'false',
    why: 'no part of a catalogue is called null',
  },
  {
    file: 'lib/plan/wiring/wires.ts',
    line: 'const coverings = (run?.passes ??',
    from: '[]',
    to: '["Stryker was here"]',
    why: 'a text has no covering, which counts as none',
  },
  {
    file: 'lib/plan/board/board-stacking.ts',
    line: "if (spec?.kind === 'distribution') return isUnfused",
    from: 'spec?.kind',
    to: 'spec.kind',
    why: 'what stands on a board has a part',
  },
  {
    file: 'lib/plan/board/board-wires.ts',
    line: 'const bundle = bundleDiameterM(diameters.length > 0',
    from: 'diameters.length > 0',
    to: 'diameters.length >= 0',
    why: 'a bundle of nothing is a fault, for which the same diameter stands',
  },
  {
    file: 'lib/plan/board/sheets/sheet-lacks.ts',
    line: "const freeM = board.space['sound-points'][point]?.",
    from: "board.space['sound-points'][point]?.['free-depth']",
    to: "board.space['sound-points'][point]['free-depth']",
    why: 'a fixing is counted only where its sound point is there',
  },
  {
    file: 'lib/plan/board/sheets/sheet-lacks.ts',
    line: 'const ribs = countedRibs(job, laid.board, planRibs(',
    from: '[]',
    to: '["Stryker was here"]',
    why: 'a text is no open hole, and screws of ribs count in no stiffness',
  },
];
