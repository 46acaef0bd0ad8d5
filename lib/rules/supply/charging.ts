import type { PlanPower } from '../../model/plan/index.ts';
import { houseRule } from '../house-rule-of.ts';
import { deviceSpot } from '../look-up.ts';
import type { Rule, Verdict } from '../rule.ts';
import { amps, ampsDrawn, listed, percent } from '../words.ts';

type Regime = PlanPower['charging'][number];

/** A sum of demands on the alternator with music, and how much of it goes to chargers (A). */
interface Demand {
  readonly wholeA: number;
  readonly chargersA: number;
}

/** As the operating point was solved, and with every battery behind a charger run down. */
function demandsOf({ vehicleA, averageA, chargers = [] }: Regime): {
  readonly now: Demand;
  readonly flat: Demand;
} {
  const nowA = chargers.reduce((sum, { currentA }) => sum + currentA, 0);
  const flatA = chargers.reduce((sum, one) => sum + Math.max(one.currentA, one.flatA), 0);
  const withoutA = vehicleA + averageA - nowA;
  return {
    now: { wholeA: withoutA + nowA, chargersA: nowA },
    flat: { wholeA: withoutA + flatA, chargersA: flatA },
  };
}

/** Who takes how much: a charger is no audio, and is told by its name. */
function takersText({ vehicleA, averageA, chargers = [] }: Regime, isFlat: boolean): string {
  const chargersA = chargers.reduce((sum, { currentA }) => sum + currentA, 0);
  const each = chargers.map(({ item, currentA, flatA }) => {
    const mostA = Math.max(currentA, flatA);
    if (isFlat) return `${item} ${ampsDrawn(mostA)} while the battery behind it is run down`;
    const later =
      mostA > currentA * 1.01 ? ` (up to ${ampsDrawn(mostA)} while the battery behind it is run down)` : '';
    return `${item} ${ampsDrawn(currentA)}${later}`;
  });
  return listed([
    `the vehicle takes ${ampsDrawn(vehicleA)}`,
    `the audio ${ampsDrawn(Math.max(0, averageA - chargersA))} on average`,
    ...each,
  ]);
}

/** What to do: less charge where that alone clears it. */
function lessDemand(
  { name, chargers = [] }: Regime,
  { wholeA, chargersA }: Demand,
  limitA: number,
  over: boolean,
): string {
  const names = listed(chargers.map(({ item }) => item));
  if (chargersA > 0 && wholeA - chargersA <= limitA + 1e-9)
    return `set ${names} to a lower current, charge the battery behind it before a long stand, or fit a larger alternator`;
  return name === 'idle' && over
    ? 'do not play loud at idle for long, or fit a larger alternator'
    : 'fit a larger alternator, or less average power';
}

function chargingVerdict(regime: Regime, upgradeShare: number): Omit<Verdict<'charging-short'>, 'path'>[] {
  const { name, alternatorA } = regime;
  const { now, flat } = demandsOf(regime);
  const overShare = ({ wholeA }: Demand) => wholeA > upgradeShare * alternatorA + 1e-9;
  // A battery that is run down takes that for an hour or two, and is no stop: the charger's own current is its limit.
  const isFlat = !overShare(now);
  const told = isFlat ? flat : now;
  if (!overShare(told)) return [];
  const over = told.wholeA > alternatorA + 1e-9;
  const limitA = over ? alternatorA : upgradeShare * alternatorA;
  return [
    {
      level: over && !isFlat && name !== 'idle' ? 'stop' : 'caution',
      of: [name],
      message: `at ${name} ${takersText(regime, isFlat)}, ${alternatorA > 0 ? percent(told.wholeA / alternatorA) : 'all and more'} of the ${amps(alternatorA)} that the hot alternator gives`,
      value: told.wholeA,
      limit: limitA,
      unit: 'A',
      remedy: lessDemand(regime, told, limitA, over),
    },
  ];
}

const chargingShort: Rule = {
  id: 'charging-short',
  judge({ job, plan }) {
    const { value: upgradeShare, from } = houseRule(job, 'charging-share');
    return plan.power.charging
      .filter(({ name }) => name !== 'engine-off')
      .flatMap((regime) => chargingVerdict(regime, upgradeShare))
      .map((verdict) => ({ ...verdict, ...from, path: '/fitted', file: 'vehicle' as const }));
  },
};

const loadAssumed: Rule = {
  id: 'vehicle-load-assumed',
  judge({ job, plan }) {
    if (job.vehicle['vehicle-load'] !== undefined || plan.power.charging.length === 0) return [];
    const { value, from } = houseRule(job, 'vehicle-load');
    return [
      {
        level: 'note',
        of: [job.vehicle.id],
        message: `the load of the vehicle itself is not measured: ${ampsDrawn(value)} is assumed in the charging balance`,
        value,
        unit: 'A',
        remedy:
          "clamp a meter round the battery lead with lights, blower and heated glass on, engine running, and write it at the top of the vehicle's file, such as vehicle-load: 45 A",
        ...from,
        path: '',
        file: 'vehicle',
      },
    ];
  },
};

const leavesNoStart: Rule = {
  id: 'reserve-leaves-no-start',
  judge({ job }) {
    const { value: limit, from } = houseRule(job, 'reserve-end');
    return job.devices.flatMap(
      ({ id, origin, spec, fittedReserveEnd }): Verdict<'reserve-leaves-no-start'>[] => {
        if (origin !== 'vehicle' || spec?.kind !== 'battery') return [];
        const value = fittedReserveEnd ?? spec['reserve-end'] ?? limit;
        if (value >= limit - 1e-9) return [];
        return [
          {
            level: 'caution',
            of: [id],
            message: `the reserve of ${id} ends at ${percent(value)} of its charge; it starts the engine, which asks for ${percent(limit)}`,
            value: value * 100,
            limit: limit * 100,
            unit: '%',
            remedy: `write reserve-end: ${percent(limit)} or more at ${id}, or play from a second battery that an isolating relay parts from it`,
            ...from,
            ...deviceSpot(job, id),
          },
        ];
      },
    );
  },
};

export const chargingRules: readonly Rule[] = [chargingShort, leavesNoStart, loadAssumed];
