import { bodyId } from '../../model/content/resolved-job.ts';
import type { Vehicle } from '../../model/content/vehicle.ts';
import { type Part, partFacts } from '../../model/kinds/index.ts';

/** What a new job begins with. */
export interface JobBeginning {
  readonly id: string;
  readonly title: string;
  /** Date of its first issue, such as 2026-02-09. */
  readonly date: string;
  readonly vehicle: Vehicle;
  /** Space of the vehicle that its boards stand in; null where none is chosen. */
  readonly space: string | null;
}

/**
 * The text of a job file that reads without errors and has nothing in it yet. Comments name what the vehicle
 * offers to each section, so that the file can be filled in without another one open.
 */
export function jobSkeleton(beginning: JobBeginning, parts: Readonly<Record<string, Part>>): string {
  const { id, title, date, vehicle, space } = beginning;
  return `rackleaf: 1
id: ${id}
title: ${JSON.stringify(title)}
revision: A
revisions:
  - { revision: A, date: ${date}, what: First issue }
status: draft
issued-on: ${date}
vehicle: ${vehicle.id}
${space === null ? '# space: one of the spaces below\n' : `space: ${space}\n`}
# What is left out is computed, and what is written is checked: conductor sizes, fuse ratings, lengths, colours,
# places on the board and routes may all be left out. Quantities have their unit: 13 5/8 in, 20 A, 80 Hz.

# Whom the job is for. Reaches only the pages that need it.
# customer: { name: , contact: , plate: }

# What is built in, each with a part of the catalogue: on: a board of this job, or in: a place of the vehicle.
${comment('Places', titles(vehicle.places))}
devices: {}
#  amp: { part: , on: board }
#  main-fuse: { part: , in: }

# Cables, whose conductors the links below take by cable: and conductors:.
# cables:
#   lead: { part: }

# What is joined to what, terminal to terminal. A pair goes by its name without + and -: amp.CH1.
${comment('Of the vehicle', fittedTerminals(vehicle, parts))}
${comment(
  'Ground points',
  Object.keys(vehicle.grounds).map((point) => `${bodyId}.${point}`),
)}
links: {}
#  feed: { from: main-fuse.OUT, to: amp.B+ }

# Boards, with their outline and the sound points that they are fixed to.
${comment('Spaces', titles(vehicle.spaces))}
${comment('Sound points', soundPoints(vehicle, space))}
boards: {}
#  board: { outline: { rectangle: { width: , height: } }, fixings: { f1: { point: , fixing: } } }
# Left out, sheet: is the lightest in stock that is stiff enough. A stiffening rib, where the findings propose one:
#    ribs: { rib-1: { edge: bottom, distance: , height: } }

# The way of links through the vehicle.
${comment('Routes', titles(vehicle.routes))}
runs: {}
#  power: { route: , links: [feed] }

# Terminals that stay open, each with its reason.
left-open: {}
#  amp.LEVEL: no level control on this job

# Cautions that may stand, each at the value and the limit that were seen. The check prints the lines to write. A stop can't be accepted.
accepted: []
#  - { finding: drop-over-limit, of: amp, value: , reason: , by: }
`;
}

type Titled = Readonly<Record<string, { readonly title: string }>>;

function titles(things: Titled): string[] {
  return Object.entries(things).map(([id, { title }]) => `${id} (${title})`);
}

function soundPoints({ spaces }: Vehicle, space: string | null): string[] {
  return Object.entries(spaces)
    .filter(([id]) => space === null || id === space)
    .map(([id, { 'sound-points': points }]) => `${id}: ${Object.keys(points).join(', ')}`);
}

function fittedTerminals({ fitted }: Vehicle, parts: Readonly<Record<string, Part>>): string[] {
  return Object.entries(fitted).map(([id, { part }]) => {
    const spec = parts[part];
    return `${id}.${spec ? Object.keys(partFacts(spec).terminals).join(' ') : ''}`;
  });
}

/** A list behind its name, one line each, as comments of a YAML file. */
function comment(name: string, lines: readonly string[]): string {
  const told = lines.length > 0 ? lines : ['none'];
  return [`# ${name}:`, ...told.map((line) => `#   ${line}`)].join('\n');
}
