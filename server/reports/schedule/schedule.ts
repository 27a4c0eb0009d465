/** The schedule of circuit details and test results: one row a circuit, to hand over or to fill in. */

import { signatoryOf } from "../../circuit/signatories.ts";
import { latestInspection } from "../../model/inspections.ts";
import type { BoardInPlace, Installation } from "../../model/installation.ts";
import { boardTestDays } from "../../readings/instruments.ts";
import type { Fill } from "../common/paper-kinds.ts";
import type { Report, Section, Signatures } from "../setting/document.ts";
import { boardTitle } from "../working/working.ts";
import { boardBlocks, sheetOf } from "./board.ts";

interface ScheduleOptions {
  /** One board; all if left out. */
  readonly place?: BoardInPlace | undefined;
  readonly fill?: Fill;
}

export function scheduleOf(installation: Installation, { place, fill = "filled" }: ScheduleOptions = {}): Report {
  const places = place ? [place] : installation.boards;
  const location = installation.head.facts.one("location")?.args.text.value;
  const { edition, head } = installation;
  return {
    title: `Schedule of circuit details and test results: ${head.title || "an installation without a name"}`,
    turned: "landscape",
    lead: [
      [
        ...(location === undefined ? [] : [location]),
        edition ? `To ${edition.id}` : "No edition is named: limits are left out",
        ...{
          filled: [],
          blank: ["To be filled in"],
          last: ["To be filled in; readings of last time in small figures"],
        }[fill],
      ].join(". "),
      legend,
      cautions,
    ],
    sections: places.map((one) => boardSection(one, installation, fill)),
    // They stand at the head, so that the last board does not push them onto a page of their own.
    cautions: "",
  };
}

export const boardSection = (place: BoardInPlace, installation: Installation, fill: Fill = "filled"): Section => ({
  level: 1,
  title: boardTitle(place),
  blocks: [...boardBlocks(sheetOf(place), installation, fill), signaturesOf(place, installation, fill)],
});

const legend =
  "Slanted figures are calculated; those in brackets are of an RCD that other ways share; – is not stated; > is beyond the instrument's range; N/A does not apply; LIM was not tested, for the reason in the note. Of several pairs of conductors the lowest is shown.";

const cautions =
  "Part of a certificate or report, and not one by itself. It shows what the schedule records; that the tests were made, and made well, is for those who sign. Max Zs is the limit for conductors at their working temperature: a reading on cold conductors is compared with 80 % of it.";

function signaturesOf(place: BoardInPlace, { head }: Installation, fill: Fill): Signatures {
  const signed =
    fill === "filled" ? (signatoryOf("tested", undefined, place.context) ?? inspectedBy(place, head)) : undefined;
  return {
    kind: "signatures",
    rows: [{ role: "Tested by", name: signed?.args.by.value ?? "", on: signed?.args.on?.value ?? "" }],
  };
}

/** Who signed the latest inspection, where this board was tested in it. */
function inspectedBy({ board }: BoardInPlace, head: Installation["head"]) {
  const inspection = latestInspection(head);
  const within =
    inspection && boardTestDays(board).some(({ on }) => on.value >= inspection.from && on.value <= inspection.to);
  return within ? inspection.facts.one("tested") : undefined;
}
