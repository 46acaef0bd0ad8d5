import { sheetMark } from '../../model/plan/sheet-mark.ts';
import { counted, spelled, statusWords } from '../words/words.ts';
import { addresses, linkTo } from './addresses.ts';
import { inOrder } from './job-order.ts';
import type { PublishedJob } from './shop-site.ts';

/** A job as an index lists it. */
export interface JobEntry {
  readonly id: string;
  readonly title: string;
  readonly href: string;
  readonly vehicle: string;
  readonly vehicleHref: string;
  readonly revision: string;
  readonly status: string;
  readonly issuedOn: string;
  readonly draft: boolean;
  readonly stops: string;
  readonly cautions: string;
  readonly boards: string;
}

/** Entries of jobs for a page, by id. */
export function jobEntries(from: string, jobs: readonly PublishedJob[]): JobEntry[] {
  return inOrder(jobs).map(({ plan }) => {
    const { job, vehicle, findings, boards } = plan;
    const count = (level: string): number => findings.filter((one) => one.level === level).length;
    const accepted = findings.filter((one) => one.accepted !== undefined).length;
    return {
      id: job.id,
      title: job.title,
      href: linkTo(from, addresses.job(job.id)),
      vehicle: vehicle.title,
      vehicleHref: linkTo(from, addresses.vehicle(vehicle.id)),
      revision: job.revision,
      status: statusWords[job.status],
      issuedOn: job.issuedOn,
      draft: sheetMark(plan)?.word === 'DRAFT',
      stops: counted(count('stop'), 'stop'),
      cautions: `${counted(count('caution'), 'caution')}${accepted > 0 ? `, ${accepted} accepted` : ''}`,
      boards: boards.length === 0 ? 'no board' : boards.map((board) => spelled(board.material)).join(', '),
    };
  });
}
