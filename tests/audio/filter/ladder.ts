import { complex, type Spice } from '../spice.ts';

/**
 * Response of a ladder between 1 ohm and 1 ohm in ngspice, at one frequency in rad/s: shunt capacitor first,
 * then a series inductor, and so on (as a high-pass, each element of value g by the other one of value 1/g).
 * Twice the output voltage, as the terminations halve it.
 */
export async function ladderResponse(
  spice: Spice,
  pass: 'high-pass' | 'low-pass',
  elements: readonly number[],
  radPerS: number,
): Promise<{ readonly re: number; readonly im: number }> {
  const hertz = radPerS / (2 * Math.PI);
  let node = 'n0';
  const lines = ['vin in 0 dc 0 ac 1', 'rs in n0 1', 'rbig n0 0 1e15'];
  for (const [index, g] of elements.entries()) {
    const [name, value] = (pass === 'low-pass') === (index % 2 === 0) ? ['c', g] : ['l', g];
    const amount = pass === 'low-pass' ? value : 1 / value;
    if (index % 2 === 0) lines.push(`${name}${index} ${node} 0 ${amount}`);
    else {
      lines.push(`${name}${index} ${node} n${index} ${amount}`, `rbig${index} n${index} 0 1e15`);
      node = `n${index}`;
    }
  }
  lines.push(`rl ${node} 0 1`, `.ac lin 1 ${hertz} ${hertz}`);
  const [point] = complex(await spice(lines), `v(${node})`);
  if (!point) throw new Error('ngspice gave no point');
  return { re: 2 * point.real, im: 2 * point.img };
}
