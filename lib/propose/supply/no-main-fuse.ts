import type { TerminalSpec } from '../../model/kinds/fields/terminal-spec.ts';
import type { PartOf } from '../../model/kinds/index.ts';
import { listed } from '../../model/printed/listed.ts';
import { amps, ampsDrawn, asRead, volts } from '../../model/printed/told.ts';
import { fuseForms } from '../../model/tables/fuse-forms.ts';
import type { FuseForm } from '../../model/vocabulary.ts';
import { onShelf } from '../draft/around.ts';
import type { Draft } from '../draft/draft.ts';
import { interruptsA, ratingFor } from './feed-sizes.ts';
import { supplyV } from './supply-needs.ts';

/** What was asked of the holders of the catalogue, none of which does. */
export interface HolderAsked {
  readonly batteryId: string;
  readonly seat: string;
  readonly name: string;
  /** The device that the feed is for. */
  readonly about: string;
  readonly currentA: number;
  readonly ceilingA: number | null;
  /** What the battery gives into a short (A); 0 where nobody states it. */
  readonly shortA: number;
  /** The port that its feed goes to. */
  readonly port: TerminalSpec | null;
}

/** How far a holder comes, and what it lacks. */
interface Lack {
  readonly part: string;
  readonly form: FuseForm;
  readonly step: 'rating' | 'holder' | 'interrupting' | 'conductor';
  readonly text: string;
  readonly order: string;
}

const steps: readonly Lack['step'][] = ['rating', 'holder', 'interrupting', 'conductor'];

/**
 * What to say where no holder of the catalogue suffices: the rating, the interrupting rating and the conductor that are
 * asked for; of each form what it lacks first; and what to order or to write.
 */
export function noHolderText(
  draft: Draft,
  asked: HolderAsked,
): { readonly message: string; readonly remedy: string } {
  const { batteryId, currentA, ceilingA, shortA, about } = asked;
  const { rules, parts } = draft.around;
  const margin = rules['fuse-margin'].value;
  const leastA = currentA * margin;
  const head = `no fuse holder of the catalogue suffices at ${batteryId} for ${ampsDrawn(currentA)} at ${volts(supplyV(draft))}`;
  if (ceilingA !== null && leastA > ceilingA) {
    const spec = draft.device(about)?.spec;
    const aboard =
      spec && 'supply' in spec && spec.supply['fuse-before'] === undefined
        ? `where the ${amps(ceilingA)} are fuses in ${about} itself, write how many under supply: of its part, fuses-fitted: 1: the fuse at ${batteryId} then protects the cable; else see`
        : 'see';
    return {
      message: `${head}: with the margin of ${asRead(margin)} its fuse is ${ampsDrawn(leastA)} or more, and the maker of ${about} allows ${amps(ceilingA)}`,
      remedy: `${aboard} the currents, the powers: and the efficiency: of its part, or drive less with it`,
    };
  }
  const lacks = Object.entries(parts).flatMap(([part, spec]) =>
    spec.kind === 'fuse-holder' ? [lackOf(draft, asked, leastA, part, spec)] : [],
  );
  const nearest = nearestOfEach(lacks);
  const most = ceilingA === null ? ' or more' : ` to ${amps(ceilingA)}`;
  const breaking = shortA > 0 ? ` that interrupts ${ampsDrawn(shortA)}` : '';
  const said = nearest.length === 0 ? 'the catalogue has none at all' : byText(nearest).join('; ');
  const [first] = nearest;
  const order = first ? first.order : 'put a holder with its fuses into the catalogue (rackleaf new part)';
  const write = first ? `; or write it, and it is judged as any: ${holderLine(asked, first.part)}` : '';
  return {
    message: `${head}: asked for is a fuse of ${ampsDrawn(leastA)}${most}${breaking}, in a holder that takes its conductor. ${said}`,
    remedy: `${order}${write}`,
  };
}

const holderLine = ({ name, seat }: HolderAsked, part: string): string =>
  `devices: { ${name}: { part: ${part}, in: ${seat} } }`;

function lackOf(
  draft: Draft,
  { currentA, ceilingA, shortA, port }: HolderAsked,
  leastA: number,
  part: string,
  spec: PartOf<'fuse-holder'>,
): Lack {
  const { around } = draft;
  const form = spec['fuse-form'];
  const { name } = fuseForms[form];
  const own = { part, form };
  const ratingA = ratingFor(around, form, currentA * around.rules['fuse-margin'].value, ceilingA);
  if (ratingA === null)
    return {
      ...{ ...own, step: 'rating' },
      text: `${ratingsText(draft, form)}`,
      order: `put a ${name} fuse of ${ampsDrawn(leastA)} or the next rating made above it into the catalogue (rackleaf new part, kind fuse), and order it`,
    };
  if (ratingA > spec.current)
    return {
      ...{ ...own, step: 'holder' },
      text: `the ${amps(ratingA)} fuse is above the ${amps(spec.current)} of the holder`,
      order: `put a ${name} holder for ${amps(ratingA)} into the catalogue (rackleaf new part, kind fuse-holder), and order it`,
    };
  const breaksA = interruptsA(around, form, ratingA);
  if (breaksA < shortA)
    return {
      ...{ ...own, step: 'interrupting' },
      text: `the ${amps(ratingA)} fuse interrupts ${amps(breaksA)}`,
      order: `put a fuse that interrupts ${ampsDrawn(shortA)} or more into the catalogue, with interrupts: of its maker, and its holder`,
    };
  const inHolder = least(Object.values(spec.terminals));
  const atEnd = least(port === null ? [] : [port]);
  const isHolder = atEnd === null || (inHolder !== null && inHolder.areaMm2 < atEnd.areaMm2);
  const where = isHolder
    ? `the holder takes at most ${inHolder?.label}`
    : `its far end takes at most ${atEnd.label}`;
  return {
    ...{ ...own, step: 'conductor' },
    text: `no reel of the catalogue that carries the ${amps(ratingA)} fuse goes in, ${where}`,
    order: isHolder
      ? `put a power reel for ${amps(ratingA)}, or a holder that takes a larger one, into the catalogue`
      : `put a power reel for ${amps(ratingA)} of at most ${atEnd.label} into the catalogue (a higher insulation temperature carries more), or a reducer for that end`,
  };
}

/** The largest size that all of some terminals take. */
function least(terminals: readonly TerminalSpec[]) {
  const sizes = terminals.flatMap(({ takes }) => (takes ? [takes.to] : []));
  return sizes.toSorted((a, b) => a.areaMm2 - b.areaMm2)[0] ?? null;
}

/** The ratings of a form that the catalogue has, and which of them lie on the shelf. */
function ratingsText({ around }: Draft, form: FuseForm): string {
  const fuses = Object.entries(around.parts).flatMap(([part, spec]) =>
    spec.kind === 'fuse' && spec.form === form ? [{ part, ratingA: spec.rating }] : [],
  );
  const range = (some: typeof fuses): string => {
    const ratings = some.map(({ ratingA }) => ratingA);
    const [from, to] = [Math.min(...ratings), Math.max(...ratings)];
    return from === to ? amps(from) : `${asRead(from)} to ${amps(to)}`;
  };
  if (fuses.length === 0) return 'no fuse of it in the catalogue';
  const shelved = fuses.filter(({ part }) => onShelf(around, part) > 0);
  const shelf = shelved.length === 0 ? 'none' : range(shelved);
  return shelf === range(fuses) ? `fuses of ${shelf}` : `fuses of ${range(fuses)}, on the shelf ${shelf}`;
}

/** What is told of some forms, those that lack the same together. */
function byText(lacks: readonly Lack[]): readonly string[] {
  const texts = [...new Set(lacks.map(({ text }) => text))];
  return texts.map((text) => {
    const forms = lacks.filter((one) => one.text === text).map(({ form }) => fuseForms[form].name);
    return `${listed(forms)}: ${text}`;
  });
}

/** Of each form the holder that comes farthest; those that come farthest of all first. */
function nearestOfEach(lacks: readonly Lack[]): readonly Lack[] {
  const farFirst = lacks.toSorted(
    (a, b) => steps.indexOf(b.step) - steps.indexOf(a.step) || (a.part < b.part ? -1 : 1),
  );
  return farFirst.filter(({ form }, at) => farFirst.findIndex((one) => one.form === form) === at);
}
