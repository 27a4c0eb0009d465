/** What keeps the sum or the room of a containment from being calculated. */
import {
  bendsText,
  type Cables,
  conduitRoom,
  conduitSizes,
  conduitSum,
  isConduitSize,
  type Trunking,
  trunkingRoom,
  trunkingSum,
} from "../calc/containment.ts";
import { metres, plain } from "../calc/result.ts";
import type { Content } from "./contents.ts";
import { type ContainmentFact, runOf, type Section } from "./sections.ts";

/** A containment and what is in it, as far as its fill depends on them. */
interface Filled {
  readonly fact: ContainmentFact;
  readonly title: string;
  readonly isConduit: boolean;
  readonly size: number;
  readonly trunking: Trunking | undefined;
  readonly sections: readonly Section[];
  readonly contents: readonly Content[];
  readonly cables: readonly Cables[];
}

/** A reason for each, in words that stand after "cannot be calculated". */
export function missingIn(study: Filled): string[] {
  const { contents, isConduit, size, trunking, sections, cables } = study;
  const ofWays = contents.flatMap(({ missing, study: { way } }) => (missing ? [`way ${way.id}: ${missing}`] : []));
  const broken = study.fact.inner?.broken.includes("section") ? ["a section could not be read"] : [];
  const unknown = cables.filter((cable) =>
    isConduit
      ? sections.some((section) => conduitSum([cable], runOf(section)) === undefined)
      : trunkingSum([cable]) === undefined,
  );
  const sizes = unknown.map(
    ({ csa, wire }) => `no factor is given here for ${wire ? `${wire} ` : ""}${plain(csa)} mm² in such a run`,
  );
  const all = [...ofWays, ...broken, ...sizes];
  if (!isConduit) {
    if (!trunking) return [...all, "the depth of the trunking is not stated: write 50 mm by 50 mm"];
    return trunkingRoom(trunking) ? all : [...all, `no factor is given here for ${study.title}`];
  }
  if (!isConduitSize(size)) return [...all, `factors are given here for ${conduitSizes.join(", ")} mm conduit only`];
  const beyond = sections.filter((section) => !conduitRoom({ ...runOf(section), size }));
  return [
    ...all,
    ...beyond.map(
      ({ length, bends }) =>
        `the factors end before ${metres(length ?? 0)} with ${bendsText(bends ?? 0)}: a draw-in box would divide it`,
    ),
  ];
}
