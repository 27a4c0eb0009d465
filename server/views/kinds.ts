/** The views there are. Light: whoever only asks for one needs none of what draws them. */
export const viewKinds = [
  "board",
  "tests",
  "single-line",
  "rings",
  "limits",
  "conduits",
  "years",
  "working",
  "worksheet",
  "schedule",
  "inspection",
] as const;
export type ViewKind = (typeof viewKinds)[number];
export const isViewKind = (value: unknown): value is ViewKind => isOneOf(viewKinds, value);

import { isOneOf } from "../text/words.ts";
