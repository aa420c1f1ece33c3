/** The part of fontkit 2.0.4 that is used here. */
declare module 'fontkit' {
  export interface FontBox {
    readonly minX: number;
    readonly minY: number;
    readonly maxX: number;
    readonly maxY: number;
  }

  /** A step of an outline in font units, y up; pairs of coordinates. */
  export interface PathCommand {
    readonly command: 'moveTo' | 'lineTo' | 'quadraticCurveTo' | 'bezierCurveTo' | 'closePath';
    readonly args: readonly number[];
  }

  export interface Glyph {
    readonly id: number;
    readonly advanceWidth: number;
    readonly codePoints: readonly number[];
    /** The box that the font file gives for the glyph; of a blank, nonsense. */
    readonly cbox: FontBox;
    readonly path: { readonly commands: readonly PathCommand[] };
  }

  export interface GlyphPosition {
    readonly xAdvance: number;
    readonly xOffset: number;
    readonly yOffset: number;
  }

  export interface GlyphRun {
    readonly glyphs: readonly Glyph[];
    readonly positions: readonly GlyphPosition[];
    readonly advanceWidth: number;
  }

  export interface Font {
    readonly postscriptName: string;
    readonly unitsPerEm: number;
    layout(text: string): GlyphRun;
    hasGlyphForCodePoint(codePoint: number): boolean;
  }

  export function create(bytes: Uint8Array): Font;
}
