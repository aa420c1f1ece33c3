import type { CutKind } from '@hidebound/leather';

/** What a cut file keeps apart: by name, and by a colour that is one of the DXF table's, so that both files agree. */
export interface CutLayer {
  /** In SVG: the group's id and name. In DXF: the same in capitals, since R12 knows no others. */
  readonly name: string;
  readonly colour: string;
  /** The same colour by its number in the DXF colour table. */
  readonly dxfColour: number;
}

/** One colour per kind, dark enough for white paper. */
export const CUT_LAYERS: Readonly<Record<CutKind | 'text', CutLayer>> = {
  frame: { name: 'frame', colour: '#808080', dxfColour: 8 },
  text: { name: 'text', colour: '#007fff', dxfColour: 150 },
  stitch: { name: 'stitch', colour: '#007f00', dxfColour: 94 },
  fold: { name: 'fold', colour: '#ff7f00', dxfColour: 30 },
  skive: { name: 'skive', colour: '#7f3f00', dxfColour: 34 },
  cement: { name: 'cement', colour: '#007f7f', dxfColour: 134 },
  notch: { name: 'notch', colour: '#7f7f00', dxfColour: 54 },
  punch: { name: 'punch', colour: '#7f0000', dxfColour: 14 },
  opening: { name: 'opening', colour: '#00007f', dxfColour: 174 },
  cut: { name: 'cut', colour: '#000000', dxfColour: 7 },
  'rough cut': { name: 'rough-cut', colour: '#7f007f', dxfColour: 214 },
};
