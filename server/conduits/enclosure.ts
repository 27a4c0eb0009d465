/** What a stretch of a route is enclosed in, as far as a protective conductor is concerned. */

import type { WayStudy } from "../circuit/way.ts";
import type { FactOf } from "../model/values.ts";
import { containmentOf } from "./containment.ts";

/** "open" where the route says that nothing encloses the cable; "unknown" where it may be in steel or not. */
type Enclosure = "steel" | "plastic" | "flexible" | "open" | "unknown";

const enclosing: readonly string[] = ["conduit", "trunking"];
const bare: readonly string[] = ["clipped", "tray", "ladder", "free-air", "overhead", "buried", "duct"];

/** Conduit and trunking are taken as steel by those who name them as protective conductor, unless they say otherwise. */
export function stretchEnclosure({ context }: WayStudy, { args }: FactOf<"way", "route">): Enclosure {
  const shared = args.in && containmentOf(context, args.in.value);
  const made = args.made?.value ?? shared?.args.made?.value;
  if (made === "plastic" || made === "flexible") return made;
  const kind = args.kind?.value;
  if (made === "steel" || args.in || (kind !== undefined && enclosing.includes(kind))) return "steel";
  return kind !== undefined && bare.includes(kind) ? "open" : "unknown";
}
