/** The part of clipper-lib 6.4.2 that is used here. Coordinates are whole numbers. */
declare module 'clipper-lib' {
  namespace clipper {
    interface IntPoint {
      X: number;
      Y: number;
    }
    type Path = IntPoint[];
    type Paths = Path[];

    interface Clipper {
      StrictlySimple: boolean;
      PreserveCollinear: boolean;
      /** The last step of a run with `StrictlySimple`. */
      DoSimplePolygons(): void;
      AddPath(path: Path, type: number, closed: boolean): boolean;
      AddPaths(paths: Paths, type: number, closed: boolean): boolean;
      Execute(clipType: number, solution: Paths, subjectFill: number, clipFill: number): boolean;
    }

    interface ClipperOffset {
      AddPaths(paths: Paths, join: number, end: number): void;
      Execute(solution: Paths, delta: number): void;
    }

    interface ClipperLib {
      readonly Clipper: {
        new (): Clipper;
        MinkowskiSum(pattern: Path, path: Path, pathIsClosed: boolean): Paths;
      };
      readonly ClipperOffset: new (miterLimit?: number, arcTolerance?: number) => ClipperOffset;
      readonly ClipType: {
        readonly ctIntersection: number;
        readonly ctUnion: number;
        readonly ctDifference: number;
        readonly ctXor: number;
      };
      readonly PolyType: { readonly ptSubject: number; readonly ptClip: number };
      readonly PolyFillType: {
        readonly pftEvenOdd: number;
        readonly pftNonZero: number;
        readonly pftPositive: number;
        readonly pftNegative: number;
      };
      readonly JoinType: { readonly jtSquare: number; readonly jtRound: number; readonly jtMiter: number };
      readonly EndType: { readonly etClosedPolygon: number; readonly etClosedLine: number };
    }
  }
  const clipper: clipper.ClipperLib;
  export = clipper;
}
