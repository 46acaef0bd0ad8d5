import type { Level } from '../../lib/model/finding.ts';
import type { FindingId } from '../../lib/model/findings/index.ts';
import type { Case } from '../../lib/rules/rule.ts';

/** A case in which a rule must keep quiet. */
export interface QuietCase {
  readonly name: string;
  readonly about: () => Case;
}

/** A case in which a rule must speak: at this level, about this subject, with these words. */
export interface FiringCase extends QuietCase {
  readonly level: Level;
  readonly subject: string;
  readonly says?: RegExp;
  /** The way out that it names. */
  readonly toDo?: RegExp;
  /** Where the finding points; the job file where left out. */
  readonly path?: string;
  readonly file?: 'job.yaml' | 'vehicle.yaml' | 'shop.yaml' | 'parts.yaml';
}

/** The cases of one rule. */
export interface CasesOfRule {
  readonly fires: readonly FiringCase[];
  readonly quiet: readonly QuietCase[];
}

/** The cases of one family of rules, by the id of what they find. The source of each limit stands beside it. */
export type RuleCases = Readonly<Partial<Record<FindingId, CasesOfRule>>>;
