import type { Part, PartOf } from '../model/kinds/index.ts';
import { partFacts } from '../model/kinds/index.ts';
import { terminalsOf } from '../model/kinds/kind.ts';
import { stemName } from '../model/ports/pair-name.ts';
import type { TerminalRole } from '../model/vocabulary.ts';
import type { Report } from './report.ts';

/** What a part says of itself agrees with itself: names within it stand for what they should, and figures fit together. */
export function checkPartSense(id: string, part: Part, report: Report): void {
  checkPositions(id, part, report);
  if (part.kind === 'amplifier') checkOutputRoles(id, part, report);
  checkFilteredOutputs(id, part, report);
  if (part.kind === 'speaker') checkCoilRoles(id, part, report);
  if (part.kind === 'cable') checkConductors(id, part, report);
  if (part.kind === 'terminal') checkCrimp(id, part, report);
  if (part.kind === 'fixing') checkFixing(id, part, report);
}

/** What a switch is set to is one of its positions. */
function checkPositions(id: string, part: Part, report: Report): void {
  for (const [name, control] of Object.entries(partFacts(part).controls)) {
    const { positions } = control;
    if (!positions) continue;
    const known = Object.fromEntries(positions.map((position) => [position, position]));
    const path = ['parts', id, 'controls', name];
    for (const [index, position] of (control.automatic ?? []).entries())
      report.look([...path, 'automatic', String(index)], `position of ${name}`, position, known);
    for (const [index, position] of (control.reverses ?? []).entries())
      report.look([...path, 'reverses', String(index)], `position of ${name}`, position, known);
    for (const [position, inputs] of Object.entries(control.hears ?? {})) {
      report.look([...path, 'hears', position], `position of ${name}`, position, known);
      for (const [index, input] of inputs.entries())
        report.look([...path, 'hears', position, String(index)], `input of ${id}`, input, inputNames(part));
    }
    if (control.final !== undefined)
      report.look([...path, 'final'], `position of ${name}`, control.final, known);
    for (const position of Object.keys(control.filter?.passes ?? {}))
      report.look([...path, 'filter', 'passes', position], `position of ${name}`, position, known);
  }
}

/** The inputs of a part, by terminal or pair. */
function inputNames(part: Part): Readonly<Record<string, string>> {
  const inputs = terminalsOf(partFacts(part).terminals, 'signal-in', 'speaker-in-positive').map(stemName);
  return Object.fromEntries(inputs.map((name) => [name, name]));
}

function checkRole(
  path: readonly string[],
  terminal: string,
  role: TerminalRole | undefined,
  asked: TerminalRole,
  report: Report,
): void {
  if (role === undefined || role === asked) return;
  report.at(
    path,
    `${terminal} has the role ${role} and stands where ${asked} belongs`,
    `name the terminal with role: ${asked}, or correct its role:`,
  );
}

/** Each channel has an output of either sign. Of a bridge either end may be any of the two outputs, but not one alone. */
function checkOutputRoles(id: string, part: PartOf<'amplifier'>, report: Report): void {
  for (const [name, { positive, negative }] of Object.entries(part.channels)) {
    const path = ['parts', id, 'channels', name];
    checkRole(
      [...path, 'positive'],
      positive,
      part.terminals[positive]?.role,
      'speaker-out-positive',
      report,
    );
    checkRole(
      [...path, 'negative'],
      negative,
      part.terminals[negative]?.role,
      'speaker-out-negative',
      report,
    );
  }
  for (const [name, { channels = [] }] of Object.entries(part.controls))
    for (const [index, channel] of channels.entries())
      report.look(
        ['parts', id, 'controls', name, 'channels', String(index)],
        `channel of ${id}`,
        channel,
        part.channels,
      );
  for (const [name, { positive, negative }] of Object.entries(part.bridges))
    if (positive === negative)
      report.at(
        ['parts', id, 'bridges', name, 'negative'],
        `${name} begins and ends at ${positive}`,
        'name the terminal at its other end',
      );
}

/** The outputs that filters of a menu or of a control are for are outputs of the part. */
function checkFilteredOutputs(id: string, part: Part, report: Report): void {
  const { terminals, controls } = partFacts(part);
  const outputs = terminalsOf(terminals, 'signal-out', 'speaker-out-positive', 'speaker-out-negative');
  const known = Object.fromEntries(
    outputs.flatMap((name) => [name, stemName(name)]).map((name) => [name, name]),
  );
  const look = (path: readonly string[], name: string) => report.look(path, `output of ${id}`, name, known);
  const ofMenu = 'filter-outputs' in part ? (part['filter-outputs'] ?? []) : [];
  for (const [index, name] of ofMenu.entries()) look(['parts', id, 'filter-outputs', String(index)], name);
  const others = 'filters-at' in part ? Object.keys(part['filters-at'] ?? {}) : [];
  for (const name of others) look(['parts', id, 'filters-at', name], name);
  if (part.kind === 'amplifier') return;
  for (const [control, { filter, channels = [] }] of Object.entries(controls))
    for (const [index, name] of filter ? channels.entries() : [])
      look(['parts', id, 'controls', control, 'channels', String(index)], name);
}

function checkCoilRoles(id: string, part: PartOf<'speaker'>, report: Report): void {
  for (const [name, { positive, negative }] of Object.entries(part.coils)) {
    const path = ['parts', id, 'coils', name];
    checkRole([...path, 'positive'], positive, part.terminals[positive]?.role, 'coil-positive', report);
    checkRole([...path, 'negative'], negative, part.terminals[negative]?.role, 'coil-negative', report);
  }
}

/** Of the two conductors of a lead one is of each side; one of a lead for signal is a thin one. */
function checkConductors(id: string, part: PartOf<'cable'>, report: Report): void {
  const conductors = Object.entries(part.conductors);
  if (part.filter && (part['made-length'] === undefined || !part.for.includes('signal')))
    report.at(
      ['parts', id, 'filter'],
      `${id} is no made-up line lead, so it has no filter: of its own`,
      'write made-length: and for: [signal], or leave filter: out',
    );
  const sided = conductors.filter(([, { side }]) => side === 'left' || side === 'right');
  for (const [index, [name, { side }]] of sided.entries()) {
    const fellow = sided.slice(0, index).find(([, other]) => other.side === side);
    if (fellow)
      report.at(
        ['parts', id, 'conductors', name, 'side'],
        `${name} and ${fellow[0]} of ${id} are both of the ${side} side`,
        'write side: left of one and side: right of the other',
      );
  }
  for (const [name, { size }] of conductors)
    if (size.areaMm2 > thickestMm2[part.form])
      report.at(
        ['parts', id, 'conductors', name, 'size'],
        `${name} of ${id} is ${size.label}, and a ${part.form} cable has none above ${thickestMm2[part.form]} mm2`,
        'check the number and its unit: 24 AWG is 0.2 mm2',
      );
}

/** The thickest conductor that a form of cable is made with; common practice, no source. */
const thickestMm2: Readonly<Record<PartOf<'cable'>['form'], number>> = {
  coaxial: 2.5,
  data: 2.5,
  'twisted-pair': 6,
  'multi-conductor': 16,
};

/** A crimp holds sizes that are near each other: 22 to 18 AWG is two and a half times the area. */
const widestCrimp = 4;

function checkCrimp(id: string, part: PartOf<'terminal'>, report: Report): void {
  const { form, takes, pin, 'other-side': other } = part;
  const isCrimp = !['reducer', 'post-clamp'].includes(form);
  if (isCrimp && takes.to.areaMm2 > widestCrimp * takes.from.areaMm2)
    report.at(
      ['parts', id, 'takes'],
      `${id} takes ${takes.from.label} to ${takes.to.label}: no crimp holds both`,
      'check both sizes: 1/0 AWG is not 10 AWG',
    );
  if (other && (form !== 'butt-splice' || other.to.areaMm2 >= takes.to.areaMm2))
    report.at(
      ['parts', id, 'other-side'],
      form === 'butt-splice'
        ? `the other side of ${id} takes up to ${other.to.label}, and ${id} up to ${takes.to.label}: it does not step down`
        : `${id} is no butt splice, so it has no other side`,
      form === 'butt-splice'
        ? 'write the thicker barrel as takes: and the thinner one as other-side:, or leave other-side: out where both are alike'
        : 'leave other-side: out',
    );
  if (pin && pin.areaMm2 >= takes.from.areaMm2)
    report.at(
      ['parts', id, 'pin'],
      `the pin of ${id} stands for ${pin.label}, and the reducer takes ${takes.from.label}: it reduces nothing`,
      'write the size of the port that it goes into',
    );
}

/** Nominal diameter of a metric thread, `M6` (m). */
function threadM(thread: string | undefined): number | null {
  const found = /^M(\d+(?:\.\d+)?)$/.exec(thread ?? '');
  return found ? Number(found[1]) / 1000 : null;
}

function checkFixing(id: string, part: PartOf<'fixing'>, report: Report): void {
  const { thread, pilot, clearance, form, thickness } = part;
  const mm = (lengthM: number) => `${Number((1000 * lengthM).toFixed(2))} mm`;
  const nominalM = threadM(thread);
  if (nominalM !== null && clearance !== undefined && clearance < nominalM)
    report.at(
      ['parts', id, 'clearance'],
      `the clearance hole of ${id} is ${mm(clearance)}, and its thread ${thread} does not go through`,
      'write the hole that the thread passes freely',
    );
  const bearsOn = part['bears-on'];
  if (nominalM !== null && bearsOn !== undefined && bearsOn <= nominalM)
    report.at(
      ['parts', id, 'bears-on'],
      `the head of ${id} bears on ${mm(bearsOn)}, and its thread is ${thread}`,
      'measure across the head or its washer',
    );
  if (form === 'wood-screw' && pilot !== undefined && clearance !== undefined && pilot >= clearance)
    report.at(
      ['parts', id, 'pilot'],
      `the pilot hole of ${id} is ${mm(pilot)}, and its clearance hole ${mm(clearance)}: the screw would bite nowhere`,
      'the pilot is the smaller of the two',
    );
  if (form === 'washer' && thickness !== undefined && thickness > 0.006)
    report.at(
      ['parts', id, 'thickness'],
      `the washer ${id} is ${mm(thickness)} thick`,
      'check the number: a washer of 1.6 mm is no 16 mm',
    );
}
