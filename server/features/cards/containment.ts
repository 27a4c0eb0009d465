/** What runs in a conduit or trunking, how full it is, and what would still go in. */

import { metres, percent, plain, squareMillimetres } from "../../calc/result.ts";
import { type ContainmentStudy, containmentsOf, containmentsOn } from "../../conduits/containment.ts";
import { circuitsWords, roomWords, sectionsWords, sharedWords, takenWords, wantedWords } from "../../conduits/words.ts";
import { crossSection } from "../../drawings/cross-section.ts";
import type { Fact } from "../../model/values.ts";
import { imageOf, pictureOf } from "../../reports/setting/picture.ts";
import { type Markdown, md, picture } from "../../text/markdown.ts";
import type { Snapshot } from "../../workspace/workspace.ts";
import { definitions, type Named } from "../names.ts";
import { type Card, card, type Row, row } from "./card.ts";

type Place = Pick<Fact, "segment" | "start">;

function studyOf({ installations }: Snapshot, fact: Place): ContainmentStudy | undefined {
  for (const installation of installations) {
    const all = [...containmentsOf(installation), ...installation.boards.flatMap(containmentsOn)];
    const study = all.find((one) => one.fact.segment === fact.segment && one.fact.start === fact.start);
    if (study) return study;
  }
  return undefined;
}

/** Of the containment a line describes. */
export function containmentCard(snapshot: Snapshot, fact: Place): Card | undefined {
  const study = studyOf(snapshot, fact);
  return study && cardOf(study);
}

/** Beyond this many characters an editor cuts a card off, and half a picture is none. */
const longestPicture = 80_000;

/** The containment cut across, as a Markdown image. */
export function containmentPicture(snapshot: Snapshot, fact: Place): Markdown[] {
  const study = studyOf(snapshot, fact);
  const drawn = study && crossSection(study);
  const drawing = drawn && pictureOf(drawn);
  const image = drawing ? imageOf(drawing) : "";
  return drawing && image.length <= longestPicture ? [picture(drawing.title, image)] : [];
}

/** Of the containment a name stands for. */
export function namedContainmentCard(snapshot: Snapshot, named: Named): Card | undefined {
  const [definition] = named.names === "containment" ? definitions(snapshot, named) : [];
  return definition && containmentCard(snapshot, definition.fact);
}

function cardOf(study: ContainmentStudy): Card {
  const { fullest } = study;
  return card(
    [
      ...study.contents.map(
        ({ study: { way }, cables, missing }): Row => ({
          name: `way ${way.id}${way.title ? ` ${way.title}` : ""}`,
          text: missing ?? cables.map(({ count, csa, wire }) => cableText(count, csa, wire)).join(", "),
        }),
      ),
      row("in it", study.contents.length === 0 ? "nothing yet: no route of a way names it" : undefined),
      fullRow(study),
      ...sectionsWords(study).map(([run, sum, full]): Row => ({ name: `section of ${run}`, text: `${full}, ${sum}` })),
      row("still goes in", roomWords(study)),
      row("least size that holds them", wantedWords(study)),
      row("grouped", circuitsWords(study)),
      row("share a protective conductor", sharedWords(study)),
      row("not calculated", study.missing.length > 0 ? [...new Set(study.missing)].join("; ") : undefined),
      row("taken as", takenWords(study).join("; ") || undefined),
    ],
    fullest?.fill.total,
    fullest?.fill.room,
  );
}

const cableText = (count: number, csa: number, wire: string | undefined): string =>
  `${count} × ${squareMillimetres(csa)}${wire ? ` ${wire}` : ""}`;

function fullRow({ fullest, percent: full, sections, isWhole }: ContainmentStudy): Row | undefined {
  if (!fullest || full === undefined) return undefined;
  const { total, room, fits } = fullest.fill;
  const length = fullest.section?.length;
  const which = sections.length > 1 && length !== undefined ? ` in the section of ${metres(length)}` : "";
  const least = !isWhole ? "at least " : "";
  const sign = fits ? "≤" : md`**>**`;
  return {
    name: "full",
    text: md`${least}${percent(Math.round(full))}${which}, ${plain(total.value, 1)} ${sign} ${plain(room.value)}`,
  };
}
