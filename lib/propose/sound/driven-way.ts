import { ohms, watts } from '../../model/printed/told.ts';
import type { DraftDevice } from '../draft/draft-device.ts';
import { joinsFor, type WiredOutput, wiredOutput } from './coil-wiring.ts';
import type { AmplifierOutput } from './outputs.ts';

/** One way to drive speakers that the amplifier allows: one output for all of them, or one for each. */
interface DrivenWay {
  readonly outputs: readonly WiredOutput[];
  readonly powerW: number;
  /** True where a speaker could get more than its maker allows. */
  readonly isAbove: boolean;
}

/** A way that was chosen, with the reason. */
export interface ChosenWay {
  readonly outputs: readonly WiredOutput[];
  readonly reason: string;
}

/** Of some ways those that the amplifier may drive, with like power in all coils. */
export function lawfulWays(tried: readonly (readonly WiredOutput[])[]): readonly DrivenWay[] {
  return tried.flatMap((outputs) => {
    if (outputs.length === 0 || outputs.some(({ powerW }) => powerW === null)) return [];
    const powerW = outputs.reduce((sum, one) => sum + (one.powerW ?? 0), 0);
    return [{ outputs, powerW, isAbove: outputs.some((one) => (one.powerW ?? 0) > one.takenW) }];
  });
}

/**
 * The way that comes nearest to what the makers of the speakers allow without passing it; where all pass it, the one
 * with the least. Ways to a load that the job asks of an output go before all others. Null where none is lawful.
 */
export function bestWay(
  amplifier: DraftDevice,
  tried: readonly (readonly WiredOutput[])[],
): ChosenWay | null {
  const lawful = lawfulWays(tried);
  const asked = lawful.filter(({ outputs }) => outputs.every((one) => isAsAsked(amplifier, one) !== false));
  const isAsked = asked.some(({ outputs }) => outputs.some((one) => isAsAsked(amplifier, one) === true));
  const open = isAsked ? asked : lawful;
  const [best] = open.toSorted(betterFirst);
  if (!best) return null;
  return {
    outputs: best.outputs,
    reason: isAsked ? `as loads: says, ${givenText(best)}` : reasonOf(best, open),
  };
}

/** The joining of speakers on an output that is chosen so; null where none is lawful. */
export function wiredBest(
  amplifier: DraftDevice,
  output: AmplifierOutput,
  speakers: readonly DraftDevice[],
): ChosenWay | null {
  return bestWay(
    amplifier,
    joinsFor(speakers).map((join) => [wiredOutput(output, speakers, join) ?? []].flat()),
  );
}

/** Why coils are joined so, behind another reason; empty where there is nothing to join. */
export function joinText(way: ChosenWay | null | undefined): string {
  return way?.outputs.some(({ join }) => join.coils !== 'one') ? `; ${way.reason}` : '';
}

/** Whether an output sees the load that the job asks for, within 1 %; null where it asks for none. */
function isAsAsked({ given }: DraftDevice, { output, loadOhm }: WiredOutput): boolean | null {
  const asked = given?.loads[output.name];
  return asked === undefined ? null : Math.abs(loadOhm - asked) <= 0.01 * asked;
}

/** What the speakers take, the most of it, before what they do not; then fewest outputs, coils in series first. */
function betterFirst(a: DrivenWay, b: DrivenWay): number {
  const channels = ({ outputs }: DrivenWay) => outputs.flatMap(({ output }) => output.channels).length;
  return (
    Number(a.isAbove) - Number(b.isAbove) ||
    (a.isAbove ? a.powerW - b.powerW : b.powerW - a.powerW) ||
    a.outputs.length - b.outputs.length ||
    channels(a) - channels(b)
  );
}

function reasonOf(way: DrivenWay, lawful: readonly DrivenWay[]): string {
  const taken = watts(way.outputs[0]?.takenW ?? 0);
  return way.isAbove
    ? `${givenText(way)}: the least that can be had, above the ${taken} that the maker allows`
    : `${givenText(way)}: the most within the ${taken} that the maker allows${strongerText(lawful)}`;
}

function givenText({ outputs: [first] }: DrivenWay): string {
  if (!first) return '';
  const { join, loadOhm, powerW } = first;
  const coils = join.coils === 'one' ? '' : `, the coils of each speaker in ${join.coils}`;
  const speakers = {
    one: '',
    parallel: ', the speakers in parallel at the amplifier',
    series: ', the speakers in series',
  }[join.speakers];
  return `${ohms(loadOhm)} take ${watts(powerW ?? 0)}${coils}${speakers}`;
}

/** The nearest way that gives more than the maker of the speakers allows: who wants it asks for its load. */
function strongerText(lawful: readonly DrivenWay[]): string {
  const [next] = lawful.filter(({ isAbove }) => isAbove).toSorted(betterFirst);
  const [first] = next?.outputs ?? [];
  if (!first || first.powerW === null) return '';
  const coils = first.join.coils === 'one' ? '' : `, coils in ${first.join.coils},`;
  return `; ${ohms(first.loadOhm)}${coils} would take ${watts(first.powerW)}, more than that: who wants it asks for it under loads: of the amplifier`;
}
