/** What is wrong with a short form, at the JSON Pointer where it is written. */
export interface FormFault {
  readonly at: string;
  /** True where the name is meant, not the value behind it. */
  readonly isKey: boolean;
  readonly message: string;
  readonly remedy?: string;
}

/** Collects what is wrong while short forms are opened out. */
export class FormFaults {
  readonly list: FormFault[] = [];

  /** A fault of the value at a pointer. */
  value(at: string, message: string, remedy?: string): void {
    this.list.push({ at, isKey: false, message, ...(remedy !== undefined && { remedy }) });
  }

  /** A fault of the name at a pointer. */
  key(at: string, message: string, remedy?: string): void {
    this.list.push({ at, isKey: true, message, ...(remedy !== undefined && { remedy }) });
  }
}
