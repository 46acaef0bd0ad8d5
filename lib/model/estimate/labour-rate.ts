import { z } from 'zod';
import { sumFault, sumForm } from '../shelf/price.ts';

/** What an hour of work is charged at, in the currency of the shop. */
export interface LabourRate {
  readonly amountPerHour: number;
}

const rateForm = `^${sumForm} per h$`;
const example = '85 per h';

/** A rate as it is written: `85 per h`. */
export const labourRate: z.ZodCodec<z.ZodString, z.ZodCustom<LabourRate, LabourRate>> = z.codec(
  z
    .string({ error: () => `needs what an hour costs, such as ${example}` })
    .meta({ examples: [example], description: 'What an hour costs.', pattern: rateForm }),
  z.custom<LabourRate>(),
  {
    decode: (value, ctx) => {
      const [, amount] = new RegExp(rateForm).exec(value) ?? [];
      if (amount !== undefined) return { amountPerHour: Number(amount) };
      ctx.issues.push({ code: 'custom', input: value, message: rateFault(value) });
      return z.NEVER;
    },
    encode: labourRateText,
  },
);

/** A rate as a shop file has it. */
export function labourRateText({ amountPerHour }: LabourRate): string {
  return `${amountPerHour} per h`;
}

/** What is wrong with a text that is no rate. */
function rateFault(text: string): string {
  const [, amount = text, rest] = /^(.*?)\s+(per\b.*|\/.*)$/.exec(text.trim()) ?? [];
  const fault = sumFault(amount);
  if (fault !== null) return fault;
  const what = rest === undefined ? 'does not say what it is for' : `is for "${rest}", which is not an hour`;
  return `"${text}" ${what}: write ${amount} per h`;
}
