import {
  type Answer,
  type Answered,
  type AnswerTable,
  type Figure,
  isAnswer,
  type UnreadEntry,
} from '../../lib/calculators/calculator.ts';
import { isFault } from '../../lib/model/fault.ts';
import type { Trace } from '../../lib/model/trace.ts';
import { cardProperties } from '../../lib/publish/page/card-labels.ts';
import { traceTexts } from '../../lib/publish/words/trace-texts.ts';
import { counted, sourceText } from '../../lib/publish/words/words.ts';

/** A text this short is never broken: half a number would read as a whole one. */
const shortest = 20;

/** An element with classes and content; a text is never read as markup. */
function make(name: string, className: string, ...content: readonly (Node | string)[]): HTMLElement {
  const element = document.createElement(name);
  if (className !== '') element.className = className;
  element.append(...content);
  return element;
}

/** Shows what a calculator answers in its place on the page. */
export function showAnswered(section: Element, answered: Answered): void {
  const unread = !isFault(answered) && 'unread' in answered ? answered.unread : [];
  markEntries(section, unread);
  const answer = isAnswer(answered) ? answered : null;
  const says = section.querySelector('.says');
  const text = answer ? answer.says : isFault(answered) ? faultText(answered) : unreadText(unread);
  // What is said aloud is said once.
  if (says && says.textContent !== text) says.textContent = text;
  says?.classList.toggle('is-fault', answer === null);
  const place = section.querySelector('.answer');
  place?.toggleAttribute('hidden', answer === null);
  if (place && answer) fill(place, answer);
}

function faultText({ message, remedy }: { readonly message: string; readonly remedy: string }): string {
  return `${message}. To do: ${remedy}.`;
}

function unreadText(unread: readonly UnreadEntry[]): string {
  return `${counted(unread.length, 'entry', 'entries')} can’t be read: see below ${unread.length === 1 ? 'it' : 'them'} what to write.`;
}

/** Tells below each entry what can't be read of it. */
function markEntries(section: Element, unread: readonly UnreadEntry[]): void {
  for (const input of section.querySelectorAll('input')) {
    const fault = unread.find(({ field }) => field === input.name);
    const place = document.getElementById(`${input.id}-fault`);
    if (fault) input.setAttribute('aria-invalid', 'true');
    else input.removeAttribute('aria-invalid');
    if (!place) continue;
    place.textContent = fault?.message ?? '';
    place.hidden = fault === undefined;
  }
}

function fill(place: Element, answer: Answer): void {
  const put = (selector: string, content: readonly Node[]): void => {
    const found = place.querySelector(selector);
    found?.replaceChildren(...content);
    found?.toggleAttribute('hidden', content.length === 0);
  };
  put(
    '.minds',
    answer.minds.map((text) => make('li', '', text)),
  );
  put('.facts', answer.figures.map(factOf));
  put('.table-wrap', answer.table ? [tableOf(answer.table)] : []);
  const workings = [
    ...answer.figures.flatMap(({ label, trace }) => (trace ? [{ label, trace }] : [])),
    ...answer.steps,
  ];
  put(
    '.worked-list',
    workings.map(({ label, trace }) => workingOf(label, trace)),
  );
}

function factOf({ label, text, beside }: Figure): HTMLElement {
  const value = make('dd', '', make('strong', '', text));
  if (beside !== undefined)
    value.append(' ', make('small', beside.length <= shortest ? 'short' : '', beside));
  return make('div', '', make('dt', '', label), value);
}

/** The working of a number as the worksheet of a job prints it. */
function workingOf(label: string, trace: Trace): HTMLElement {
  const { value, origin, rule, formula, inputs } = traceTexts(trace);
  const list = make(
    'ul',
    'inputs',
    ...inputs.map((input) => make('li', '', `${input.name} = ${input.value}`)),
  );
  const { citation, mark } = trace;
  const source = sourceText({ source: citation, ...(mark && { mark }) });
  return make(
    'div',
    'working',
    make('p', 'value', make('strong', '', `${label}: ${value}`), ' ', make('small', '', origin)),
    ...(formula === '' ? [] : [make('p', 'formula', formula)]),
    ...(inputs.length === 0 ? [] : [list]),
    make('p', 'small', `Rule ${rule}. Source: ${source}.`),
  );
}

/** A table whose rows are cards on a phone, as those of the sheets; its roles are said outright for that. */
function tableOf({ caption, columns, rows }: AnswerTable): HTMLElement {
  const as = (element: HTMLElement, role: string): HTMLElement => {
    element.setAttribute('role', role);
    return element;
  };
  const head = columns.map(({ title, isFigure }) => {
    const cell = as(make('th', isFigure ? 'figure' : '', title), 'columnheader');
    cell.setAttribute('scope', 'col');
    return cell;
  });
  const body = rows.map((texts) => as(make('tr', '', ...texts.map(cellOf(columns))), 'row'));
  const table = as(
    make(
      'table',
      '',
      make('caption', '', caption),
      as(make('thead', '', as(make('tr', '', ...head), 'row')), 'rowgroup'),
      as(make('tbody', '', ...body), 'rowgroup'),
    ),
    'table',
  );
  for (const [name, value] of cardProperties(columns)) table.style.setProperty(name, value);
  return table;
}

function cellOf(columns: AnswerTable['columns']) {
  return (text: string, at: number): HTMLElement => {
    const classes = [columns[at]?.isFigure ? 'figure' : '', text.length <= shortest ? 'short' : ''];
    const className = classes.filter((one) => one !== '').join(' ');
    const cell = make(at === 0 ? 'th' : 'td', className, text);
    cell.setAttribute('role', at === 0 ? 'rowheader' : 'cell');
    if (at === 0) cell.setAttribute('scope', 'row');
    return cell;
  };
}
