/** What of libavoid-js is used here, by its own names. */
declare module 'libavoid-js' {
  interface AvoidPoint {
    readonly x: number;
    readonly y: number;
  }
  /** Things of the library that are only handed on. */
  interface Handed {
    readonly ptr?: number;
  }
  interface AvoidRouterRef {
    setRoutingParameter(parameter: number, value: number): void;
    setRoutingOption(option: number, value: boolean): void;
    processTransaction(): void;
  }
  interface AvoidLine {
    displayRoute(): { size(): number; get_ps(at: number): AvoidPoint };
  }
  interface AvoidKit {
    readonly OrthogonalRouting: number;
    readonly segmentPenalty: number;
    readonly crossingPenalty: number;
    readonly shapeBufferDistance: number;
    readonly idealNudgingDistance: number;
    readonly nudgeOrthogonalTouchingColinearSegments: number;
    readonly ConnDirUp: number;
    readonly ConnDirDown: number;
    readonly ConnDirLeft: number;
    readonly ConnDirRight: number;
    readonly Router: new (flags: number) => AvoidRouterRef;
    readonly Point: new (x: number, y: number) => AvoidPoint;
    readonly Rectangle: new (low: AvoidPoint, high: AvoidPoint) => Handed;
    readonly ShapeRef: new (router: AvoidRouterRef, outline: Handed) => Handed;
    readonly ShapeConnectionPin: new (
      shape: Handed,
      pin: number,
      x: number,
      y: number,
      isShare: boolean,
      insideBy: number,
      ways: number,
    ) => Handed;
    readonly ConnEnd: new (at: AvoidPoint | Handed, pin?: number) => Handed;
    readonly ConnRef: new (router: AvoidRouterRef, from: Handed, to: Handed) => AvoidLine;
  }
  export const AvoidLib: { load(): Promise<void>; getInstance(): AvoidKit };
}
