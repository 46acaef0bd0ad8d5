import type { Job, Link } from '../../model/content/resolved-job.ts';
import type { Keep } from '../../model/keep.ts';
import { givenPlacement, layOutBoards, placementFaults } from '../board/board-layout.ts';
import { placeBoards } from '../board/place-boards.ts';
import { PlanBook } from '../plan-book.ts';
import { buildCircuit } from '../power/circuit/circuit.ts';
import { devicesById } from '../wiring/conductor-role.ts';
import { uncut, unplaced } from './opened-again.ts';

/**
 * A job in which devices stand where the revision before built them as far as they still fit there: past the edge of a
 * board that is cut anew, or within what the job places today, their place is open again. What is written never gives way.
 */
export function withFittingPlaces(job: Job, keep: Keep): Job {
  if (!job.held || job.held.places.length === 0) return job;
  let fitting = job;
  for (;;) {
    const held = new Set(fitting.held?.places);
    const misfits = stoppedItems(fitting, keep).filter((id) => held.has(id));
    if (misfits.length === 0) return fitting;
    fitting = withoutPlaces(fitting, new Set(misfits));
  }
}

/** What stops where it is given to stand; what is still open is not looked at. */
function stoppedItems(job: Job, keep: Keep): readonly string[] {
  const devices = job.devices.filter(({ id, board }) => board === null || givenPlacement(job, id) !== null);
  const ids = new Set(devices.map(({ id }) => id));
  const links = job.links.filter(({ from, to }) => ids.has(from.device) && ids.has(to.device));
  const given = placeBoards({ ...job, devices, links }, new PlanBook());
  const { roles } = buildCircuit(given, devicesById({ devices }));
  // Everything that is looked at has its place: no search asks how thick a wire is.
  return layOutBoards(given, { roles, sized: () => new Map() }, new PlanBook(), keep)
    .flatMap((laid) => placementFaults(given, laid, keep))
    .filter(({ level }) => level === 'stop')
    .flatMap(({ of }) => of);
}

/** The same job with the places of some devices open, and with them the lengths of what is joined to these. */
function withoutPlaces(job: Job, open: ReadonlySet<string>): Job {
  const { held } = job;
  if (!held) return job;
  const reaches = ({ from, to }: Link) => open.has(from.device) || open.has(to.device);
  const lengths = new Set(held.lengths);
  return {
    ...job,
    held: {
      ...held,
      places: held.places.filter((id) => !open.has(id)),
      lengths: held.lengths.filter((id) => !job.links.some((link) => link.id === id && reaches(link))),
    },
    devices: job.devices.map((device) => (open.has(device.id) ? unplaced(device) : device)),
    links: job.links.map((link) => (lengths.has(link.id) && reaches(link) ? uncut(link) : link)),
  };
}
