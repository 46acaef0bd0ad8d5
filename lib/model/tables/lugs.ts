/** Hole of a lug by stud (m): M6 6.4 mm, M8 8.4 mm, M10 10.5 mm. */
export const lugHoles: readonly { readonly stud: string; readonly studM: number; readonly holeM: number }[] =
  [
    { stud: 'M6', studM: 0.006, holeM: 0.0064 },
    { stud: 'M8', studM: 0.008, holeM: 0.0084 },
    { stud: 'M10', studM: 0.01, holeM: 0.0105 },
  ];

/** The lug hole for a stud of this diameter (m); null where the table has none. */
export function lugHoleM(studM: number): number | null {
  return lugHoles.find((row) => Math.abs(row.studM - studM) < 1e-5)?.holeM ?? null;
}
