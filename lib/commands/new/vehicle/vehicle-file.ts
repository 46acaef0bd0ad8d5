import type { Part } from '../../../model/kinds/index.ts';
import { partFacts } from '../../../model/kinds/index.ts';
import { terminalsOf } from '../../../model/kinds/kind.ts';
import { powerAt } from '../../../model/survey/power-into-load.ts';
import { untoldSide } from '../../../model/vocabulary.ts';
import { type Answers, lineOf, linesOf } from '../ask/question.ts';
import { idOf } from '../id-of.ts';
import { blockText, filled, known, type Named } from '../yaml-text.ts';
import { type PlacedRow, rowsOf, spaceIds } from './vehicle-rows.ts';
import { holesOpen, wayOf } from './ways.ts';

type Parts = Readonly<Record<string, Part>>;

/** The text of a vehicle file from the answers of the walk. `still` is what a tape or a meter must still tell. */
export function vehicleText(id: string, answers: Answers, parts: Parts, still: readonly string[]): string {
  const remarks = still.length === 0 ? [] : ['Still to be measured:', ...still.map((one) => `  ${one}`)];
  return vehicleFileText(vehicleFields(id, answers, parts), remarks);
}

/** The fields of a vehicle file from the answers of the walk. */
export function vehicleFields(id: string, answers: Answers, parts: Parts): Named {
  const cautions = linesOf(answers, 'caution');
  return {
    rackleaf: 1,
    id,
    title: lineOf(answers, 'title'),
    ...rowsOf(answers, 'supply')[0]?.cells,
    ...readings(answers),
    ...filled('ambient', rowsOf(answers, 'ambient')[0]?.cells ?? {}),
    ...(cautions.length > 0 && { cautions: [...cautions] }),
    fitted: fitted(answers, parts),
    grounds: rowsByName(answers, 'ground'),
    links: cables(answers),
    spaces: spaces(answers),
    routes: ways(answers),
    places: places(answers),
  };
}

/** A file with the fields of a vehicle, each section under its heading, and remarks behind its head. */
export function vehicleFileText(fields: Named, remarks: readonly string[]): string {
  const { cautions, fitted, grounds, links, spaces, routes, places, ...head } = fields;
  const told = Array.isArray(cautions) ? cautions : [];
  return [
    blockText(head),
    ...remarks.map((one) => `# ${one}\n`),
    ...(told.length === 0 ? [] : ['cautions:\n', ...told.map((one) => `  - ${JSON.stringify(one)}\n`)]),
    '\n# What is in the vehicle already, each a part of the catalogue.\n',
    blockText(known({ fitted }), 4),
    '\n# Points of the body that take a ground lead.\n',
    blockText(known({ grounds }), 2),
    "\n# The vehicle's own heavy cables.\n",
    blockText(known({ links }), 2),
    '\n# Where a board may go: x to the right, y up, from the lower left corner, seen from where it is mounted from.\n',
    blockText(known({ spaces }), 4),
    '\n# Ways for wires, zone by zone.\n',
    blockText(known({ routes }), 3),
    '\n# Places for what stands on no board; distance from the head of the listener.\n',
    blockText(known({ places }), 2),
  ].join('');
}

/** What a meter told of the supply; a charging voltage that varies is told by its range. */
function readings(answers: Answers): Named {
  const { 'charging-voltage': charging, ...cells } = rowsOf(answers, 'reading')[0]?.cells ?? {};
  if (charging === undefined) return cells;
  const field = /\sto\s/.test(String(charging)) ? 'charging-range' : 'charging-voltage';
  return { [field]: charging, ...cells };
}

/** Clean voltages that nobody read off a meter: they follow from the power of a leaflet until somebody does. */
export function derivedReadings(answers: Answers): readonly string[] {
  return rowsOf(answers, 'output').flatMap(({ cells: { name, 'clean-voltage': clean } }) =>
    powerAt(String(clean)) === null
      ? []
      : [`meter: clean voltage of ${name}; until then it follows from ${clean}`],
  );
}

/** Sides that nobody told, of what the vehicle came with and of its ground points. */
export function sidesUnseen(answers: Answers): readonly string[] {
  const open = ['fitted', 'ground'].flatMap((key) =>
    rowsOf(answers, key).flatMap(({ cells: { name, side } }) => (side === undefined ? [String(name)] : [])),
  );
  return open.length === 0
    ? []
    : [`eye: the side of ${open.join(', ')}; until then it counts as ${untoldSide}`];
}

/** Holes on ways that nobody measured: what goes through one is guarded as at a sharp edge. */
export function holesUnmeasured(answers: Answers): readonly string[] {
  return rowsOf(answers, 'way').flatMap((row) => {
    const read = wayOf(row, spaceIds(answers));
    if (typeof read === 'string') return [];
    return holesOpen(row).map(
      (zone) =>
        `tape: width of the hole at the ${zone} of ${read.id}; until then it counts as a sharp edge, write through-hole: there`,
    );
  });
}

function rowsByName(answers: Answers, key: string): Named {
  return Object.fromEntries(
    rowsOf(answers, key).map(({ cells: { name, ...cells } }) => [String(name), { ...cells }]),
  );
}

/**
 * The device that gives the signal, by its name among what is fitted; null where there is none. One whose part is still to be
 * written is it where no heavy cable goes to it, and no other could be.
 */
export function sourceName(answers: Answers, parts: Parts): string | null {
  const fittedRows = rowsOf(answers, 'fitted').map(({ cells }) => cells);
  const found = fittedRows.find(({ part }) => parts[String(part)]?.kind === 'source-unit');
  if (found) return String(found.name);
  const joined = rowsOf(answers, 'cable').flatMap(({ cells: { from, to } }) => [String(from), String(to)]);
  const [only, ...others] = fittedRows.filter(
    ({ name, part }) => !parts[String(part)] && !joined.some((end) => end.startsWith(`${name}.`)),
  );
  return only && others.length === 0 ? String(only.name) : null;
}

function fitted(answers: Answers, parts: Parts): Named {
  const source = sourceName(answers, parts);
  return Object.fromEntries(
    rowsOf(answers, 'fitted').map(({ cells: { name, part, ...where } }) => {
      const spec = parts[String(part)];
      const device: Named = { part: String(part), ...where };
      if (String(name) !== source) return [String(name), device];
      const told = { ...device, ...filled('outputs', outputs(answers)) };
      return [String(name), { ...told, ...(spec && { 'left-open': ownHarness(spec) }) }];
    }),
  );
}

/** A source unit that the vehicle came with is fed by the vehicle. */
function ownHarness(part: Part): Named {
  const { terminals } = partFacts(part);
  const reasons = [
    ['supply-positive', "fed by the vehicle's own harness"],
    ['supply-negative', "grounded by the vehicle's own harness"],
  ] as const;
  return Object.fromEntries(
    reasons.flatMap(([role, reason]) => terminalsOf(terminals, role).map((name) => [name, reason])),
  );
}

function outputs(answers: Answers): Named {
  const [does] = rowsOf(answers, 'source-does');
  return Object.fromEntries(
    rowsOf(answers, 'output').map(({ cells: { name, from, to, 'clean-voltage': clean, ...told } }) => {
      const [load, power] = powerAt(String(clean)) ?? [];
      const rated = load !== undefined && power !== undefined && { powers: { [load]: power } };
      const facts = { ...told, ...(rated || (clean !== undefined && { 'clean-voltage': clean })) };
      const band = from !== undefined && to !== undefined && { bandwidth: `${from} to ${to}` };
      return [String(name), { ...band, ...facts, ...does?.cells }];
    }),
  );
}

/** Cables are called by what they join: `starter-battery-to-body`. */
function cables(answers: Answers): Named {
  return Object.fromEntries(rowsOf(answers, 'cable').map(({ cells }) => [cableId(cells), { ...cells }]));
}

/** What a cable is called: by the terminals that it joins. */
export function cableId(cells: PlacedRow['cells']): string {
  return idOf(`${String(cells.from)} to ${String(cells.to)}`) ?? 'cable';
}

function places(answers: Answers): Named {
  return Object.fromEntries(
    rowsOf(answers, 'place').map(({ cells }) => [idOf(String(cells.title)) ?? '', { ...cells }]),
  );
}

function spaces(answers: Answers): Named {
  return Object.fromEntries(
    rowsOf(answers, 'space').map(({ cells: { name, width, height, ...cells } }) => {
      const own = (key: string) => rowsOf(answers, key).filter(({ space }) => space === name);
      const openings = own('opening').map((row) => ({ ...row.cells }));
      return [
        String(name),
        {
          ...cells,
          ...filled('outline', known({ width, height })),
          ...filled('bounds', own('bounds')[0]?.cells ?? {}),
          ...(openings.length > 0 && { openings }),
          ...filled('fan', fanThere(own('fan'))),
          ...filled('obstacles', byWhat(own('obstacle'))),
          ...filled('keep-reachable', byWhat(own('reachable'))),
          'sound-points': Object.fromEntries(
            own('point').map(({ cells: { name: point, ...measures } }) => [String(point), { ...measures }]),
          ),
        },
      ];
    }),
  );
}

/** A fan that is asked for on the walk is one that is there. */
function fanThere([row]: readonly PlacedRow[]): Named {
  return row ? { ...row.cells, there: true } : {};
}

function byWhat(rows: readonly PlacedRow[]): Named {
  return Object.fromEntries(rows.map(({ cells }) => [idOf(String(cells.what)) ?? '', { ...cells }]));
}

function ways(answers: Answers): Named {
  return Object.fromEntries(
    rowsOf(answers, 'way').flatMap((row) => {
      const read = wayOf(row, spaceIds(answers));
      return typeof read === 'string' ? [] : [[read.id, read.way]];
    }),
  );
}
