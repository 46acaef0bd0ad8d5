import { type Fault, faultOf, isFault } from '../model/fault.ts';
import { count, quantityAbove, stretch } from '../model/fields.ts';
import { printed } from '../model/printed/index.ts';
import { printedLength } from '../model/printed/lengths.ts';
import { amps, voltsAllowed, voltsLost } from '../model/printed/told.ts';
import { awgSize } from '../model/quantity/wire-size.ts';
import { awgSizes } from '../model/tables/awg-sizes.ts';
import { fuseFormIds, fuseForms } from '../model/tables/fuse-forms.ts';
import { conductorRoleSchema } from '../model/vocabulary.ts';
import {
  type CableCandidate,
  type ConductorChoice,
  type ConductorDuty,
  chooseConductor,
  type JudgedCable,
  nearestToFit,
} from '../power/conductor/conductor-choice.ts';
import { chooseFuse } from '../power/fuse-choice.ts';
import type { RatedFuse } from '../power/fuse-resistance.ts';
import { wayOhm } from '../power/way-resistance.ts';
import type { Bench } from './bench.ts';
import { type Answer, type AnswerTable, calculator, figureOf, type ValuesOf } from './calculator.ts';
import { choice, optional, required, ruleField, yesNo } from './field.ts';
import { lengthExample, makeFields, runFields, zoneOf } from './run-fields.ts';

const fields = {
  current: required(quantityAbove('current'), {
    label: 'Current that it carries',
    hint: 'At rated power: the drop is judged at it.',
    initial: '60 A',
  }),
  length: required(stretch, {
    label: 'Length of the feed',
    initial: lengthExample('16 ft', '5 m'),
  }),
  return: optional(stretch, {
    label: 'Length of the return',
    hint: 'Of the same conductor. Left empty: none.',
    initial: lengthExample('18 in', '45 cm'),
  }),
  fuse: optional(quantityAbove('current'), {
    label: 'Fuse before it',
    hint: 'Left empty: the next rating made for the current with its margin.',
    initial: '',
  }),
  form: choice(
    fuseFormIds.map((value) => ({ value, title: fuseForms[value].name })),
    { label: 'Form of the fuse', initial: 'large-bolt-in' },
  ),
  ...runFields,
  crimps: required(count, { label: 'Crimped ends, feed and return together', initial: '6' }),
  bolts: required(count, { label: 'Bolted joints, feed and return together', initial: '6' }),
  body: yesNo({ label: 'Back through the body', initial: 'yes' }),
  voltage: ruleField('voltage-sizing', { label: 'Supply for sizing' }),
  drop: ruleField('drop-limit', { label: 'Greatest drop, feed plus return' }),
  from: choice(
    [
      ...conductorRoleSchema.options.map((value) => ({ value, title: `Reels for ${value}` })),
      { value: 'made', title: 'Any size made, as marked below' },
    ],
    { label: 'Chosen from', initial: 'power' },
  ),
  ...makeFields({ label: 'Size to check', hint: 'Left empty: the smallest that fits.', initial: '' }),
};
type Entries = ValuesOf<typeof fields>;

/** Conductor and drop: the smallest cable that covers its fuse and keeps the drop, or whether a given one does. */
export const conductorCalculator = calculator({
  id: 'conductor',
  title: 'Conductor and drop',
  asks: 'Which size covers its fuse and keeps the drop, or whether a given size does.',
  fields,
  compute: (entries, bench) => {
    const fuse = fuseBefore(entries, bench);
    if (isFault(fuse)) return fuse;
    const other = wayOhm(
      { crimps: entries.crimps, bolts: entries.bolts, throughBody: entries.body, fuse },
      bench.rules,
    );
    if (isFault(other)) return other;
    const duty = dutyOf(entries, fuse, other.value, bench);
    const { cables, note } = candidatesOf(entries, bench);
    const found = choose(duty, cables, bench);
    if (isFault(found)) return found;
    const answer = answerOf(entries, duty, found.choice, bench);
    return {
      ...answer,
      minds: [...(note === null ? [] : [note]), ...found.minds, ...exhaustMind(entries), ...answer.minds],
      steps: [{ label: 'All else on the way', trace: other.trace }, ...answer.steps],
    };
  },
});

/** The fuse as written, or the next rating made in its form for the current with its margin. */
function fuseBefore({ fuse, form, current }: Entries, { power }: Bench): RatedFuse | Fault {
  if (fuse !== null) return { form, ratingA: fuse };
  const duty = { ratedA: current, ceilingA: null, protects: [], form, interruptNeedA: null };
  const found = chooseFuse(duty, { fuses: [] }, power);
  if (isFault(found)) return found;
  if (found.chosen) return { form, ratingA: found.chosen.ratingA };
  return faultOf('fuse-not-made', ['fuse'], found.reason, 'choose another form, or write the fuse');
}

function dutyOf(entries: Entries, { ratingA }: RatedFuse, otherOhm: number, bench: Bench): ConductorDuty {
  const { current, length, drop, voltage } = entries;
  const backM = entries.return ?? 0;
  return {
    fuseA: ratingA,
    warmFuseA: ratingA,
    currentA: current,
    lengthM: Math.max(length, backM),
    loopLengthM: length + backM,
    otherOhm,
    mostDropV: drop * voltage,
    zones: [zoneOf(entries, bench, length)],
  };
}

/** The cables that are asked about, and what is to be said of them. */
function candidatesOf(
  { from, size, material, insulation }: Entries,
  { shop }: Bench,
): { readonly cables: readonly CableCandidate[]; readonly note: string | null } {
  const marked = { part: '', material, insulationC: insulation };
  if (from === 'made') {
    const sizes = size === null ? awgSizes.map(awgSize) : [size];
    return { cables: sizes.map((one) => ({ ...marked, size: one })), note: null };
  }
  const reels = shop.reels.filter(({ uses }) => uses.includes(from)).map(({ cable }) => cable);
  if (size === null) return { cables: reels, note: null };
  const own = reels.filter((cable) => cable.size.areaMm2 === size.areaMm2);
  if (own.length > 0) return { cables: own, note: null };
  const note = `No reel for ${from} has ${size.label}: judged as marked in the last entries.`;
  return { cables: [{ ...marked, size }], note };
}

/** The choice from the shelf; where that has none that fits, from all that the catalogue has. */
function choose(
  duty: ConductorDuty,
  cables: readonly CableCandidate[],
  { power }: Bench,
): { readonly choice: ConductorChoice; readonly minds: readonly string[] } | Fault {
  const shelf = chooseConductor(duty, cables, power);
  if (isFault(shelf) || shelf.chosen) return isFault(shelf) ? shelf : { choice: shelf, minds: [] };
  const catalogue = chooseConductor(
    duty,
    cables.map(({ stockM: _, ...cable }) => cable),
    power,
  );
  if (isFault(catalogue) || !catalogue.chosen)
    return isFault(catalogue) ? catalogue : { choice: catalogue, minds: [] };
  return { choice: catalogue, minds: ['No piece on the shelf is long enough: this one is to be bought.'] };
}

function exhaustMind({ zone }: Entries): readonly string[] {
  return zone === 'near-exhaust' ? ['No conductor is laid near the exhaust: find another way.'] : [];
}

function answerOf(
  entries: Entries,
  duty: ConductorDuty,
  { chosen, reason, considered }: ConductorChoice,
  bench: Bench,
): Answer {
  const judged = chosen ?? nearestToFit(considered);
  const limits = `${voltsAllowed(duty.mostDropV)} allowed, fuse ${amps(duty.fuseA)}`;
  if (!judged) return { says: reason, minds: [], figures: [], steps: [] };
  const { size, part } = judged.candidate;
  const drop = `drops ${voltsLost(judged.dropV.value)}, carries ${amps(judged.ampacity.ampacityA.value)}`;
  const fits = `${size.label}${part === '' ? '' : `, ${part},`} fits: ${drop}; ${limits}`;
  return {
    says: chosen ? fits : reason,
    minds: chosen
      ? [
          ...(entries.size === null ? [reason] : []),
          ...(judged.doubt === null ? [] : [`${size.label}: ${judged.doubt}`]),
        ]
      : [`Nothing that was asked about fits: ${limits}.`],
    figures: figuresOf(entries, duty, judged, bench),
    steps: [
      { label: 'Resistance of a metre, warm', trace: judged.ohmPerM.trace },
      { label: 'Its temperature', trace: judged.temperatureC.trace },
    ],
    table: tableOf(considered),
  };
}

function figuresOf(
  { voltage }: Entries,
  { fuseA, mostDropV, lengthM }: ConductorDuty,
  { candidate, ampacity, dropV }: JudgedCable,
  { style }: Bench,
): Answer['figures'] {
  const share = printed('share-lost', (100 * dropV.value) / voltage);
  const area = printed('cross-section', candidate.size.areaMm2);
  return [
    { label: 'Conductor', text: candidate.size.label, beside: area },
    figureOf(
      'Drop',
      printed('voltage-lost', dropV.value),
      dropV,
      `${share} of ${printed('voltage', voltage)}`,
    ),
    { label: 'Greatest drop', text: voltsAllowed(mostDropV) },
    figureOf('It carries', printed('current-allowed', ampacity.ampacityA.value), ampacity.ampacityA),
    figureOf(
      'At its true ambient, covered and bundled',
      printed('current-allowed', ampacity.cautionA.value),
      ampacity.cautionA,
    ),
    { label: 'Fuse', text: printed('current-allowed', fuseA) },
    {
      label: 'Longest piece to cut',
      text: printedLength('length-taken', lengthM, { ...style, feet: true }).primary,
    },
  ];
}

function tableOf(considered: readonly JudgedCable[]): AnswerTable {
  return {
    caption: 'All that were considered',
    columns: [
      { title: 'Size' },
      { title: 'Part' },
      { title: 'Carries', isFigure: true },
      { title: 'Drop', isFigure: true },
      { title: 'Against it' },
    ],
    rows: considered.map((judged) => [
      judged.candidate.size.label,
      judged.candidate.part,
      printed('current-allowed', judged.ampacity.ampacityA.value),
      printed('voltage-lost', judged.dropV.value),
      againstText(judged),
    ]),
  };
}

/** What speaks against a cable; that it is too warm says nothing new of one that its fuse is too large for anyhow. */
function againstText({ misses, doubt }: JudgedCable): string {
  const isOver = misses.some(({ limit }) => limit === 'fuse');
  return [...misses.map(({ text }) => text), ...(doubt === null || isOver ? [] : [doubt])].join('; ');
}
