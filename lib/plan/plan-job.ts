import type { Job, ReadJob } from '../model/content/resolved-job.ts';
import { computeAnew, type Keep } from '../model/keep.ts';
import type { BuildPlan } from '../model/plan/index.ts';
import { planAudio } from './audio/audio.ts';
import { withWireLoss } from './audio/wire-loss.ts';
import { planBoard } from './board/plan-board.ts';
import { offCutsFor } from './board/sheets/off-cuts-on-shelf.ts';
import { compareBuilt } from './built/compare-built.ts';
import { PlanBook } from './plan-book.ts';
import { planHouseRules } from './plan-house-rules.ts';
import { planItems } from './plan-items.ts';
import { computedFrom, type Planned, type PlannedBody, plannedBody, withHead } from './planned.ts';
import { planPower } from './power/plan-power.ts';
import { planHeat } from './power/space-heat.ts';
import { planProposals } from './proposals.ts';
import { settleJob } from './settle-job.ts';
import { accountTerminals } from './terminal-accounting.ts';
import { shopHead, vehicleHead } from './title-block-heads.ts';
import { remarkJoints } from './wiring/joint-remarks.ts';
import { planBranches } from './wiring/plan-branches.ts';
import { planJoints } from './wiring/plan-joints.ts';
import { planRuns } from './wiring/runs/runs.ts';
import { planCables, planWires } from './wiring/wires.ts';
import { planControls } from './work/controls.ts';
import { pickBeside } from './work/pick-beside.ts';
import { pickList } from './work/pick-list.ts';
import { planWork, withFirstPower } from './work/plan-work.ts';
import { planMeasurements } from './work/readings/measurements.ts';

/**
 * Makes the build plan of a job:
 *
 *   links ─▶ circuit ─▶ audio (load, power of each channel) ─▶ current of each device
 *   boards ─▶ placed ─▶ settle: lengths ▶ sizes ▶ routes ▶ lengths …, until no size grows
 *   ports left open ─▶ those that cross least on the board ─▶ once more as above, placed as before
 *   settled ─▶ operating points, fuses, conductors, wires, boards ─▶ pick list, measurements, order of work
 *
 * Pure: the same job gives the same plan, byte for byte, whatever `keep` gives back of what was computed before. What
 * only its head says, such as its title, asks for nothing of this anew.
 */
export function planJob(written: ReadJob, keep: Keep = computeAnew): Planned {
  return withHead(written, keep({ ...plannedBody, compute: planBody }, computedFrom(written)));
}

/** The plan of a job without its head: what of it is worth keeping. */
export function planBody(given: Job, keep: Keep): PlannedBody {
  const book = new PlanBook();
  const { job, devices, circuit, channels, settled } = settleJob(given, book, keep);
  const { audio } = planAudio(job, devices, circuit, book);
  const supplied = planPower(settled.sizing, settled.power, book);
  const runs = planRuns(job, settled.all, book);
  const wires = planWires({ job, devices, sized: settled.all, lengths: settled.sizing.lengths, runs }, book);
  const joints = planJoints(job, devices, wires);
  const cables = planCables(job, wires);
  const boards = settled.laid.flatMap((board, index) => {
    const routed = settled.routed[index];
    return routed ? [planBoard(job, board, routed, book, keep)] : [];
  });
  const heat = planHeat(job, settled.sizing.paths, supplied, book);
  const heard = withWireLoss(job, audio, channels, settled, book);
  const items = planItems(job);
  const power = withFirstPower(job, supplied, { items, wires, boards });
  remarkJoints({ job, sized: settled.all, channels: heard.channels }, book);
  const controls = planControls(job, heard);
  const measurements = planMeasurements(job, { power, audio: heard, boards, items }, book);
  const work = planWork(
    job,
    { items, wires, joints, runs, cables, boards, power, audio, controls, measurements },
    book,
  );
  const built = compareBuilt(job, { items, boards, wires, runs });
  const offCuts = offCutsFor(job, boards);
  const plan = {
    shop: shopHead(job),
    vehicle: vehicleHead(job),
    rules: planHouseRules(job),
    proposals: planProposals(job),
    ...(built && { built }),
    findings: [],
    traces: book.traces(),
    items,
    power,
    audio: heard,
    boards,
    heat,
    offCuts,
    wires,
    runs,
    branches: planBranches(job, devices, wires),
    ...(joints.length > 0 && { joints }),
    cables,
    terminals: accountTerminals(job),
    controls,
    measurements,
    ...work,
    ...picked(job, { items, power, wires, runs, cables, boards, offCuts }),
    passes: settled.passes,
  };
  return { plan, remarks: book.remarks() };
}

/** What is fetched from the shelf: all of it, or what is new beside the revision that is built in. */
function picked(
  job: Job,
  plan: Pick<BuildPlan, 'items' | 'power' | 'wires' | 'runs' | 'cables' | 'boards' | 'offCuts'>,
): Pick<BuildPlan, 'pick' | 'pickBeyond'> {
  const pick = pickList({ job, ...plan, fuses: plan.power.fuses });
  const { inPlace } = job;
  if (!inPlace) return { pick };
  const whole = { ...plan, job: { id: job.id }, rules: planHouseRules(job), pick };
  const beside = pickBeside(job, whole, inPlace);
  const fetched = new Set(beside.map(({ part }) => part));
  const there = pick.filter(({ part }) => !fetched.has(part)).map(({ part, title }) => ({ part, title }));
  return { pick: beside, pickBeyond: { revision: inPlace.revision, inPlace: there } };
}
