import type { PlanRun, PlanStep } from '../../../model/plan/index.ts';
import { printedBit, printedMade } from '../../../model/printed/holes.ts';
import { countsHole, firstThrough } from '../../wiring/runs/way-holes.ts';
import { labelsOf, lengthText, minutesFor, ownWires, pieces, type Step, step, type Work } from '../work.ts';
import { safe } from './board-in.ts';
import { laidInDoorProof, layInDoorText } from './door-words.ts';
import { openZones, trimOff, trimOver } from './trim-steps.ts';

/** The id of the step in which the holes on the way of a run are drilled. */
const holesStep = (run: string): string => `holes-${run}`;

/** What a run waits for: each hole on its way that is still to be drilled, with it or with the run that goes through it first. */
function waysDrilled({ plan }: Work, run: PlanRun): PlanStep['waitsFor'] {
  const holes = run.grommets.filter(({ drilledBefore }) => drilledBefore !== undefined);
  const drilledWith = holes.map((hole) => firstThrough(plan.runs, run.id, hole) ?? run.id);
  return [...new Set(drilledWith)].map((id) => {
    return { step: holesStep(id), why: 'the hole on its way is drilled first' };
  });
}

/** Holes in sheet metal that a run asks for are drilled with the battery off, after a look behind, before it is laid. */
export function wayHoleSteps(work: Work): Step[] {
  const { plan, tape } = work;
  return plan.runs.flatMap((run): Step[] => {
    const own = run.grommets.filter(
      (hole) => hole.drilledBefore !== undefined && countsHole(plan.runs, run.id, hole),
    );
    if (own.length === 0) return [];
    const holes = own.map(({ zone, holeM, madeForM, part }) => {
      const sizeM = holeM ?? madeForM;
      const what = part === null ? 'a grommet that is still to be found' : part;
      if (sizeM === undefined) return `at the ${zone} as wide as ${what} asks for`;
      return `at the ${zone} ${printedMade(sizeM)} for ${what}, with ${printedBit(sizeM, 'clearance', tape.system)}`;
    });
    return [
      step(holesStep(run.id), [safe, ...trimOff(work, trimOver(work, run.id))], {
        layer: 'run',
        place: 'vehicle',
        by: 'vehicle',
        text: `Drill on the way of ${run.id}: ${holes.join('; ')}. First look and feel behind each: no tank, no line, no airbag, no wiring; a stop on the bit. Take the burr off and paint bare metal`,
        tools: ['drill', 'hole saw or step drill', 'depth stop', 'eye protection', 'touch-up paint'],
        minutes: minutesFor(work, 'drill-hole', own.length),
        acts: own.map((_, at) => `way-hole:${run.id}.${at + 1}`),
        proof: 'The grommet sits in it all round, and nothing behind was touched',
      }),
    ];
  });
}

/** Lays a run, with its grommets, its covering and the labels of its wires. */
export function layRun(work: Work, run: string): Step {
  const { plan } = work;
  const wires = ownWires(work).filter((wire) => wire.run === run);
  const found = plan.runs.find(({ id }) => id === run);
  const stays = (found?.grommets ?? []).filter(({ own, unmeasured }) => own === true || unmeasured === true);
  const guarded = (found?.grommets ?? []).filter((grommet) => !stays.includes(grommet));
  const grommets = guarded.filter((grommet) => countsHole(plan.runs, run, grommet));
  const besides = guarded.flatMap((grommet) => {
    const first = grommets.includes(grommet) ? undefined : firstThrough(plan.runs, run, grommet);
    return first === undefined ? [] : [`; at the ${grommet.zone} through the grommet of ${first}`];
  });
  const drilled = found ? waysDrilled(work, found) : [];
  const isOpen = guarded.length > 0 && found?.passes?.some(({ zone }) => openZones.has(zone));
  return step(`run-${run}`, [safe, ...trimOff(work, trimOver(work, run)), ...drilled], {
    layer: 'run',
    place: 'vehicle',
    by: 'vehicle',
    text: `Lay the run ${run}: ${labelsOf(wires)}${found?.covering ? `, in ${found.covering}` : ''}${grommetsText(work, grommets)}${besides.join('')}${throughOwnText(stays)}${isOpen ? '; sealer round each grommet that has weather on one side' : ''}${found ? layInDoorText(found, wires) : ''}`,
    tools: ['pull line', 'label printer', ...(isOpen ? ['sealer'] : [])],
    minutes: minutesFor(work, 'pull-wire', pieces(wires)),
    installs: wires.map(({ id }) => id),
    acts: [
      ...wires.map(({ id }) => `label:${id}`),
      ...grommets.map((_, index) => `grommet:${run}.${index + 1}`),
      ...(found?.covering ? [`cover:${run}`] : []),
    ],
    proof: `Clear of airbags, pedals, seat rails and sharp edges${guarded.length + stays.length > 0 ? '; a grommet in every metal edge' : ''}; a tie every ${lengthText(work, 'at-most', work.tiesM.vehicle)}${found ? laidInDoorProof(found, wires) : ''}`,
  });
}

/** The vehicle's own grommets on the way of a run; one whose bore nobody measured is measured before anything is led through. */
function throughOwnText(grommets: WorkRun['grommets']): string {
  const zones = (open: boolean) => {
    const found = grommets.filter(({ unmeasured }) => (unmeasured === true) === open);
    return found.map(({ zone }) => zone).join(' and ');
  };
  const [known, open] = [zones(false), zones(true)];
  return `${known === '' ? '' : `; through the vehicle's own grommet at ${known}, which stays`}${open === '' ? '' : `; measure the bore of the vehicle's own grommet at ${open} first: the bundle goes through it with its covering, or another way is found`}`;
}

/** The grommets of a run, each with its hole; one that is still to be cut with the look behind it that comes first. */
function grommetsText({ tape }: Work, grommets: WorkRun['grommets']): string {
  return grommets
    .map(({ zone, part, holeM, madeForM, drilledBefore }) => {
      const what = part ?? 'a grommet that is still to be found';
      if (holeM !== null) {
        const plugged = drilledBefore === undefined ? ' (a blind plug in it comes out first)' : '';
        return `; ${what} in the hole of ${printedMade(holeM)} at the ${zone}${plugged}`;
      }
      if (madeForM === undefined || drilledBefore !== undefined) return `; ${what} at the ${zone}`;
      return `; ${what} at the ${zone}, in a hole of ${printedMade(madeForM)}: where it is not there, look and feel behind first (no tank, no line, no airbag, no wiring), then cut it with ${printedBit(madeForM, 'clearance', tape.system)}`;
    })
    .join('');
}

type WorkRun = Work['plan']['runs'][number];
