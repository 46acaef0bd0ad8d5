import { pastBoards } from '../../../like/past-board.ts';
import { type NearestBoard, nearestBoards } from '../../../like/rank-boards.ts';
import { wishFor } from '../../../like/shop-wishes.ts';
import { nothingReleased } from '../../../model/content/built.ts';
import { jobSchema } from '../../../model/content/job.ts';
import { hasFields } from '../../../model/content/proposal.ts';
import type { Shop } from '../../../model/content/shop.ts';
import type { SourceFile } from '../../../model/content/source-file.ts';
import type { Vehicle } from '../../../model/content/vehicle.ts';
import { fileId } from '../../../model/fields.ts';
import { type LengthWriter, worded } from '../../../model/phrase.ts';
import { printedLength } from '../../../model/printed/lengths.ts';
import type { Problem } from '../../../model/problem.ts';
import { lengthStyle } from '../../../model/quantity/length-text.ts';
import { tapeText } from '../../../model/quantity/tape-text.ts';
import type { OpenShop } from '../../../read/read-content.ts';
import { remedyFor } from '../../../read/report.ts';
import { shapeOpened } from '../../../read/short-forms/shape-opened.ts';
import { readYaml } from '../../../read/yaml/yaml.ts';
import { withCrew } from '../../crew/with-crew.ts';
import type { Effects } from '../../effects.ts';
import { type ExitStatus, exitStatus } from '../../exit-status.ts';
import { loadShop } from '../../shop/load-shop.ts';
import { lineOf } from '../ask/question.ts';
import { idOf } from '../id-of.ts';
import type { Given } from '../new-file.ts';
import { refused } from '../refused.ts';
import { forSpace, type JobFields, type NewPlace } from './for-space.ts';
import { type LikeHead, likeText } from './like-text.ts';
import { type ReadWhole, readWhole } from './read-whole.ts';
import { takenOver } from './taken-over.ts';

/** What goes with `--like`: all else comes from the other job. */
const goesWithLike: ReadonlySet<string> = new Set(['like', 'title', 'issued-on', 'vehicle', 'space']);

/** A shop as a job is begun in it. */
export interface LikeSurroundings {
  readonly shop: OpenShop;
  readonly jobs: readonly SourceFile[];
  /** Why a name can't be given to a job; null where it can. */
  readonly taken: (id: string) => string | null;
}

/**
 * `rackleaf new job NAME --like JOB`: writes a job with the board, the places, the parts, the outputs and the settings of
 * another. What is of that job alone is left out, and so is what this vehicle does not have; comments tell what it was, and
 * what `rackleaf like` finds to change. The file reads at once.
 */
export async function newJobLike(
  effects: Effects,
  { shop, jobs, taken }: LikeSurroundings,
  given: Given,
): Promise<ExitStatus> {
  const likeId = lineOf(given.answers, 'like');
  const strange = Object.keys(given.answers).find((flag) => !goesWithLike.has(flag));
  if (strange !== undefined)
    return refused(effects, `--${strange} does not go with --like: write it in the file`);
  const other = jobs.find(({ path }) => path === pathOf(likeId));
  if (!other) return refused(effects, `there is no job "${likeId}"; ${remedyFor(likeId, jobs.map(nameOf))}`);
  const read = readOther(other);
  if (!read)
    return refused(effects, `${other.path} can not be read: mend the errors of rackleaf check first`);
  const head = headOf(effects, shop, read, given);
  if (typeof head === 'string') return refused(effects, head);
  const fault = fileId.safeParse(head.id).success ? taken(head.id) : `"${head.id}" is no id of a job`;
  if (fault !== null) return refused(effects, fault);
  const vehicle = shop.vehicles[head.vehicle];
  if (!vehicle) return refused(effects, `the vehicle ${head.vehicle} can not be read: mend its errors first`);
  const laid = await laidBoards(effects, likeId, head);
  const whole = wholeJob(shop, head, read, { vehicle, boardsAt: laid.at });
  if (!whole)
    return refused(effects, `a job like ${likeId} can not be read here: rackleaf check tells what is wrong`);
  const remarks = remarksOf(likeId, read.left, whole, laid.changes);
  await effects.write(pathOf(head.id), likeText(head, whole.fields, remarks));
  effects.out(pathOf(head.id));
  for (const remark of remarks.slice(1)) effects.tell(remark);
  effects.tell(`next: rackleaf check ${head.id}`);
  return exitStatus.done;
}

function pathOf(id: string): string {
  return `content/jobs/${id}.yaml`;
}

function nameOf({ path }: Pick<SourceFile, 'path'>): string {
  return path.slice('content/jobs/'.length, -'.yaml'.length);
}

/** What of the other job is taken over, with its place. */
interface OtherJob {
  readonly fields: JobFields;
  readonly left: readonly string[];
  readonly title: string;
  readonly vehicle: string;
  readonly space: string | null;
}

function readOther({ path, text }: SourceFile): OtherJob | null {
  const { value: document } = readYaml(path, text);
  if (!document) return null;
  const { value, document: opened } = shapeOpened(document, jobSchema);
  if (!value) return null;
  const { value: all, left } = takenOver(jobSchema, opened.data);
  const { rackleaf: _, title: __, vehicle: ___, space: ____, ...fields } = all;
  return { fields, left, title: value.title, vehicle: value.vehicle, space: value.space ?? null };
}

/** The head of the new job: as the flags say, else as the other one has it; why there is none where a name is not known. */
function headOf(effects: Effects, shop: OpenShop, other: OtherJob, given: Given): LikeHead | string {
  const told = (flag: string): string | null => {
    const line = lineOf(given.answers, flag);
    return line === '' ? null : line;
  };
  const title = told('title') ?? other.title;
  const id = given.id ?? idOf(title);
  if (id === null) return 'name the job: rackleaf new job NAME --like JOB';
  const vehicle = told('vehicle') ?? other.vehicle;
  const known = Object.hasOwn(shop.vehicles, vehicle) ? shop.vehicles[vehicle] : undefined;
  if (!known)
    return `there is no vehicle "${vehicle}" that could be read; ${remedyFor(vehicle, Object.keys(shop.vehicles))}`;
  const spaces = Object.keys(known.spaces);
  const named = told('space');
  if (named !== null && !spaces.includes(named))
    return `there is no space "${named}" in ${vehicle}; ${remedyFor(named, spaces)}`;
  const own = vehicle === other.vehicle ? other.space : null;
  const space = named ?? own ?? (spaces.length === 1 ? (spaces[0] ?? null) : null);
  if (space === null && spaces.length > 0)
    return `name the space of ${vehicle}: --space ${spaces.join(', ')}`;
  const issuedOn = told('issued-on') ?? effects.today();
  if (!jobSchema.shape['issued-on'].safeParse(issuedOn).success)
    return `--issued-on "${issuedOn}" is no date such as 2026-02-09`;
  return { id, title, issuedOn, vehicle, space };
}

/**
 * The fields of the new job as they read without an error: with its links, or with its wiring left to be proposed, where the
 * other stood elsewhere and that keeps as many devices. Null where what is wrong lies elsewhere.
 */
function wholeJob(
  shop: OpenShop,
  head: LikeHead,
  other: OtherJob,
  { vehicle, boardsAt }: { readonly vehicle: Vehicle; readonly boardsAt: JobFields },
): ReadWhole | null {
  const isSameVehicle = head.vehicle === other.vehicle;
  const place: NewPlace = {
    ...{ vehicle, boardsAt, space: head.space, isSameVehicle },
    isSameSpace: isSameVehicle && head.space === other.space,
  };
  const problemsOf = (fields: JobFields): readonly Problem[] => {
    const path = pathOf(head.id);
    const { problems } = shop.readJob({ path, text: likeText(head, fields, []) }, nothingReleased);
    return problems.filter(({ where }) => where.file === path);
  };
  const linked = readWhole(jobSchema, forSpace(other.fields, place, true), problemsOf);
  if (isSameVehicle) return linked;
  const open = readWhole(jobSchema, forSpace(other.fields, place, false), problemsOf);
  if (!open || !linked) return open ?? linked;
  return devicesIn(open) >= devicesIn(linked) ? open : linked;
}

function devicesIn({ fields: { devices } }: ReadWhole): number {
  return hasFields(devices) ? Object.keys(devices).length : 0;
}

/** The boards of another job in the new space. */
interface LaidBoards {
  /** Where each goes in as it is drawn. */
  readonly at: JobFields;
  /** What would have to change of them, as `rackleaf like` tells it. */
  readonly changes: readonly string[];
}

/** The boards of the other job laid into the new space; nothing is told of them where it can't be planned. */
function laidBoards(effects: Effects, likeId: string, head: LikeHead): Promise<LaidBoards> {
  return withCrew(effects, async (crew) => {
    const loaded = await loadShop(effects, crew, { only: (id) => id === likeId, compares: false });
    const { shop, parts, vehicles } = loaded.content();
    const [job] = loaded.jobs;
    if (!shop || !job || head.space === null) return { at: {}, changes: [] };
    const wish = wishFor({ shop, parts, vehicles }, { vehicle: head.vehicle, space: head.space }, () => null);
    const style = lengthStyle(shop);
    const write: LengthWriter = (kind, lengthM) => printedLength(kind, lengthM, style).primary;
    const nearest = wish
      ? pastBoards(job.plan).flatMap((board) => nearestBoards(wish, [board], 1, crew.keep))
      : [];
    return {
      at: Object.fromEntries(nearest.flatMap((one) => writtenPlace(one, shop.units))),
      changes: nearest.flatMap(({ board, changes }) =>
        changes.map(({ told }) => `${board.board}: ${worded(told, write)}`),
      ),
    };
  });
}

function writtenPlace({ board, place }: NearestBoard, units: Shop['units']): [string, JobFields][] {
  if (place?.turnDeg !== 0) return [];
  return [[board.board, { x: tapeText(place.xM, units), y: tapeText(place.yM, units) }]];
}

function remarksOf(
  likeId: string,
  left: readonly string[],
  whole: ReadWhole,
  changes: readonly string[],
): readonly string[] {
  const ownAlone = left.filter((way) => !alwaysTold.has(way));
  return [
    `Begun like ${likeId}: its parts, places, outputs and settings. What is left out is proposed or asked for.`,
    ...(ownAlone.length > 0 ? [`Of ${likeId} alone, and to be told anew: ${ownAlone.join(', ')}.`] : []),
    ...leftTold(whole.left),
    ...changes.map((change) => `To change here: ${change}.`),
  ];
}

/** What is left out: each device and board with why, all links and the like of a section in one remark. */
function leftTold(left: ReadWhole['left']): readonly string[] {
  const reasons = new Map<string, { readonly way: readonly string[]; readonly why: string }>();
  for (const { way, why } of left) {
    const [section = '', name = ''] = way;
    const before = reasons.get(`${section}.${name}`);
    const isShorter = !before || way.length < before.way.length;
    if (isShorter) reasons.set(`${section}.${name}`, { way, why: before?.why ?? why });
  }
  const all = [...reasons.values()];
  const isTold = ({ way: [section = ''] }: (typeof all)[number]): boolean => told.has(section);
  const others = all.filter((one) => !isTold(one));
  const sections = [...new Set(others.map(({ way: [section = ''] }) => section))];
  return [
    ...all.filter(isTold).map(({ way, why }) => `Left out: ${way.join('.')}: ${why}.`),
    ...sections.map((section) => {
      const names = others.flatMap(({ way: [own, name] }) => (own === section && name ? [name] : []));
      return `Left out of ${section}, since what they join, or how long they are, is not known here: ${names.join(', ')}.`;
    }),
  ];
}

/** Sections whose names are told one by one. */
const told: ReadonlySet<string> = new Set(['devices', 'boards']);

/** What every job tells for itself at its head. */
const alwaysTold: ReadonlySet<string> = new Set([...['id', 'revision', 'revisions', 'status', 'issued-on']]);
