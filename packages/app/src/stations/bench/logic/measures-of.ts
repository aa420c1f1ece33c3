import { pieceCopyKey } from '@hidebound/leather';
import type {
  LaneRowSetting,
  LaneSetting,
  LaneStrapSetting,
  PieceSetting,
  RoughCutSetting,
  SettingOut,
} from '@hidebound/leather';
import type { WorkItem } from './order-of-work.js';

/** What a rule and a square need for one item. */
export type ItemSetting =
  | { readonly kind: 'piece'; readonly piece: PieceSetting; readonly inBlock: RoughCutSetting | undefined }
  | {
      readonly kind: 'strap';
      readonly lane: LaneSetting;
      readonly row: LaneRowSetting;
      readonly strap: LaneStrapSetting;
    }
  | { readonly kind: 'lane'; readonly lane: LaneSetting }
  | { readonly kind: 'rough cut'; readonly roughCut: RoughCutSetting };

/** Undefined where the sheet for setting out tells nothing of it: a block's pieces are told one by one. */
export function settingOf(out: SettingOut, item: WorkItem): ItemSetting | undefined {
  return item.kind === 'piece' ? pieceSettingOf(out, item.key) : stepSettingOf(out, item);
}

function pieceSettingOf({ steps }: SettingOut, key: string): ItemSetting | undefined {
  for (const step of steps) {
    if (step.kind === 'piece' && pieceCopyKey(step.piece.copy) === key)
      return { kind: 'piece', piece: step.piece, inBlock: undefined };
    if (step.kind === 'rough cut') {
      const piece = step.roughCut.pieces.find(({ copy }) => pieceCopyKey(copy) === key);
      if (piece !== undefined) return { kind: 'piece', piece, inBlock: step.roughCut };
    }
    if (step.kind !== 'lane') continue;
    for (const row of step.lane.rows) {
      const strap = row.straps.find(({ copy }) => pieceCopyKey(copy) === key);
      if (strap !== undefined) return { kind: 'strap', lane: step.lane, row, strap };
    }
  }
  return undefined;
}

function stepSettingOf(
  { steps }: SettingOut,
  { step }: WorkItem & { kind: 'step' },
): ItemSetting | undefined {
  for (const each of steps) {
    if (step.kind === 'rough cut' && each.kind === 'rough cut' && each.roughCut.id === step.of)
      return { kind: 'rough cut', roughCut: each.roughCut };
    if (step.kind === 'straight edge' && each.kind === 'lane' && each.lane.id === step.of)
      return { kind: 'lane', lane: each.lane };
  }
  return undefined;
}
