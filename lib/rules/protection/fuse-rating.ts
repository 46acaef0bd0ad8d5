import type { FuseAlternative, PlanFuse } from '../../model/plan/index.ts';
import { fuseForms } from '../../model/tables/fuse-forms.ts';
import { supplyOf } from '../../plan/power/device-loads.ts';
import { stockWord } from '../../shelf/shelf-lengths.ts';
import { promisedText } from '../data/promised.ts';
import { houseRule } from '../house-rule-of.ts';
import { deviceOf, fuseSpot, partOf } from '../look-up.ts';
import type { Case, Rule, Verdict } from '../rule.ts';
import { amps, ampsDrawn, counted, listed, percent } from '../words.ts';
import { ownFusesRule } from './own-fuses.ts';
import { ceilingOf, fuseWords, isMadeTooLarge, smallerFuse } from './smaller-fuse.ts';

/** True where the catalogue has a fuse of that form and rating. */
function isInCatalogue({ parts }: Pick<Case['job'], 'parts'>, { form, ratingA }: FuseAlternative): boolean {
  return Object.values(parts).some(
    (part) => part.kind === 'fuse' && part.form === form && part.rating === ratingA,
  );
}

/** Lawful alternatives, those of the catalogue first. */
export function fuseOfCatalogueFirst(
  job: Pick<Case['job'], 'parts'>,
  alternatives: readonly FuseAlternative[],
): readonly FuseAlternative[] {
  const known = alternatives.filter((one) => isInCatalogue(job, one));
  return [...known, ...alternatives.filter((one) => !known.includes(one))];
}

/** The lawful alternatives side by side, for a remedy: those of the catalogue first, and of others that they are none. */
export function alternativesText(
  { job }: Pick<Case, 'job'>,
  alternatives: readonly FuseAlternative[],
): string {
  const each = fuseOfCatalogueFirst(job, alternatives).map((one) => {
    const { form, ratingA, stockQuantity, parts } = one;
    const also = parts.length > 0 ? `, with ${listed(parts)}` : '';
    const shelf = isInCatalogue(job, one)
      ? `${counted(stockQuantity, 'piece')} ${stockWord(job.shop)}`
      : 'not in the catalogue';
    return `${fuseForms[form].name} ${amps(ratingA)} (${shelf}${also})`;
  });
  return each.length > 0
    ? `lawful instead: ${listed(each, 'or')}`
    : 'no other form on the shelf is lawful here';
}

/** What has to give way where no form has a lawful fuse: the draw, the conductor, the holder or the form. */
function roomFor({ ratedA, ceilingA, leastAmpacityA, holderA }: PlanFuse): string {
  const lessLoad = 'feed fewer devices through it';
  if (ceilingA !== null && ratedA > ceilingA)
    return `${lessLoad}; if there is one alone, see whether its rated power and its fuse: are written as its maker prints them`;
  if (leastAmpacityA !== null && ratedA > leastAmpacityA)
    return `run conductors behind it that carry at least ${ampsDrawn(ratedA)}, or ${lessLoad}`;
  if (holderA !== null && ratedA > holderA)
    return `take a holder made for at least ${ampsDrawn(ratedA)}, or ${lessLoad}`;
  return `take a holder of another form, or ${lessLoad}`;
}

/** What to do where a fuse has no lawful rating. */
function withoutRatingRemedy(
  about: Case,
  fuse: PlanFuse,
): Pick<Verdict<'fuse-without-rating'>, 'remedy' | 'advice'> {
  if (fuse.ceilingA !== null && isMadeTooLarge(fuse)) return smallerFuse(about, fuse, fuse.ceilingA);
  return {
    remedy: fuse.alternatives.length > 0 ? alternativesText(about, fuse.alternatives) : roomFor(fuse),
  };
}

/** Fuses of the job; those that the vehicle came with are its maker's affair. */
function jobFuses({ job, plan }: Case): readonly PlanFuse[] {
  return plan.power.fuses.filter(({ item }) => deviceOf(job, item)?.origin !== 'vehicle');
}

const withoutRating: Rule = {
  id: 'fuse-without-rating',
  judge(about) {
    return jobFuses(about)
      .filter(({ ratingA }) => ratingA === null || !(ratingA > 0))
      .map((fuse): Verdict<'fuse-without-rating'> => {
        return {
          level: 'stop',
          of: [fuse.id, ...fuse.protects],
          message: `no lawful rating is known for the fuse ${fuse.id} (${fuseForms[fuse.form].name}): ${fuse.reason}`,
          ...withoutRatingRemedy(about, fuse),
          ...fuseSpot(about.job, fuse),
        };
      });
  },
};

const overCeiling: Rule = {
  id: 'fuse-over-ceiling',
  judge(about) {
    return jobFuses(about).flatMap((fuse): Verdict<'fuse-over-ceiling'>[] => {
      const { ratingA, ceilingA } = fuse;
      if (ratingA === null || ceilingA === null || ratingA <= ceilingA) return [];
      return [
        {
          level: 'stop',
          of: [fuse.id],
          message: `the ${amps(ratingA)} fuse ${fuseWords(fuse)} is above the ${amps(ceilingA)} that the maker of ${ceilingOf(about, fuse)} allows`,
          value: ratingA,
          limit: ceilingA,
          unit: 'A',
          ...withOwnFuses(about, fuse, smallerFuse(about, fuse, ceilingA)),
          ...fuseSpot(about.job, fuse),
        },
      ];
    });
  },
};

/** A remedy with the line for a device whose stated fuse sits in its own chassis, where its part tells of none. */
function withOwnFuses<R extends { readonly remedy: string }>(about: Case, fuse: PlanFuse, told: R): R {
  const silent = fuse.loads.filter((id) => {
    const supply = supplyOf(deviceOf(about.job, id)?.spec ?? null);
    return supply?.fuse === fuse.ceilingA && supply['fuses-fitted'] === 0;
  });
  const parts = [...new Set(silent.flatMap((id) => deviceOf(about.job, id)?.part ?? []))];
  if (parts.length === 0) return told;
  const where = `under supply: of ${listed(parts)} in parts`;
  return {
    ...told,
    remedy: `${told.remedy}; or, where that fuse sits in ${listed(silent)} itself, write how many there are ${where}, such as fuses-fitted: 1`,
  };
}

const underMaker: Rule = {
  id: 'fuse-under-maker',
  judge(about) {
    const { value: share, from } = houseRule(about.job, 'fuse-under-maker');
    const fuses = jobFuses(about);
    return fuses.flatMap((fuse): Verdict<'fuse-under-maker'>[] => {
      const { ratingA, ceilingA, loads } = fuse;
      const [device] = loads;
      if (ratingA === null || !(ratingA > 0) || ceilingA === null || !device || loads.length > 1) return [];
      const besideIt = fuses.filter((one) => one.ceilingA === ceilingA && one.loads.includes(device)).length;
      const least = (share * ceilingA) / besideIt;
      if (ratingA >= least - 1e-9) return [];
      return [
        {
          level: 'caution',
          of: [fuse.id, device],
          message: `the ${amps(ratingA)} fuse ${fuse.id} is far below the ${amps(ceilingA)} that the maker of ${device} states: it may open when the device turns on`,
          value: ratingA,
          limit: least,
          unit: 'A',
          remedy: `fit ${amps(ceilingA)}, or the next rating below it, with conductors that it protects`,
          ...from,
          ...fuseSpot(about.job, fuse),
        },
      ];
    });
  },
};

const notMade: Rule = {
  id: 'fuse-not-made',
  judge(about) {
    return jobFuses(about).flatMap((fuse): Verdict<'fuse-not-made'>[] => {
      const { ratingA, form } = fuse;
      const own = partOf(about.job, fuse.part);
      const made = fuseForms[form].ratingsA;
      if (ratingA === null || made.includes(ratingA) || (own?.kind === 'fuse' && own.rating === ratingA))
        return [];
      return [
        {
          level: 'stop',
          of: [fuse.id],
          message: `the fuse ${fuse.id} is written as ${amps(ratingA)}, but ${fuseForms[form].name} fuses are made for ${made.join(', ')} A`,
          value: ratingA,
          unit: 'A',
          remedy: `write a made rating, or leave it out to have it chosen; ${alternativesText(about, fuse.alternatives)}`,
          source: fuseForms[form].standard,
          ...(fuseForms[form].standardMark && { mark: fuseForms[form].standardMark }),
          ...fuseSpot(about.job, fuse),
        },
      ];
    });
  },
};

const notInStock: Rule = {
  id: 'fuse-not-in-stock',
  judge(about) {
    const fuses = jobFuses(about);
    return fuses.flatMap((fuse): Verdict<'fuse-not-in-stock'>[] => {
      const needed = fuse.part === null ? 1 : fuses.filter(({ part }) => part === fuse.part).length;
      if (fuse.ratingA === null || (fuse.part !== null && fuse.stockQuantity >= needed)) return [];
      return [
        {
          level: 'caution',
          of: [fuse.id],
          message: `the shelf has ${counted(fuse.stockQuantity, 'fuse')} of ${fuseForms[fuse.form].name} ${amps(fuse.ratingA)}, and ${fuse.id} with its like needs ${needed}${fuse.part === null ? '' : promisedText(about.job, fuse.part, (count) => counted(count, 'fuse'))}`,
          value: fuse.stockQuantity,
          limit: needed,
          unit: 'piece',
          remedy: `order it; ${alternativesText(about, fuse.alternatives)}; ${fuse.alternatives.length > 0 ? 'these alone may take its place, which conductors and devices behind it allow: nothing else, and no higher rating' : 'never a higher rating in its place'}`,
          ...fuseSpot(about.job, fuse),
        },
      ];
    });
  },
};

const underLoad: Rule = {
  id: 'fuse-under-load',
  judge(about) {
    const { value: share, from } = houseRule(about.job, 'fuse-continuous');
    return jobFuses(about).flatMap((fuse): Verdict<'fuse-under-load'>[] => {
      const { ratingA, ceilingA } = fuse;
      const flowA = fuse.continuousA ?? fuse.ratedA;
      const point = about.plan.power.points.find(({ name }) => name === fuse.continuousAt);
      // A rating of nothing has a rule of its own.
      if (ratingA === null || !(ratingA > 0) || flowA <= share * ratingA + 1e-9) return [];
      const ceiling = ceilingA !== null && ratingA >= ceilingA && flowA <= ratingA;
      return [
        {
          level: ceiling ? 'note' : 'caution',
          of: [fuse.id],
          message: `${point?.title ?? 'Rated power'}: ${ampsDrawn(flowA)} flow through the ${amps(ratingA)} fuse ${fuse.id}, ${percent(flowA / ratingA)} of it, where ${percent(share)} is the limit for a continuous load${ceiling ? '; its device allows no larger one' : ''}`,
          value: flowA,
          limit: share * ratingA,
          unit: 'A',
          remedy: ceiling
            ? 'nothing for music; a long test tone at full power may open it'
            : 'fit the next rating up with conductors that it protects, or feed fewer devices through it',
          ...from,
          ...fuseSpot(about.job, fuse),
        },
      ];
    });
  },
};

const holderOver: Rule = {
  id: 'fuse-over-holder',
  judge(about) {
    return jobFuses(about).flatMap((fuse): Verdict<'fuse-over-holder'>[] => {
      const spec = deviceOf(about.job, fuse.item)?.spec;
      const limit = spec?.kind === 'fuse-holder' ? spec.current : fuse.holderA;
      const { ratingA } = fuse;
      if (ratingA === null || limit === null || ratingA <= limit) return [];
      return [
        {
          level: 'stop',
          of: [fuse.id, fuse.item],
          message: `the holder ${fuse.item} is made for fuses up to ${amps(limit)}, and ${fuse.id} is ${amps(ratingA)}`,
          value: ratingA,
          limit,
          unit: 'A',
          remedy: 'take a holder for the rating, or a smaller fuse',
          ...fuseSpot(about.job, fuse),
        },
      ];
    });
  },
};

export const fuseRatingRules: readonly Rule[] = [
  withoutRating,
  overCeiling,
  ownFusesRule,
  underMaker,
  notMade,
  holderOver,
  notInStock,
  underLoad,
];
