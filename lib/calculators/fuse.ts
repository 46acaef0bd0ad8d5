import { type Fault, isFault } from '../model/fault.ts';
import { quantityAbove } from '../model/fields.ts';
import { printed } from '../model/printed/index.ts';
import { amps, ampsDrawn } from '../model/printed/told.ts';
import { fuseFormIds, fuseForms } from '../model/tables/fuse-forms.ts';
import type { Traced } from '../model/trace.ts';
import { type Ampacity, ampacity } from '../power/conductor/ampacity.ts';
import { chooseFuse, type FuseChoice, type LawfulFuse } from '../power/fuse-choice.ts';
import { interruptNeedA } from '../power/interrupting.ts';
import type { Bench } from './bench.ts';
import {
  type Answer,
  type AnswerTable,
  calculator,
  type Figure,
  figureOf,
  type ValuesOf,
} from './calculator.ts';
import { choice, optional, required } from './field.ts';
import { makeFields, runFields, zoneOf } from './run-fields.ts';

const fields = {
  current: required(quantityAbove('current'), { label: 'Current at rated power', initial: '40 A' }),
  ceiling: optional(quantityAbove('current'), {
    label: 'Greatest fuse that the maker of the device allows',
    initial: '',
  }),
  form: choice(
    [
      { value: 'any', title: 'Any' },
      ...fuseFormIds.map((value) => ({ value, title: fuseForms[value].name })),
    ],
    { label: 'Form of its holder', initial: 'any' },
  ),
  holder: optional(quantityAbove('current'), { label: 'Greatest current of the holder', initial: '' }),
  ...makeFields({
    label: 'Size of the conductor behind it',
    hint: 'Such as 4 AWG or 16 mm2.',
    initial: '4 AWG',
  }),
  ...runFields,
  cranking: optional(quantityAbove('current'), {
    label: 'Cold-cranking current of the battery before it',
    hint: 'Of all batteries together. Left empty: what it interrupts is not judged.',
    initial: '',
  }),
};
type Entries = ValuesOf<typeof fields>;

/** Fuse: the rating that carries a current with its margin and protects the conductor behind it. */
export const fuseCalculator = calculator({
  id: 'fuse',
  title: 'Fuse',
  asks: 'Which rating carries a current with its margin and protects the conductor behind it.',
  fields,
  compute: (entries, bench) => {
    const carries = carriedBehind(entries, bench);
    if (isFault(carries)) return carries;
    const need = entries.cranking === null ? null : interruptNeedA(entries.cranking, bench.power);
    if (isFault(need)) return need;
    const found = chooseFuse(
      {
        ratedA: entries.current,
        ceilingA: entries.ceiling,
        protects: carries === null ? [] : [{ id: 'the conductor', ampacityA: carries.ampacityA.value }],
        form: entries.form === 'any' ? null : entries.form,
        interruptNeedA: need?.value ?? null,
        ...(entries.holder !== null && { holderLargestA: entries.holder }),
      },
      bench.shop,
      bench.power,
    );
    return isFault(found) ? found : answerOf(found, carries, need);
  },
});

/** What the conductor behind the fuse carries; null where none is named. */
function carriedBehind(entries: Entries, bench: Bench): Ampacity | Fault | null {
  const { size, material, insulation } = entries;
  if (size === null) return null;
  const conductor = { areaMm2: size.areaMm2, material, insulationC: insulation };
  return ampacity(conductor, [zoneOf(entries, bench)], bench.power);
}

function answerOf(found: FuseChoice, carries: Ampacity | null, need: Traced<number> | null): Answer {
  const { chosen, reason, wantedA, mostA, alternatives } = found;
  return {
    says: chosen ? `${amps(chosen.ratingA)}, ${fuseForms[chosen.form].name}` : reason,
    minds: [...(chosen ? [reason] : []), ...mindsOf(chosen, carries, need)],
    figures: [
      ...(chosen ? [fuseFigure(chosen)] : []),
      figureOf('Asked for', printed('current-at-least', wantedA.value), wantedA),
      ...(mostA ? [figureOf('At most', printed('current-allowed', mostA.value), mostA)] : []),
      ...(carries
        ? [
            figureOf(
              'The conductor carries',
              printed('current-allowed', carries.ampacityA.value),
              carries.ampacityA,
            ),
          ]
        : []),
      ...(chosen ? [{ label: 'Interrupts', text: printed('current-allowed', chosen.interruptA) }] : []),
      ...(need ? [figureOf('Must interrupt', printed('current-carried', need.value), need)] : []),
    ],
    steps: [],
    ...(alternatives.length > 0 && { table: alternativesTable(alternatives) }),
  };
}

function fuseFigure({ ratingA, form, stockQuantity, part }: LawfulFuse): Figure {
  const shelf =
    stockQuantity > 0
      ? `${stockQuantity} on the shelf${part === null ? '' : `, ${part}`}`
      : 'not on the shelf';
  return {
    label: 'Fuse',
    text: printed('current-allowed', ratingA),
    beside: `${fuseForms[form].name}, ${shelf}`,
  };
}

function mindsOf(
  chosen: LawfulFuse | null,
  carries: Ampacity | null,
  need: Traced<number> | null,
): readonly string[] {
  const minds = carries
    ? []
    : ['No conductor is named: the fuse must not be larger than what the conductor behind it carries.'];
  if (need === null) minds.push('No battery is named: what the fuse interrupts is not judged.');
  if (!chosen) return minds;
  if (need !== null && chosen.interruptA < need.value)
    minds.push(
      `It interrupts ${amps(chosen.interruptA)}, and a short may drive ${ampsDrawn(need.value)} through it: take another form.`,
    );
  if (carries && carries.cautionA.value < chosen.ratingA)
    minds.push(
      `At its true ambient, covered and bundled the conductor carries ${amps(carries.cautionA.value)}: less than this fuse.`,
    );
  return minds;
}

function alternativesTable(alternatives: readonly LawfulFuse[]): AnswerTable {
  return {
    caption: 'Others that would do',
    columns: [
      { title: 'Rating', isFigure: true },
      { title: 'Form' },
      { title: 'Interrupts', isFigure: true },
      { title: 'On the shelf', isFigure: true },
      { title: 'Keeps its margin' },
      { title: 'Takes a holder' },
    ],
    rows: alternatives.map((fuse) => [
      printed('current-allowed', fuse.ratingA),
      fuseForms[fuse.form].name,
      printed('current-allowed', fuse.interruptA),
      String(fuse.stockQuantity),
      fuse.keepsMargin ? 'yes' : 'NO',
      fuse.addParts.join(', '),
    ]),
  };
}
