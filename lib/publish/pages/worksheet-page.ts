import { placeText } from '../../model/place.ts';
import type { BuildPlan } from '../../model/plan/index.ts';
import type { Trace, TraceInput } from '../../model/trace.ts';
import { addresses, linkTo } from '../addresses.ts';
import { chromeOf } from '../chrome.ts';
import { frozen } from '../frozen.ts';
import { isDraft } from '../job-standing.ts';
import type { Link, Page, SiteContext } from '../page.ts';
import { markWords, spelled } from '../words.ts';
import { plainNumber } from '../written.ts';

/** The worksheet: how every number of the job came about. */
export interface WorksheetBody {
  readonly job: Link;
  readonly groups: readonly WorkingGroup[];
}

interface WorkingGroup {
  readonly id: string;
  readonly title: string;
  readonly workings: readonly Working[];
}

interface Working {
  readonly id: string;
  readonly anchor: string;
  readonly value: string;
  readonly origin: string;
  readonly rule: string;
  readonly formula: string;
  readonly inputs: readonly WorkingInput[];
  readonly citation: string;
  readonly mark: string;
  readonly place: string;
}

interface WorkingInput {
  readonly name: string;
  readonly value: string;
  /** The anchor of its own working; empty where it has none. */
  readonly anchor: string;
}

function valueText(value: number | string, unit: string): string {
  return `${typeof value === 'number' ? plainNumber(value) : value} ${unit}`.trimEnd();
}

/** An anchor that no two ids share: what is not a letter, digit, dot or hyphen is written as its code point. */
function anchorOf(id: string): string {
  const written = id.replace(
    /[^A-Za-z0-9.-]/gu,
    (character) => `_${(character.codePointAt(0) ?? 0).toString(16)}_`,
  );
  return `w-${written}`;
}

function inputOf(input: TraceInput, traces: BuildPlan['traces']): WorkingInput {
  const known = input.trace !== undefined && Object.hasOwn(traces, input.trace);
  return {
    name: input.name,
    value: valueText(input.value, input.unit),
    anchor: known && input.trace !== undefined ? anchorOf(input.trace) : '',
  };
}

function workingOf(id: string, trace: Trace, traces: BuildPlan['traces']): Working {
  return {
    id,
    anchor: anchorOf(id),
    value: valueText(trace.value, trace.unit),
    origin: trace.origin,
    rule: trace.rule,
    formula: trace.formula ?? '',
    inputs: trace.inputs.map((input) => inputOf(input, traces)),
    citation: trace.citation,
    mark: trace.mark === undefined ? '' : markWords[trace.mark],
    place: trace.where === undefined ? '' : placeText(trace.where),
  };
}

/** Groups of traces by the first word of their path. */
function groupsOf(traces: BuildPlan['traces']): WorkingGroup[] {
  const groups = new Map<string, Working[]>();
  for (const [id, trace] of Object.entries(traces)) {
    const [group = ''] = id.split(/[./]/);
    groups.set(group, [...(groups.get(group) ?? []), workingOf(id, trace, traces)]);
  }
  return [...groups].map(([group, workings]) => ({
    id: anchorOf(`group-${group}`),
    title: spelled(group),
    workings,
  }));
}

/** The worksheet page of a job. */
export function worksheetPage(context: SiteContext, plan: BuildPlan): Page {
  const { id, title, revision } = plan.job;
  const address = addresses.worksheet(id);
  return {
    address,
    template: 'worksheet.njk',
    model: () => {
      const chrome = chromeOf(context, {
        address,
        title: `Worksheet: ${title}`,
        above: [
          ['Jobs', addresses.jobs],
          [title, addresses.job(id)],
        ],
        draft: isDraft(plan),
        foot: `${id}, revision ${revision}, worksheet`,
      });
      const body: WorksheetBody = {
        job: { title, href: linkTo(address, addresses.job(id)) },
        groups: groupsOf(plan.traces),
      };
      return { ...chrome, body: frozen(body) };
    },
  };
}
