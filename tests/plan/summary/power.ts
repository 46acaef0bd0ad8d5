import type { BuildPlan, OperatingPoint, PlanFuse } from '../../../lib/model/plan/index.ts';
import { amperes, counted, figure, inShort, listed, type Section, volts } from './words.ts';

/** Fuses, operating points, loads, heat, charging and turn-on. */
export function powerSections(plan: BuildPlan): Section[] {
  const { power } = plan;
  return [
    { heading: 'Fuses', lines: power.fuses.map(fuseLine) },
    { heading: 'Operating points', lines: power.points.flatMap((point) => pointLines(plan, point)) },
    {
      heading: 'Loads',
      lines: power.loads.map(
        ({ item, fuseA, ratedA, musicA, idleA, powerW }) =>
          `${item}: fuse ${amperes(fuseA)}, rated ${amperes(ratedA)}, music ${amperes(musicA)}, idle ${amperes(idleA)}, ${figure(powerW, 1)} W`,
      ),
    },
    {
      heading: 'Heat',
      lines: plan.heat.map(
        ({ space, lossW, outsideC, airC, surfaceM2, fanM3S, openings }) =>
          `${space}: ${figure(lossW, 1)} W into air of ${figure(airC, 1)} C, ${figure(outsideC, 0)} C round it, ${listed(`${figure(surfaceM2, 2)} m2 of wall`, fanM3S > 0 && `fan ${figure(fanM3S * 3600, 0)} m3/h`, openings.length > 0 && counted(openings.length, 'opening'))}`,
      ),
    },
    { heading: 'Charging and standing', lines: standingLines(plan) },
    {
      heading: 'Turn-on',
      lines: [
        ...power.turnOn.map(
          ({ source, loads, sumA, limitA, within }) =>
            `${source} drives ${listed(...loads.map(({ item }) => item))}: ${figure(sumA, 3)} of ${figure(limitA, 3)} A, ${within === null ? 'not known' : within ? 'within' : 'too much'}`,
        ),
        ...power.turnOnChain.map(
          ({ item, terminal, driver, byRelay, stage }) =>
            `${item}.${terminal}: stage ${figure(stage, 0)} from ${driver ?? 'nothing'}${byRelay ? ', a relay' : ''}`,
        ),
      ],
    },
  ];
}

function fuseLine(fuse: PlanFuse): string {
  const rating = fuse.ratingA === null ? 'no rating' : `${fuse.ratingA} A`;
  const bought = fuse.part ?? 'no part';
  return `${fuse.id}: ${fuse.form} ${rating}, ${bought}, ${fuse.chosen}; fault ${figure(fuse.faultA, 0)} A; ${inShort(fuse.reason)}`;
}

function pointLines({ power }: BuildPlan, { name, state, reason, elements }: OperatingPoint): string[] {
  const sources = elements
    .filter(({ kind }) => kind === 'source')
    .map(({ of, currentA }) => `${of} gives ${amperes(currentA === undefined ? currentA : -currentA)}`);
  const seen = power.drops
    .filter(({ point }) => point === name)
    .map(
      ({ item, voltageV, feedDropV, groundDropV, unknown }) =>
        `  ${item}: ${volts(voltageV)}, feed drops ${volts(feedDropV)}, ground ${volts(groundDropV)}${unknown === undefined ? '' : `; ${unknown}`}`,
    );
  return [`${name}: ${listed(state, reason, ...sources)}`, ...seen];
}

function standingLines({ power }: BuildPlan): string[] {
  return [
    ...power.charging.map(
      ({ name, alternatorA, vehicleA, averageA, marginA, reserveMinutes }) =>
        `${name}: alternator ${amperes(alternatorA)}, vehicle ${amperes(vehicleA)}, audio ${amperes(averageA)}, left ${amperes(marginA)}, reserve ${figure(reserveMinutes, 0)} min`,
    ),
    ...(power.keyOff
      ? [`key off: ${figure(power.keyOff.drawA, 4)} of ${figure(power.keyOff.limitA, 4)} A`]
      : []),
    ...(power.firstPower ?? []).map(
      ({ board, idleA, limitA, oneByOne }) =>
        `first power of ${board}: idles at ${amperes(idleA)}, limit ${amperes(limitA)}, ${oneByOne ? 'one by one' : 'all together'}`,
    ),
  ];
}
