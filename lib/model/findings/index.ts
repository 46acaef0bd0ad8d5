import { accountingFindings } from './accounting.ts';
import { boardFindings } from './board.ts';
import { conductorFindings } from './conductors.ts';
import { endFindings } from './ends.ts';
import type { FindingEntry } from './entry.ts';
import { groundFindings } from './grounds.ts';
import { layoutFindings } from './layout.ts';
import { mountingFindings } from './mounting.ts';
import { protectionFindings } from './protection.ts';
import { runFindings } from './runs.ts';
import { signalFindings } from './signal.ts';
import { speakerFindings } from './speakers.ts';
import { stockAndRecordFindings } from './stock-and-record.ts';
import { supplyFindings } from './supply.ts';
import { turnOnFindings } from './turn-on.ts';

export type { FindingEntry } from './entry.ts';

/** All findings by family, in the order in which the guide tells them: what can burn first, what is good to know last. */
export const findingFamilies = {
  protection: { title: 'Protection', findings: protectionFindings },
  conductors: { title: 'Conductors', findings: conductorFindings },
  supply: { title: 'Supply', findings: supplyFindings },
  grounds: { title: 'Grounds', findings: groundFindings },
  ends: { title: 'Ends and ports', findings: endFindings },
  runs: { title: 'Runs', findings: runFindings },
  'turn-on': { title: 'Turn-on and relays', findings: turnOnFindings },
  accounting: { title: 'Nothing forgotten', findings: accountingFindings },
  speakers: { title: 'Channels and speakers', findings: speakerFindings },
  signal: { title: 'Source and signal', findings: signalFindings },
  board: { title: 'Board', findings: boardFindings },
  layout: { title: 'Layout', findings: layoutFindings },
  mounting: { title: 'Mounting', findings: mountingFindings },
  'stock-and-record': { title: 'Stock, work and record', findings: stockAndRecordFindings },
} as const;

/** Every finding that a rule or a computation can give, by its id. What is missing here does not compile. */
export const findingCatalogue = {
  ...protectionFindings,
  ...conductorFindings,
  ...supplyFindings,
  ...groundFindings,
  ...endFindings,
  ...runFindings,
  ...turnOnFindings,
  ...accountingFindings,
  ...speakerFindings,
  ...signalFindings,
  ...boardFindings,
  ...layoutFindings,
  ...mountingFindings,
  ...stockAndRecordFindings,
} as const;

export type FindingFamily = keyof typeof findingFamilies;
/** The ids of a family's findings. */
export type FindingIdIn<F extends FindingFamily> = F extends FindingFamily
  ? keyof (typeof findingFamilies)[F]['findings']
  : never;
export type FindingId = keyof typeof findingCatalogue;
/** The levels that a finding may have. */
export type LevelOf<Id extends FindingId> = (typeof findingCatalogue)[Id]['levels'][number];

/** The entry of a finding, with its levels and source as any finding has them. */
export function findingEntry(id: FindingId): FindingEntry {
  return findingCatalogue[id];
}

/** True for an id that the catalogue has; a plan that was frozen long ago may hold one that is retired. */
export function isFindingId(id: string): id is FindingId {
  return Object.hasOwn(findingCatalogue, id);
}
