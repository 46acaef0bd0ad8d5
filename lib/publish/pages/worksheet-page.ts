import { placeText } from '../../model/place.ts';
import type { BuildPlan } from '../../model/plan/index.ts';
import { sheetMark } from '../../model/plan/sheet-mark.ts';
import type { Trace, TraceInput } from '../../model/trace.ts';
import { frozen } from '../frozen.ts';
import { chromeOf } from '../page/chrome.ts';
import type { Link, Page, SiteContext } from '../page/page.ts';
import type { Table } from '../sheets/table.ts';
import { addresses, linkTo, worksheetAddress } from '../site/addresses.ts';
import type { PublishedJob } from '../site/shop-site.ts';
import { type InputText, inputText, type TraceTexts, traceTexts } from '../words/trace-texts.ts';
import { spelled } from '../words/words.ts';
import { workingTables } from '../workings/index.ts';

/** The worksheet: how every number of the job came about. */
export interface WorksheetBody {
  readonly job: Link;
  /** What stands behind the sheets: reasons, limits, alternatives, the network element by element. */
  readonly tables: readonly WorkingTable[];
  readonly groups: readonly WorkingGroup[];
}

interface WorkingTable {
  readonly id: string;
  readonly table: Table;
}

interface WorkingGroup {
  readonly id: string;
  readonly title: string;
  readonly workings: readonly Working[];
}

interface Working extends Omit<TraceTexts, 'inputs'> {
  readonly id: string;
  readonly anchor: string;
  readonly inputs: readonly WorkingInput[];
  readonly place: string;
}

interface WorkingInput extends InputText {
  /** The anchor of its own working; empty where it has none. */
  readonly anchor: string;
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
    ...inputText(input),
    anchor: known && input.trace !== undefined ? anchorOf(input.trace) : '',
  };
}

function workingOf(id: string, trace: Trace, traces: BuildPlan['traces']): Working {
  return {
    id,
    anchor: anchorOf(id),
    ...traceTexts(trace),
    inputs: trace.inputs.map((input) => inputOf(input, traces)),
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

/** The worksheets of a job: of the current plan, and of each frozen one. */
export function worksheetPages(context: SiteContext, { plan, revisions }: PublishedJob): Page[] {
  return [
    worksheetPage(context, plan, null),
    ...revisions.map((one) => worksheetPage(context, one.plan, one.revision)),
  ];
}

function worksheetPage(context: SiteContext, plan: BuildPlan, frozenAs: string | null): Page {
  const { id, title, revision } = plan.job;
  const address = worksheetAddress(id, frozenAs);
  const jobAddress = frozenAs === null ? addresses.job(id) : addresses.revision(id, frozenAs);
  return {
    address,
    template: 'worksheet.njk',
    model: () => {
      const chrome = chromeOf(context, {
        address,
        title: frozenAs === null ? `Worksheet: ${title}` : `Worksheet: ${title}, revision ${revision}`,
        above: [
          ['Jobs', addresses.jobs],
          [title, jobAddress],
        ],
        mark: sheetMark(plan)?.word ?? null,
        foot: `${id}, revision ${revision}, worksheet`,
      });
      const body: WorksheetBody = {
        job: { title, href: linkTo(address, jobAddress) },
        tables: workingTables(plan).map((table, index) => ({ id: `table-${index + 1}`, table })),
        groups: groupsOf(plan.traces),
      };
      return { ...chrome, body: frozen(body) };
    },
  };
}
