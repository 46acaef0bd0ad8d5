import type { Site } from '../layout/lattice.ts';
import type { Proposal, Setting } from '../layout/layout-setting.ts';

/** The sites that a proposal puts the open items on: on the lattice or between its lines. */
export function sitesOfProposal({ open }: Setting, { placements }: Proposal): Site[] {
  return open.flatMap(({ item, levels, sites }): Site[] => {
    const at = placements.find((one) => one.item === item.id);
    if (!at) return [];
    const { turnDeg, xM, yM, heightM } = at;
    const level = levels.find((one) => one.heightM === heightM) ?? sites;
    const near = level.nearest(turnDeg, at);
    return [{ column: near?.column ?? 0, row: near?.row ?? 0, xM, yM, turnDeg, heightM }];
  });
}
