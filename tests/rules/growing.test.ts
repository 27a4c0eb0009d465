/** What an older program makes of a newer file, and a newer one of an older. */
import { describe, expect, test } from "vitest";
import type { FormerWord } from "../../grammar/former-words.ts";
import { formerWords } from "../../grammar/former-words.ts";
import { rowOf } from "../../grammar/vocabulary.ts";
import { bindSegment } from "../../server/model/bind.ts";
import { documentOf } from "../../server/syntax/document.ts";
import { upgraded } from "../../server/workspace/upgrade.ts";
import { findingsOf } from "../helpers/sample.ts";

const language = (text: string): string[] =>
  findingsOf(text).flatMap(({ check, line, severity }) =>
    check.startsWith("language/") ? [`${severity} ${check.slice(9)} ${line}`] : [],
  );

describe("a word of a later version", () => {
  const board = 'board A {\n  thermal-image 41 °C {\n    hot-spot "Way 3"\n  }\n  way 1 spare\n}\n';

  test("is an error where it must be understood", () => {
    expect(language(`wayfile 1\n${board}`)).toEqual(["error unknown-word 3"]);
  });

  test("is passed over with its block where the file allows it, and this is said", () => {
    expect(language(`wayfile 1\nmay-ignore arc-energy thermal-image\n${board}`)).toEqual(["information passed-over 4"]);
  });

  test("and nothing else is", () => {
    expect(language(`wayfile 1\nmay-ignore arc-energy\n${board}`)).toEqual(["error unknown-word 4"]);
  });
});

describe("the version", () => {
  test.each([
    ['note "x"\nwayfile 1\n', ["warning no-version 2"]],
    ["# a comment\n\nwayfile 1\n", []],
    ["\ufeffwayfile 1\n", []],
    ["wayfile 0\n", ["error newer-version 1"]],
    ["wayfile 2\n", ["error newer-version 1"]],
  ])("%j", (text, wanted) => {
    expect(language(text)).toEqual(wanted);
  });

  test("the year 0 is in no calendar", () => {
    expect(language("wayfile 1\ninstrument M1 { due 0000-01-01 }\n")).toEqual(["error not-a-date 2"]);
  });
});

describe("a former word", () => {
  const former: readonly FormerWord[] = [
    { block: "way", former: "cable-length", word: "length", since: "2027-01-01" },
    { block: "board", former: "outlet", word: "note", since: "2027-01-01" },
  ];
  const text =
    'wayfile 1\ninstallation "S" {\n  board A {\n    outlet "Old"\n    way 1 radial {\n      cable-length  18 m\n    }\n  }\n}\n';

  test("is read as the present one, and told", () => {
    const segment = documentOf(text).segments.find(({ word }) => word === "way");
    const bound = segment && bindSegment(segment, "board", former);
    expect(bound?.facts.list[0]?.inner?.list.map(({ word }) => word)).toEqual(["length"]);
    expect(bound?.problems.map(({ check }) => check)).toEqual(["former-word"]);
  });

  test("is written anew by an upgrade, and nothing else is", () => {
    expect(upgraded(text, former)).toBe(text.replace("cable-length", "length").replace("outlet", "note"));
    expect(upgraded(text)).toBe(text);
  });

  test("is the name of no present word", () => {
    const wrong = formerWords.filter(({ block, former, word }) => rowOf(block, former) || !rowOf(block, word));
    expect(wrong).toEqual([]);
  });
});

test("an upgrade writes the present id of a check in a departure", () => {
  const departure = (id: string) =>
    `wayfile 1\ninstallation "S" {\n  departure ${id} "Agreed"\n  board A {\n    departure ${id} "x"\n    way 1 radial {\n      departure ${id} "y"\n    }\n  }\n}\n`;
  expect(upgraded(departure("live/function-wrong"))).toBe(departure("live/function-failed"));
});
