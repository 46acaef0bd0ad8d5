/** Hole of a lug by stud (m): the fine series of clearance holes, ISO 273, from memory. */
export const lugHoles: readonly { readonly stud: string; readonly studM: number; readonly holeM: number }[] =
  [
    { stud: 'M4', studM: 0.004, holeM: 0.0043 },
    { stud: 'M5', studM: 0.005, holeM: 0.0053 },
    { stud: 'M6', studM: 0.006, holeM: 0.0064 },
    { stud: 'M8', studM: 0.008, holeM: 0.0084 },
    { stud: 'M10', studM: 0.01, holeM: 0.0105 },
    { stud: 'M12', studM: 0.012, holeM: 0.013 },
  ];

/** The lug hole for a stud of this diameter (m); null where the table has none. */
export function lugHoleM(studM: number): number | null {
  return lugHoles.find((row) => Math.abs(row.studM - studM) < 1e-5)?.holeM ?? null;
}
