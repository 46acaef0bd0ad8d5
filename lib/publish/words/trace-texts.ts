import type { Trace, TraceInput } from '../../model/trace.ts';
import { markWords } from './words.ts';
import { plainNumber } from './written.ts';

/** An input of a working as it is printed. */
export interface InputText {
  readonly name: string;
  readonly value: string;
}

/** How a number came about, as texts: a worksheet and a calculator print the same. */
export interface TraceTexts {
  readonly value: string;
  readonly origin: string;
  readonly rule: string;
  readonly formula: string;
  readonly inputs: readonly InputText[];
  readonly citation: string;
  readonly mark: string;
}

function valueText(value: number | string, unit: string): string {
  return `${typeof value === 'number' ? plainNumber(value) : value} ${unit}`.trimEnd();
}

/** An input of a formula by the name that the formula uses. */
export function inputText({ name, value, unit }: TraceInput): InputText {
  return { name, value: valueText(value, unit) };
}

/** The texts of a trace: its value in full, since it is redone by hand. */
export function traceTexts(trace: Trace): TraceTexts {
  return {
    value: valueText(trace.value, trace.unit),
    origin: trace.origin,
    rule: trace.rule,
    formula: trace.formula ?? '',
    inputs: trace.inputs.map(inputText),
    citation: trace.citation,
    mark: trace.mark === undefined ? '' : markWords[trace.mark],
  };
}
