import './no-eval.ts';
import { type Bench, type BenchShop, openBench } from '../../lib/calculators/bench.ts';
import type { Calculator } from '../../lib/calculators/calculator.ts';
import { calculators } from '../../lib/calculators/index.ts';
import { showAnswered } from './shown.ts';

/*
 * The calculators of a page: each form is answered as it is written in, by the very modules that the sheets are computed
 * with. What the shop has set lies in the page.
 */

/** Reads the entries of a form by their names. */
function entriesOf(form: HTMLFormElement): Record<string, string> {
  return Object.fromEntries(
    [...new FormData(form)].map(([name, value]) => [name, typeof value === 'string' ? value : '']),
  );
}

/** Has a form answered at once, and whenever an entry changes. */
function attach(section: Element, calculator: Calculator, bench: Bench): void {
  const form = section.querySelector('form');
  if (!form) return;
  const answer = () => showAnswered(section, calculator.answer(entriesOf(form), bench));
  form.addEventListener('input', answer);
  form.addEventListener('submit', (event) => event.preventDefault());
  // The entries have their first values once the event is over.
  form.addEventListener('reset', () => setTimeout(answer));
  answer();
}

const data = document.getElementById('bench-shop')?.textContent;
if (data) {
  const shop: BenchShop = JSON.parse(data);
  const bench = openBench(shop);
  for (const section of document.querySelectorAll('[data-calculator]')) {
    const calculator = calculators.find(({ id }) => id === section.getAttribute('data-calculator'));
    if (calculator) attach(section, calculator, bench);
  }
}
