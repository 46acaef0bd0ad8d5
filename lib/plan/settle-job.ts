import type { Job } from '../model/content/resolved-job.ts';
import type { Keep, Step } from '../model/keep.ts';
import { layOutBoards } from './board/board-layout.ts';
import { hasOpenPorts, withChosenPorts } from './board/open-port-choice.ts';
import { placeBoards } from './board/place-boards.ts';
import { chooseSheets } from './board/sheets/choose-sheets.ts';
import { withShortestBolts } from './board/sheets/shortest-bolts.ts';
import { withFittingPlaces } from './built/fit-places.ts';
import { withFittingWires, withOpenSizes } from './built/fit-wires.ts';
import { type HeldSettled, heldSettled, settledAgain } from './kept-settled.ts';
import { once } from './once-each.ts';
import { PlanBook } from './plan-book.ts';
import { hasProposedLengths, withLongestLeads, withProposedLengths } from './proposed-lengths.ts';
import { type SettledJob, settleByWiring, settleInPlace, sizesAtLeast } from './settle-sizes.ts';
import { sizedFrom } from './sized-from.ts';
import { sizingBasis } from './sizing-basis.ts';

/** Places, sizes and ways of a job, from what they follow from alone. */
export const settledStep: Step<Job, HeldSettled> = {
  id: 'settled',
  compute: (job, keep) => {
    const book = new PlanBook();
    return heldSettled(job, settleAnew(job, book, keep), book);
  },
};

/**
 * Places, sizes and routes a job. What it comes to follows from what of the job `sizedFrom` leaves, whatever else the job
 * says.
 */
export function settleJob(written: Job, book: PlanBook, keep: Keep): SettledJob {
  return settledAgain(written, keep(settledStep, sizedFrom(written)), book);
}

/**
 * The same, from all that is given. Where a job leaves ports open, that is done twice: with the first ports that are free,
 * which tells where everything stands and how thick it is; then, placed as before, with the ports that cross least. So are
 * the lengths of proposed leads: they follow from the ways that the first round laid. What a released revision built is
 * where it was and of the wire that it was, as far as that still does.
 */
export function settleAnew(written: Job, book: PlanBook, keep: Keep): SettledJob {
  const job = withFittingPlaces(written, keep);
  if (!job.held || job.held.reels.length === 0) return settleOnce(job, book, keep);
  const { settled } = settleOnce(withOpenSizes(job), new PlanBook(), keep);
  return settleOnce(withFittingWires(job, settled.all), book, keep);
}

function settleOnce(written: Job, book: PlanBook, keep: Keep): SettledJob {
  const drafted = withLongestLeads(written);
  // What sizes follow from is told once they have settled.
  const before = once(() => sizingBasis(drafted, new PlanBook()));
  // The sizes before anything is placed: what they are at least, whatever the ways on the boards.
  const ahead = once(() => sizesAtLeast(before()));
  const sized = () => ahead().all;
  const job = placeBoards(withShortestBolts(chooseSheets(drafted, sized, book, keep)), book);
  const isOpen = hasOpenPorts(job) || hasProposedLengths(job);
  const first = { ...before(), job };
  const laid = layOutBoards(job, { roles: first.circuit.roles, sized }, book, keep);
  const routes = isOpen ? 'draft' : 'final';
  const settled = settleByWiring(first, laid, keep, routes, ahead());
  if (!isOpen) return { ...first, settled };
  const { job: ported, chosen } = withChosenPorts(job, settled, first.circuit.roles, keep);
  const second = sizingBasis(withProposedLengths(ported, first.devices, settled), new PlanBook());
  for (const [id, port] of chosen) book.trace(id, port);
  return { ...second, settled: settleInPlace(second, settled.laid, keep, 'final') };
}
