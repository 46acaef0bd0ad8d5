import type { HouseRuleName } from '../../model/house-rules.ts';
import type { BuildPlan, PlanRun } from '../../model/plan/index.ts';
import { ruleOf } from '../../model/plan/plan-rules.ts';
import type { FigureName } from '../../model/printed/figures.ts';
import { printed, printedNumber } from '../../model/printed/index.ts';
import { walk } from '../../model/survey/order-of-questions.ts';
import { namesOf } from '../words/plan-names.ts';
import { type Written, writerFor } from '../words/written.ts';
import { builderSheet } from './sheet.ts';
import { blank, dense, groupedTable, groupsBy, room, type Table, type Tick, tableOf } from './table.ts';

/** What is looked at and written down before a plan is relied on, and when the vehicle comes in. */
export interface SurveySheet {
  readonly blanks: readonly string[];
  readonly lamps: readonly Tick[];
  readonly functions: Table;
  readonly battery: Table;
  readonly behind: Table;
  /** What the vehicle file says, beside a blank for what was measured. */
  readonly measures: Table | null;
  /** What stands on which side; null where the vehicle came with nothing. */
  readonly sides: Table | null;
}

const blanks = [
  'Checked in by',
  'Date',
  'Odometer',
  'Fuel',
  'Keys handed over',
  'Owner shown the damage noted',
];

const lamps = [
  'Airbag',
  'Brakes',
  'Engine',
  'Battery',
  'Tyres',
  'Steering',
  'Stability',
  'Service',
  'None lit',
];

const functions = [
  'Radio: every speaker heard, balance and fader',
  'Telephone, microphone, voice',
  'Chimes and warnings',
  'Parking aid, cameras',
  'Lights, indicators, brake lights',
  'Windows, locks, mirrors',
  'Heating, blower, heated windows',
  'Seats, belts, buckles',
  'Sockets, charging',
  'Tailgate, lamp of the cargo area',
] as const;

interface Reading {
  readonly what: string;
  readonly limit: string;
}

/** What a sound battery and its charging read, by house rule. */
function batteryReadings(plan: BuildPlan): Reading[] {
  const told = (figure: FigureName, name: HouseRuleName) => printed(figure, ruleOf(plan, name));
  const chargedV = printedNumber('voltage-at-least', ruleOf(plan, 'check-in-charging-least'));
  return [
    { what: 'Battery at rest', limit: restLimit(plan) },
    {
      what: 'Charging, engine at idle',
      limit: `${chargedV} to ${told('voltage-at-most', 'check-in-charging-most')}`,
    },
    { what: 'Ripple while charging', limit: `under ${told('voltage-at-most', 'check-in-ripple')}` },
    {
      what: `Draw with the key off, ${printed('time-needed', ruleOf(plan, 'key-off-wait') / 60)} or more after locking`,
      limit: `${told('small-current-allowed', 'key-off-draw')} or less`,
    },
    { what: 'Load of the vehicle itself, lights and blower on', limit: 'into the vehicle file' },
  ];
}

/** What a sound battery reads at rest: a lead one no more than is left of its last charge. */
function restLimit(plan: BuildPlan): string {
  const greatest = plan.measurements.find(({ id }) => id === 'battery-rest')?.greatest ?? null;
  const least = ruleOf(plan, 'check-in-rested');
  return greatest === null
    ? `${printed('voltage-at-least', least)} or more`
    : `${printedNumber('voltage-at-least', least)} to ${printed('voltage-at-most', greatest)}`;
}

const behind = [
  'Airbags, tensioners and their wiring',
  'Fuel tank, filler neck, fuel lines',
  'Brake lines, coolant lines',
  'Wiring behind the trim, high voltage',
  'Drains, vents, wet places',
  'Spare wheel, jack, towing eye: reached',
] as const;

interface Measure {
  readonly group: string;
  readonly what: string;
  readonly says: Written;
}

/** What the plan took from the vehicle file, at the stops of the walk and in its order. */
function measuresOf(plan: BuildPlan): Measure[] {
  return walk.flatMap(({ id }) => measuresAt[id]?.(plan) ?? []);
}

const measuresAt: Readonly<Record<string, (plan: BuildPlan) => Measure[]>> = {
  space: spaceMeasures,
  place: placeMeasures,
  way: wayMeasures,
};

function spaceMeasures(plan: BuildPlan): Measure[] {
  const write = writerFor(plan.shop);
  return plan.boards.flatMap((board): Measure[] => {
    const widthM = Math.max(0, ...board.spaceOutline.map(({ xM }) => xM));
    const heightM = Math.max(0, ...board.spaceOutline.map(({ yM }) => yM));
    const group = board.spaceTitle;
    return [
      { group, what: 'Width', says: write.length('measured', widthM) },
      { group, what: 'Height', says: write.length('measured', heightM) },
      { group, what: 'Free depth', says: write.length('room-free', board.spaceDepthM) },
      ...board.obstacles.map(({ id, standsOutM }) => ({
        group,
        what: `Obstacle ${id} stands out`,
        says: write.length('size', standsOutM),
      })),
    ];
  });
}

function wayMeasures(plan: BuildPlan): Measure[] {
  const write = writerFor(plan.shop);
  return plan.runs.flatMap((run): Measure[] => {
    const group = `${run.title}, on the ${run.side}`;
    const passes = (run.passes ?? []).flatMap(({ zone, lengthM, edge }, at): Measure[] => [
      {
        group,
        what: `${at + 1}. ${zone}${edge ? ', over a sharp edge' : ''}`,
        says: write.wire('measured', lengthM),
      },
      ...holeMeasures(plan, run, at).map((one) => ({ ...one, group })),
    ]);
    return [...passes, { group, what: 'From end to end', says: write.wire('measured', run.lengthM) }];
  });
}

/** The hole or the grommet in which a stretch of a way begins, as far as it is there before the job. */
function holeMeasures(plan: BuildPlan, run: PlanRun, at: number): Omit<Measure, 'group'>[] {
  const write = writerFor(plan.shop);
  return run.grommets.flatMap(({ stretch, holeM, own, unmeasured, drilledBefore }) => {
    if (stretch !== at || drilledBefore !== undefined) return [];
    const isOwn = own === true || unmeasured === true;
    if (holeM === null && !isOwn) return [];
    const what = `${at + 1}. ${isOwn ? "bore of the vehicle's own grommet" : 'hole'} there`;
    return [{ what, says: { text: holeM === null ? 'not measured' : write.bore(holeM, 'pilot') } }];
  });
}

function placeMeasures(plan: BuildPlan): Measure[] {
  const write = writerFor(plan.shop);
  const { item } = namesOf(plan);
  return plan.audio.speakers.map(({ id, distanceM }) => ({
    group: 'From the listener’s head',
    what: item(id),
    says: distanceM === null ? { text: 'not measured' } : write.length('measured', distanceM),
  }));
}

/** A thing of the vehicle, with the side that it is on by the vehicle's file. */
interface Sided {
  readonly what: string;
  readonly zone: string;
  readonly side: string;
}

/** A side that nobody told is written by hand. */
function sided(what: string, { zone, side, sideOpen }: Omit<Sided, 'what'> & { sideOpen?: boolean }): Sided {
  return { what, zone, side: sideOpen === true ? 'open: left, middle or right' : side };
}

/** What the vehicle came with and where the job's grounds go, for an eye to check. */
function sidesOf({ items, vehicle }: Pick<BuildPlan, 'items' | 'vehicle'>): readonly Sided[] {
  const fitted = items.filter(({ origin }) => origin === 'vehicle');
  return [
    ...fitted.map(({ title, ...where }) => sided(title, where)),
    ...(vehicle.grounds ?? []).map(({ id, ...where }) => sided(`Ground point ${id}`, where)),
  ];
}

function sidesTable(plan: BuildPlan) {
  const sides = sidesOf(plan);
  return sides.length === 0
    ? null
    : dense(
        tableOf('Sides, by the vehicle’s file', sides, [
          { title: 'What', kind: 'words', cell: ({ what }) => ({ text: what }) },
          { title: 'Zone', kind: 'words', cell: ({ zone }) => ({ text: zone }) },
          { title: 'Side', kind: 'words', cell: ({ side }) => ({ text: side }) },
          { title: 'Seen', kind: 'tick' },
        ]),
      );
}

function functionsTable() {
  return dense(
    tableOf('Functions, tried with the owner', functions, [
      { title: 'Function', kind: 'words', cell: (text) => ({ text }) },
      { title: 'In', kind: 'tick' },
      { title: 'Out', kind: 'tick' },
      room('What was found'),
    ]),
  );
}

function behindTable() {
  return dense(
    tableOf('Behind the panels, where the work will be', behind, [
      { title: 'What', cell: (text) => ({ text }) },
      { title: 'Seen', kind: 'tick' },
      room('Where it is, how near'),
    ]),
  );
}

/** What the plan took from the vehicle file, to be measured; null where it took nothing. */
function measuresTable(plan: BuildPlan) {
  const measures = measuresOf(plan);
  return measures.length === 0
    ? null
    : dense(
        groupedTable(
          'Measures of the vehicle that the plan rests on',
          groupsBy(measures, ({ group }) => group),
          [
            { title: 'Measure', kind: 'words', cell: ({ what }) => what },
            { title: 'Vehicle file', kind: 'figure', cell: ({ says }) => says.text },
            blank('Measured'),
          ],
        ),
      );
}

function surveyModel(plan: BuildPlan): SurveySheet | null {
  if (plan.items.length === 0) return null;
  return {
    blanks,
    lamps: lamps.map((text) => ({ text, subject: null })),
    functions: functionsTable(),
    battery: dense(
      tableOf('Battery and charging', batteryReadings(plan), [
        { title: 'Measure', kind: 'words', cell: ({ what }) => what },
        { title: 'Asked for', cell: ({ limit }) => limit },
        blank('Read'),
      ]),
    ),
    behind: behindTable(),
    measures: measuresTable(plan),
    sides: sidesTable(plan),
  };
}

export const survey = builderSheet('survey', 'Survey and check-in', surveyModel, {
  cautions: ['restraints'],
});
