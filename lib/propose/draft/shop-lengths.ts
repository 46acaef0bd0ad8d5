import { inch } from '../../model/quantity/dimensions.ts';
import { writeQuantity } from '../../model/quantity/quantity.ts';
import type { Around } from './around.ts';

const centimetre = 0.01;
/** What a length may be off for its writing alone, of the unit. */
const slack = 1e-6;

/** A length as the shop measures, up to the next whole inch or centimetre. */
export function lengthOver(around: Pick<Around, 'shop'>, lengthM: number): string {
  return written(around, Math.ceil(lengthM / unitOf(around) - slack));
}

/** A length as the shop measures, down to a whole inch or centimetre, so that what is assumed keeps its limit. */
export function lengthWithin(around: Pick<Around, 'shop'>, lengthM: number): string {
  return written(around, Math.max(1, Math.floor(lengthM / unitOf(around) + slack)));
}

const unitOf = ({ shop }: Pick<Around, 'shop'>) => (shop.units === 'inch' ? inch : centimetre);

function written({ shop }: Pick<Around, 'shop'>, units: number): string {
  return shop.units === 'inch'
    ? `${units} in`
    : writeQuantity(Number((units * centimetre).toPrecision(12)), 'length');
}
