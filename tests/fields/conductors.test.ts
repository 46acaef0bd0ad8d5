import { describe, expect, test } from 'vitest';
import { casesOf } from '../long-run.ts';
import { type Conductor, conductorsOf, editsFor, type Fault, faults, outcomeFor } from './conductors.ts';
import { jobSheets } from './shop.ts';

/** The vehicle's own conductors, and those of every job that has sources or devices side by side. */
const conductors: readonly Conductor[] = [
  ...conductorsOf('vehicle', 'wired'),
  ...jobSheets.filter((job) => job !== 'board').flatMap((job) => conductorsOf(job, job)),
];

/** Why nothing can tell a fault of a conductor. */
type Silence =
  /** A conductor has no direction: the same two terminals are joined. */
  | 'the same conductor'
  /** A length that was measured in the vehicle and lies within no run: the wire list has it, and a tape tells. */
  | 'a tape alone tells'
  /** Another ground point of the same zone serves as well. */
  | 'a ground beside it'
  /** The jumper makes both coils one. */
  | 'the other end of a jumper';

const groundsBeside = ['ground-body', 'coil-ground', 'second-ground', 'charger-ground'];

function silenceOf({ sheet, id }: Conductor, fault: Fault): Silence | null {
  if (fault === 'ends swapped') return 'the same conductor';
  if (fault === 'wrong terminal' && sheet !== 'vehicle' && groundsBeside.includes(id))
    return 'a ground beside it';
  if (fault === 'wrong terminal' && id === 'to-sub') return 'the other end of a jumper';
  if (fault === 'too short' || fault === 'ten times too long') return 'a tape alone tells';
  return null;
}

/** Every fault that a conductor can have and that is not for a tape alone; lengths that can be known stand below. */
const every = conductors.flatMap((conductor) =>
  faults
    .filter((fault) => editsFor(conductor, fault) && silenceOf(conductor, fault) !== 'a tape alone tells')
    .map((fault) => ({ name: `${conductor.sheet} ${conductor.id}: ${fault}`, conductor, fault })),
);

describe('a fault of a conductor is told', () => {
  test.each([...casesOf(every, (_, index) => index % 16 === 0)])('$name', ({ conductor, fault }) => {
    const { problems, findings } = outcomeFor(conductor, fault) ?? { problems: [], findings: [] };
    const told = [...problems, ...findings].map(({ message }) => message);
    if (silenceOf(conductor, fault) === null) expect(told).not.toEqual([]);
    else expect(told).toEqual([]);
  });
});

describe('a length that can be known is told', () => {
  const inRuns: readonly (readonly [Conductor['sheet'], string])[] = [
    ['wired', 'feed'],
    ['wired', 'turn-on'],
    ['wired', 'in-left'],
    ['wired', 'to-tweeter-left'],
    ['banks', 'link'],
    ['charged', 'feed'],
  ];
  const find = ([sheet, id]: (typeof inRuns)[number]) =>
    conductors.filter((one) => one.sheet === sheet && one.id === id);
  test.each([...casesOf(inRuns.flatMap(find), (_, index) => index === 0)])(
    'too short for its run: $sheet $id',
    (conductor) => {
      expect(outcomeFor(conductor, 'too short')?.findings.map(({ rule }) => rule)).toContain(
        'length-under-run',
      );
    },
  );
  test('ten times too long at the battery: the fuse is too far', () => {
    const tails = conductors.filter(({ sheet, id }) => sheet === 'wired' && id === 'tail');
    for (const tail of tails)
      expect(outcomeFor(tail, 'ten times too long')?.findings.map(({ rule }) => rule)).toContain(
        'fuse-distance',
      );
  });
  test('ten times too long for the lead that it is of', () => {
    const leads = conductors.filter(({ sheet, id }) => sheet === 'wired' && id === 'sig-tweeter-left');
    for (const lead of leads)
      expect(outcomeFor(lead, 'ten times too long')?.findings.map(({ rule }) => rule)).toContain(
        'lead-shorter-than-written',
      );
  });
});
