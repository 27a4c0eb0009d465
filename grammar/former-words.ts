/**
 * Words that were called something else in an earlier release. A file that still has the former word is read as if it had
 * the present one, and is reported; `wayfile fmt --upgrade` writes the present one. No former word is ever given another
 * meaning. Nothing has been released yet, so there is none.
 */
import type { BlockKind } from "./vocabulary.ts";

export interface FormerWord {
  readonly block: BlockKind;
  readonly former: string;
  readonly word: string;
  /** The day of the release that renamed it. */
  readonly since: string;
}

export const formerWords: readonly FormerWord[] = [];
