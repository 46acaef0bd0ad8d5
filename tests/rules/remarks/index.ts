import type { CasesOfRemark, RemarkCases } from '../remark-case.ts';
import { acceptanceRemarksCases } from './acceptances.ts';
import { endAndRunRemarks } from './ends-and-runs.ts';
import { layoutRemarks } from './layout.ts';
import { levelRemarks } from './levels.ts';
import { loadRemarks } from './loads.ts';
import { miswiredRemarks } from './miswired.ts';
import { mountingRemarks } from './mounting.ts';
import { outlineRemarks } from './outline.ts';
import { powerRemarks } from './power.ts';
import { wiringRemarks } from './speaker-wiring.ts';
import { workRemarks } from './work.ts';

const every = {
  ...powerRemarks,
  ...endAndRunRemarks,
  ...wiringRemarks,
  ...miswiredRemarks,
  ...loadRemarks,
  ...levelRemarks,
  ...outlineRemarks,
  ...layoutRemarks,
  ...mountingRemarks,
  ...workRemarks,
  ...acceptanceRemarksCases,
} satisfies RemarkCases;

/** The cases of all that computations remark, each under its id. */
export const remarkCases: Readonly<Record<keyof typeof every, CasesOfRemark>> = every;
