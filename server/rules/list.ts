// Written by `npm run generate` from the folders here. Do not edit.
import loopZsOverLimit from "./loop/zs-over-limit.ts";
import type { Rule } from "./rule.ts";

export const rules: readonly Rule[] = [loopZsOverLimit];
