/** The parts of layout and hide files that judges read by themselves, without the project's readers (docs/files.md). */
export type Pair = readonly [number, number];
export interface CurveText {
  readonly start: Pair;
  readonly segments: readonly {
    readonly to: Pair;
    readonly via?: Pair;
    readonly handles?: readonly [Pair, Pair];
  }[];
}
export interface LayoutText {
  readonly hides: readonly { readonly id: string; readonly file: string }[];
  readonly pieces: readonly {
    readonly article: string;
    readonly piece: string;
    readonly shape: { readonly cut: CurveText; readonly cutOuts: readonly CurveText[] };
  }[];
  readonly placements: readonly {
    readonly article: string;
    readonly piece: string;
    readonly hide: string;
    readonly mirrored: boolean;
    readonly x: number;
    readonly y: number;
    readonly rotationDeg: number;
  }[];
}
export interface HideText {
  readonly outline: CurveText;
  readonly openings?: readonly CurveText[];
}
