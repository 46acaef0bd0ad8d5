import type { Job } from '../../model/content/resolved-job.ts';
import { printed } from '../../model/printed/index.ts';
import { houseRule } from '../house-rule-of.ts';
import { deviceSpot, partSpot } from '../look-up.ts';
import type { Rule, Verdict } from '../rule.ts';
import { amps, ampsDrawn, listed } from '../words.ts';

/** How long the modules of a vehicle take to go to sleep. */
const waitOf = ({ rules }: Pick<Job, 'rules'>): string =>
  printed('time-needed', rules['key-off-wait'].value / 60);

const keyOffOver: Rule = {
  id: 'key-off-over-limit',
  judge({ job, plan }) {
    const keyOff = plan.power.keyOff;
    const { from } = houseRule(job, 'key-off-draw');
    if (!keyOff || keyOff.drawA <= keyOff.limitA + 1e-12) return [];
    const drawing = keyOff.items
      .filter(({ drawA }) => (drawA ?? 0) > 0)
      .toSorted((a, b) => (b.drawA ?? 0) - (a.drawA ?? 0) || (a.item < b.item ? -1 : 1));
    const [most] = drawing;
    return [
      {
        level: 'caution',
        of: drawing.map(({ item }) => item),
        message: `with the key off ${listed(drawing.map(({ item, drawA }) => `${item} (${ampsDrawn(drawA ?? 0)})`))} draw ${ampsDrawn(keyOff.drawA)} together; ${amps(keyOff.limitA)} is the limit for the whole vehicle`,
        value: keyOff.drawA,
        limit: keyOff.limitA,
        unit: 'A',
        remedy: `feed what draws most through a relay that opens with the key, and measure ${waitOf(job)} or more after locking`,
        ...from,
        ...deviceSpot(job, most?.item ?? ''),
      },
    ];
  },
};

const keyOffUntold: Rule = {
  id: 'key-off-not-told',
  judge({ job, plan }): Verdict<'key-off-not-told'>[] {
    const untold = (plan.power.keyOff?.items ?? []).filter(({ drawA }) => drawA === null);
    const [first] = untold;
    if (!first) return [];
    const names = untold.map(({ item }) => item);
    return [
      {
        level: 'note',
        of: names,
        message: `the key-off draw of ${listed(names)} is not known: the sum leaves it out`,
        remedy: `write it in the part, under supply:, such as key-off: 1.5 mA, as its leaflet tells or as measured ${waitOf(job)} or more after locking`,
        ...partSpot(job, first.item),
      },
    ];
  },
};

export const keyOffRules: readonly Rule[] = [keyOffOver, keyOffUntold];
