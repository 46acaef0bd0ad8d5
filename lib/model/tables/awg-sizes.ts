/**
 * AWG sizes from 24 to 4/0, thin to thick. Areas follow ASTM B258:
 * d(inch) = 0.005 * 92^((36 - n) / 39), with n = 0, -1, -2, -3 for 1/0 to 4/0.
 */
export const awgSizes: readonly string[] = [
  '24',
  '22',
  '20',
  '18',
  '16',
  '14',
  '12',
  '10',
  '8',
  '6',
  '4',
  '3',
  '2',
  '1',
  '1/0',
  '2/0',
  '3/0',
  '4/0',
];

function gaugeNumber(awg: string): number {
  const zeros = /^([1-4])\/0$/.exec(awg)?.[1];
  return zeros ? 1 - Number(zeros) : Number(awg);
}

/** Diameter in metres of a solid conductor of the AWG number (ASTM B258). */
export function awgDiameterM(awg: string): number {
  if (!awgSizes.includes(awg)) throw new Error(`No AWG size ${awg} in the table.`);
  return 0.005 * 92 ** ((36 - gaugeNumber(awg)) / 39) * 0.0254;
}

/** Area in mm2 of the AWG number (ASTM B258). */
export function awgAreaMm2(awg: string): number {
  const diameterMm = awgDiameterM(awg) * 1000;
  return (Math.PI / 4) * diameterMm * diameterMm;
}
