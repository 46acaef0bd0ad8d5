import { nothingReleased } from '../../model/content/built.ts';
import type { SourceFile } from '../../model/content/source-file.ts';
import { onAnyDisk } from '../../model/file-name.ts';
import { problemText } from '../../model/problem.ts';
import { byPlace, contentFiles, type OpenShop, openShop, readCatalogue } from '../../read/read-content.ts';
import type { Effects } from '../effects.ts';
import type { ExitStatus } from '../exit-status.ts';
import { type Answers, type Asker, lineOf, linesOf } from './ask/question.ts';
import { coilsTold } from './job/coils-told.ts';
import { type JobSurroundings, jobQuestions, partsNamed } from './job/job-questions.ts';
import { jobText } from './job/job-text.ts';
import { type Given, type NewFile, newFile } from './new-file.ts';
import { refused } from './refused.ts';
import { errorsOf, problemsOfPart, type UnreadVehicle, unreadParts, unreadVehicles } from './unread.ts';
import { stillToMeasure } from './vehicle/still-to-measure.ts';

/** `rackleaf new job`: writes a job that says what plays what, with what the vehicle offers named in each section. */
export async function newJob(effects: Effects, given: Given, asker: Asker | null): Promise<ExitStatus> {
  const files = await effects.readContent();
  const sorted = contentFiles(files);
  const shop = openShop(sorted, readCatalogue(sorted));
  const { parts, vehicles, problems } = shop;
  const paths = sorted.vehicles.map(({ path }) => path);
  const unread = unreadVehicles(paths, vehicles, problems);
  const meant = unread.filter(({ id }) => given.answers.vehicle?.includes(id));
  if (given.answers.like !== undefined) {
    const { newJobLike } = await import('./like/new-job-like.ts');
    return newJobLike(effects, { shop, jobs: sorted.jobs, taken: takenBy(takenIds(files)) }, given);
  }
  const isNone = Object.keys(vehicles).length === 0;
  if (isNone && unread.length === 0)
    return refused(effects, 'there is no vehicle: rackleaf new vehicle writes one');
  // Without its vehicle a job can't be asked for: what keeps that from being read is mended first.
  const lacking = isNone ? unread : meant;
  if (lacking.length > 0) return refused(effects, ...lacking.map(unreadText));
  const surroundings = {
    ...{ parts, vehicles, problems, unread, shop: shop.shop },
    unreadParts: unreadParts(sorted.parts, parts, problems),
    ...{ today: effects.today(), id: given.id },
  };
  return newFile(effects, jobFile(shop, surroundings, takenIds(files)), given, asker);
}

function unreadText({ path, problems }: UnreadVehicle): string {
  return [
    `${errorsOf(path, problems)}; mend what is told here, then begin the job:`,
    ...problems.map(problemText),
  ].join('\n');
}

/** What a new job is asked for in a shop. */
function jobFile(shop: OpenShop, around: JobSurroundings, taken: ReadonlySet<string>): NewFile {
  const { parts, vehicles } = around;
  const vehicleOf = (answers: Answers) => vehicles[lineOf(answers, 'vehicle')];
  return {
    what: 'job',
    draft: 'job',
    questions: jobQuestions(around),
    taken: takenBy(taken),
    path: (name) => `content/jobs/${name}.yaml`,
    text: (name, answers) => {
      const vehicle = vehicleOf(answers);
      return vehicle ? jobText(name, answers, vehicle, parts) : '';
    },
    problems: (path, text, answers) => {
      const fitted = Object.values(vehicleOf(answers)?.fitted ?? {}).map(({ part }) => part);
      const named = new Set([...partsNamed(answers), ...fitted]);
      const own = `content/vehicles/${lineOf(answers, 'vehicle')}.yaml`;
      return [
        ...shop.readJob({ path, text }, nothingReleased).problems.toSorted(byPlace),
        ...shop.problems.filter(({ where }) => where.file === own),
        ...[...named].flatMap((part) => problemsOfPart(part, shop.problems)),
      ];
    },
    told: (name, answers) => {
      const vehicle = vehicleOf(answers);
      if (linesOf(answers, 'device').length === 0) return [`fill it in, then: rackleaf check ${name}`];
      const lacks = vehicle ? stillToMeasure(vehicle, parts) : [];
      return [
        ...(lacks.length === 0
          ? []
          : [`still to be measured of ${vehicle?.id}:`, ...lacks.map((one) => `  ${one}`)]),
        ...coilsTold(answers, parts),
        `next: rackleaf check ${name}`,
      ];
    },
  };
}

function takenBy(taken: ReadonlySet<string>): (id: string) => string | null {
  return (name) =>
    taken.has(onAnyDisk(name)) ? `the job "${name}" is there already: a name is never used twice` : null;
}

/** Every name that a job has or had: of job files, read or not, and of folders with frozen plans. */
function takenIds(files: readonly SourceFile[]): ReadonlySet<string> {
  return new Set(
    files.flatMap(({ path }) => {
      const name = /^content\/jobs\/([^/]+?)(?:\.yaml$|\/)/.exec(path)?.[1];
      return name === undefined ? [] : [onAnyDisk(name)];
    }),
  );
}
