import { amps, ampsDrawn, squareMmAtLeast } from '../../../model/printed/told.ts';
import type { Remark } from '../../../model/remark.ts';
import { goesIn, type JudgedCable } from '../../../power/conductor/conductor-choice.ts';
import type { ConductorTask } from './conductor-task.ts';
import type { LinkPort } from './link-ports.ts';

/** What a stop says: what is wrong, and what to buy or to change. */
type Told = Pick<Remark, 'message' | 'remedy'>;

/**
 * The stop for a conductor that no cable of the catalogue serves, with the sizes and currents that a way out of it
 * needs: a reducer or another port where one that carries enough does not go in, a smaller fuse, other insulation.
 * `considered`: every cable that could be judged, thin to thick.
 */
export function noneFits(
  task: ConductorTask,
  ports: readonly LinkPort[],
  considered: readonly JudgedCable[],
  reason: string,
): Remark {
  const { id } = task.link;
  const thinnest = considered.find((cable) => carriedA(cable) > 0 && carriedA(cable) >= task.neededA);
  const refusing = thinnest ? ports.filter((port) => !goesIn(thinnest.candidate.size.areaMm2, port)) : [];
  const told =
    thinnest && refusing.length > 0
      ? portsRefuse(task, thinnest, refusing, mostA(considered, ports))
      : thinnest
        ? asksForMore(task, ports, thinnest)
        : carriesTooLittle(task, considered);
  return {
    rule: 'conductor-none-fits',
    level: 'stop',
    of: [id],
    ...(told ?? {
      message: `no cable of the catalogue fits ${id}: ${reason}`,
      remedy:
        'use a larger port or reducer, a smaller fuse, insulation for a higher temperature, or a second feed',
    }),
  };
}

const carriedA = ({ ampacity }: JudgedCable): number => ampacity.ampacityA.value;

/** The most that a cable carries which goes into all ports (A). */
function mostA(considered: readonly JudgedCable[], ports: readonly LinkPort[]): number {
  const fitting = considered.filter(({ candidate: { size } }) =>
    ports.every((port) => goesIn(size.areaMm2, port)),
  );
  return Math.max(0, ...fitting.map(carriedA));
}

const needed = ({ neededA }: ConductorTask): string => ampsDrawn(neededA);

const smallerFuses = (currentA: number): string =>
  currentA > 0 ? `; or fit fuses that let at most ${amps(currentA)} through to it` : '';

function portsRefuse(
  task: ConductorTask,
  { candidate: { size } }: JudgedCable,
  refusing: readonly LinkPort[],
  fittingA: number,
): Told {
  const limits = refusing.map(({ id, largest }) => `${id} takes at most ${largest}`).join(', and ');
  const reducers = refusing.every(({ clamps }) => clamps)
    ? refusing.map(({ largest }) => `a reducer for ${size.label} with a pin of ${largest} or less`)
    : [];
  const buy =
    reducers.length > 0 ? `put ${[...new Set(reducers)].join(' and ')} into the catalogue; or ` : '';
  return {
    message:
      task.neededA > 0
        ? `${task.link.id} must carry ${needed(task)}: ${size.label} is the smallest cable of the catalogue that does, and ${limits}`
        : `${size.label} is the smallest cable of the catalogue for ${task.link.id}, and ${limits}`,
    remedy: `${buy}use a part whose ${refusing.map(({ id }) => id).join(' and ')} takes ${size.label}${task.neededA > 0 ? smallerFuses(fittingA) : ''}`,
  };
}

/**
 * Where a cable carries enough and goes into the ports, and something beside its fuses asks for a larger one: what asks,
 * and the line that settles it. Null where nothing is known to ask.
 */
function asksForMore(
  { link, why, leastMm2, neededA }: ConductorTask,
  ports: readonly LinkPort[],
  { candidate: { size } }: JudgedCable,
): Told | null {
  const isUnder = (areaMm2: number) => size.areaMm2 < areaMm2 / 1.001;
  const limits = ports.map(({ id, largest }) => `${id} takes at most ${largest}`).join(', and ');
  const carries = neededA > 0 ? `, which carries the ${ampsDrawn(neededA)} of its fuses` : '';
  const [wide] = ports.filter(({ smallestMm2 }) => isUnder(smallestMm2));
  if (wide)
    return {
      message: `no cable of the catalogue fits ${link.id}: ${wide.id} takes no less than ${squareMmAtLeast(wide.smallestMm2)}, and ${limits}; ${size.label} is the smallest that carries enough`,
      remedy: `put a reel between these sizes into the catalogue, or use a part whose ports take ${size.label}`,
    };
  if (why === null || !isUnder(leastMm2)) return null;
  const name = link.id.replace(/\.[+-]$/, '');
  const ends = link.given ? `from: ${link.given.from}, to: ${link.given.to}, ` : '';
  return {
    message: `no cable of the catalogue fits ${link.id}: it is asked to be ${squareMmAtLeast(leastMm2)} or larger (${why})${limits === '' ? '' : `, and ${limits}`}`,
    remedy: `write the size that fits${carries}, and see its drop: links: { ${name}: { ${ends}size: ${size.label} } }; or use a part whose ports take a larger one, or put a reducer into the catalogue`,
  };
}

/** Null where nothing could be judged. */
function carriesTooLittle(task: ConductorTask, considered: readonly JudgedCable[]): Told | null {
  const [best] = considered.toSorted((a, b) => carriedA(b) - carriedA(a));
  if (!best) return null;
  const narrowest = best.ampacity.limits.toSorted((a, b) => a.stopA.value - b.stopA.value)[0]?.zone;
  const ambientC = task.zones.find(({ zone }) => zone === narrowest)?.ambientC;
  const { id } = task.link;
  if (carriedA(best) <= 0)
    return {
      message: `${id} passes ${narrowest}, at ${ambientC} C, and no cable of the catalogue for it has insulation for more than that`,
      remedy: `put a cable with insulation for well above ${ambientC} C into the catalogue, or lead it another way`,
    };
  return {
    message: `${id} must carry ${needed(task)}, and the most that a cable of the catalogue carries on its way is ${amps(carriedA(best))}: ${best.candidate.size.label}, in its zone ${narrowest}`,
    remedy: `put a larger cable, or one with insulation for a higher temperature, into the catalogue; or run a second one beside it, each behind its own fuse${smallerFuses(carriedA(best))}`,
  };
}
