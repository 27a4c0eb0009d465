/** A sum is worked once: what rests on it later gives its result, and the steps that are new. */

import { remark, type Step } from "../../calc/result.ts";
import type { Block, Section } from "../setting/document.ts";

const keyOf = ({ formula, numbers, result, from }: Step): string => [formula, numbers, result, from].join("|");

/** The sections of one circuit without the steps that an earlier figure has shown already. */
export function eachSumOnce(sections: readonly Section[]): Section[] {
  const shown = new Set<string>();
  return sections.map((section) => ({ ...section, blocks: section.blocks.map((block) => without(block, shown)) }));
}

function without(block: Block, shown: Set<string>): Block {
  if (block.kind !== "calculation") return block;
  const fresh = block.steps.filter((step) => !shown.has(keyOf(step)));
  for (const step of fresh) shown.add(keyOf(step));
  if (fresh.length === block.steps.length) return block;
  return { ...block, steps: fresh.length === 0 ? [remark("as worked above")] : fresh };
}
