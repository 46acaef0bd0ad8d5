import type { BuildPlan, NetworkElement } from '../../model/plan/index.ts';
import { strong, type Table, tableOf } from '../sheets/table.ts';
import { namesOf } from '../words/plan-names.ts';
import { plainNumber, workingOr } from '../words/written.ts';

const kindWords = {
  source: 'Source',
  conductor: 'Conductor',
  fuse: 'Fuse',
  joint: 'Joint',
  load: 'Device',
} as const satisfies Record<NetworkElement['kind'], string>;

/** Current, drop and heat in every element of the network, a table an operating point. */
export function networkTables(plan: BuildPlan): Table[] {
  const { thing } = namesOf(plan);
  return plan.power.points.map((point) =>
    tableOf(
      `Every element of the network: ${point.title}`,
      point.elements,
      [
        { title: 'Element', cell: (one) => strong(thing(one.of), one.id) },
        { title: 'Kind', cell: (one) => kindWords[one.kind] },
        { title: 'Current flows from, to', cell: wayText },
        { title: 'Is', kind: 'words', cell: isText },
        {
          title: 'Current',
          kind: 'figure',
          leads: true,
          cell: (one) => workingOr(absolute(one.currentA), 'A', 2),
        },
        { title: 'Volts across it', kind: 'figure', cell: (one) => workingOr(absolute(one.dropV), 'V', 4) },
        { title: 'Heat', kind: 'figure', cell: (one) => workingOr(one.heatW, 'W', 3) },
      ],
      (one) => one.of,
    ),
  );
}

/** Its two ends in the order in which the current passes them: the balance of a node asks for the direction. */
function wayText({ from, to, currentA = 0 }: NetworkElement): string {
  return currentA < 0 ? `${to}, ${from}` : `${from}, ${to}`;
}

/** What an element is in the network: with its currents all that Ohm's law and the balance of each node need. */
function isText(one: NetworkElement): string {
  const words: readonly (readonly [number | undefined, string])[] = [
    [one.emfV, 'V'],
    [one.ohm, 'ohm'],
    [one.chargeOhm, 'ohm charging'],
    [one.powerW, 'W'],
    [one.ratedV, 'V rated'],
    [one.givenA, 'A'],
    [one.limitA, 'A at most'],
    [one.acceptA, 'A accepted at most'],
    [one.efficiency, 'efficiency'],
    [one.cutoutV, 'V cut-out'],
  ];
  const parts = words.flatMap(([value, unit]) =>
    value === undefined ? [] : [`${plainNumber(value)} ${unit}`],
  );
  const fed = one.feeds === undefined ? [] : [`feeds ${one.feeds}`];
  return [modelWords[one.model], ...parts, ...fed].join(', ');
}

const modelWords = {
  emf: 'source',
  'two-slope': 'battery',
  converter: 'converter',
  current: 'constant current',
  power: 'constant power',
  'square-law': 'power by the square of the voltage',
  resistance: 'resistance',
} as const satisfies Record<NetworkElement['model'], string>;

/** Voltage of every node against the one that counts as nothing, a table an operating point. */
export function nodeTables(plan: BuildPlan): Table[] {
  return plan.power.points.map(({ title, nodes, referenceNode }) =>
    tableOf(
      `Voltage at every terminal against ${referenceNode}: ${title}`,
      nodes.filter(({ id }) => !id.includes(':')),
      [
        { title: 'Terminal', cell: ({ id }) => strong(id) },
        {
          title: 'Voltage',
          kind: 'figure',
          leads: true,
          cell: ({ voltageV }) => workingOr(voltageV, 'V', 4),
        },
      ],
      ({ id }) => id,
    ),
  );
}

function absolute(value: number | undefined): number | undefined {
  return value === undefined ? undefined : Math.abs(value);
}
