/** An RCD that an inverter may blind: it can feed smooth direct current into a fault. */
import { rcdCovers } from "../../calc/rcd-time.ts";
import { feedsBack } from "../../circuit/circuit-kind.ts";
import type { Rcd, WayStudy } from "../../circuit/way.ts";
import type { FactOf } from "../../model/values.ts";

interface Blinded {
  readonly rcd: Rcd;
  readonly type: NonNullable<Rcd["type"]>;
  readonly serves: FactOf<"way", "serves">;
  readonly inverter: FactOf<"way", "inverter"> | undefined;
}

/** The RCD of an inverter that is not type B, where neither separation nor its maker makes another type do. */
export function blindedByInverter(study: WayStudy): Blinded | undefined {
  const serves = study.facts.one("serves");
  const inverter = study.facts.one("inverter");
  const [rcd] = study.rcds;
  if (!serves || !rcd?.type || !feedsBack(study) || study.facts.isUnread("inverter")) return undefined;
  if (study.context.edition === undefined || study.context.edition.id.startsWith("BS 7671:200")) return undefined;
  const allowed = inverter?.args.allows?.value;
  const held = inverter?.args.separation.value === "separated" || (allowed && rcdCovers(rcd.type, allowed));
  return held || rcd.type === "B" ? undefined : { rcd, type: rcd.type, serves, inverter };
}
