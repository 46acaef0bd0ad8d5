import type { SourceFile } from '../../model/content/source-file.ts';
import { onAnyDisk } from '../../model/file-name.ts';
import type { Problem } from '../../model/problem.ts';
import { contentFiles, openShop, readCatalogue } from '../../read/read-content.ts';
import type { Effects } from '../effects.ts';
import type { ExitStatus } from '../exit-status.ts';
import type { Answers, Asker } from './ask/question.ts';
import { type Given, type NewFile, newFile } from './new-file.ts';
import { refused } from './refused.ts';
import { problemsOfPart } from './unread.ts';
import { sharedStretches } from './vehicle/shared-stretches.ts';
import { stillToMeasure } from './vehicle/still-to-measure.ts';
import { derivedReadings, holesUnmeasured, sidesUnseen, vehicleText } from './vehicle/vehicle-file.ts';
import { vehicleQuestions } from './vehicle/vehicle-questions.ts';
import { rowsOf } from './vehicle/vehicle-rows.ts';

/** `rackleaf new vehicle`: the walk round a vehicle, as questions. */
export async function newVehicle(effects: Effects, given: Given, asker: Asker | null): Promise<ExitStatus> {
  const files = await effects.readContent();
  const { like: [like] = [], ...answers } = given.answers;
  if (like === undefined) return newFile(effects, vehicleFile(files), given, asker);
  const { vehicleLike } = await import('./vehicle/vehicle-like.ts');
  const file = vehicleLike(files, like, vehicleFile(files));
  if (typeof file === 'string') return refused(effects, file);
  return newFile(effects, file, { ...given, answers }, asker);
}

/** What is done next: a job in the vehicle, for which its file must be read. */
function nextOf(id: string, problems: readonly Problem[]): string {
  const job = `rackleaf new job --vehicle ${id}`;
  return problems.length === 0 ? `next: ${job}` : `next: mend what is told of ${pathOf(id)}, then: ${job}`;
}

const pathOf = (id: string) => `content/vehicles/${id}.yaml`;

/** What a new vehicle is asked for in a shop of these files. */
export function vehicleFile(files: readonly SourceFile[]): NewFile {
  const catalogue = readCatalogue(contentFiles(files));
  const { parts } = catalogue.parts;
  const read = (path: string, text: string) =>
    openShop({ vehicles: [{ path, text }], guides: [] }, catalogue);
  const problemsIn = (path: string, text: string) =>
    read(path, text).problems.filter(({ where }) => where.file === path);
  const still = (id: string, answers: Answers) => {
    const vehicle = read(pathOf(id), vehicleText(id, answers, parts, [])).vehicles[id];
    return vehicle
      ? [
          ...sidesUnseen(answers),
          ...derivedReadings(answers),
          ...holesUnmeasured(answers),
          ...stillToMeasure(vehicle, parts),
        ]
      : [];
  };
  const taken = new Set(files.map(({ path }) => onAnyDisk(path)));
  return {
    what: 'vehicle',
    draft: 'vehicle',
    questions: vehicleQuestions({
      parts,
      problems: catalogue.problems,
      problemsIn: (id, text) => problemsIn(pathOf(id), text),
    }),
    taken: (id) =>
      taken.has(onAnyDisk(pathOf(id)))
        ? `the vehicle "${id}" is there already: nothing is written over`
        : null,
    path: pathOf,
    text: (id, answers) => vehicleText(id, answers, parts, still(id, answers)),
    problems: (path, text, answers) => [
      ...problemsIn(path, text),
      ...[...new Set(rowsOf(answers, 'fitted').map(({ cells }) => String(cells.part)))].flatMap((part) =>
        problemsOfPart(part, catalogue.problems),
      ),
    ],
    told: (id, answers) => {
      const lacks = still(id, answers);
      return [
        ...(lacks.length === 0 ? [] : ['still to be measured:', ...lacks.map((one) => `  ${one}`)]),
        ...sharedStretches(answers),
        nextOf(id, problemsIn(pathOf(id), vehicleText(id, answers, parts, []))),
      ];
    },
  };
}
