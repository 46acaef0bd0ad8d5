import type { JobBoard, JobFile, WrittenBoard, WrittenJob } from '../../model/content/job.ts';
import type { ProposalDoubt, ProposalRule } from '../../model/content/proposal.ts';

/** Why a rule proposes something. */
export interface Why {
  readonly rule: ProposalRule;
  /** Built from ids and measures only. */
  readonly reason: string;
  /** True for what the trade does without a source. */
  readonly cp?: boolean;
  readonly doubt?: ProposalDoubt;
  /** The released revision that it is taken over from. */
  readonly since?: string;
}

/** The job as it stands before any proposal, its groups and boxes opened out. */
export type OpenedJob = Omit<WrittenJob, 'devices' | 'links' | 'boards'> &
  Pick<JobFile, 'devices' | 'links'> & { readonly boards: Readonly<Record<string, DraftBoard>> };

/** A board while the job is completed: it may have no outline yet. */
export type DraftBoard = Omit<JobBoard, 'outline'> & Pick<WrittenBoard, 'outline'>;

/** The place of a link in a lead: its side, null where it is the only one. */
export interface LeadSide {
  readonly lead: string;
  readonly side: 'left' | 'right' | null;
}

/** The cable that a link lies in, and its conductors there in the order of the link. */
export interface LaidIn {
  readonly cable: string;
  readonly conductors: readonly string[];
}
