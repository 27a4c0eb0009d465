/** What stands in a file outside any installation, and what several installations share. */
import { describe, expect, it } from "vitest";
import type { Sources } from "../../server/workspace/gather.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";
import { checkProject, type ProjectResult } from "../../server/workspace/project.ts";

const sources = (files: Readonly<Record<string, string>>): Sources => ({
  file: (path) => {
    const text = files[path];
    return text === undefined ? { failure: "there is no such file." } : fileOfText(path, text);
  },
  resolve: (_, use) => use,
});

function check(text: string, files: Readonly<Record<string, string>> = {}): ProjectResult {
  return checkProject(fileOfText("root.ways", text), sources(files));
}

const found = ({ files }: ProjectResult, ...ids: string[]) =>
  files.flatMap(({ file, findings }) =>
    findings
      .filter(({ check }) => ids.some((id) => check.startsWith(id)))
      .map(({ check, spot, message }) => ({
        check,
        message,
        at: `${file.path}: ${spot.segment.text.slice(spot.start, spot.end)}`,
      })),
  );

const installation = (name: string, more = "") => `installation "${name}" {
  standard BS 7671:2018+A2:2022
  stage tested
  work existing
  supply {
    earthing TN-S
    Ze 0.30 Ω
    Ipf 1.2 kA
  }
  board A "Front" {
    fed-from supply
    way 1 radial "Oven" {
      device BS EN 60898 B32 6 kA
      dead 2026-03-04 with M1 {
        R1+R2 0.4 Ω
      }
      live 2026-03-05 with M1 {
        Zs 1.52 Ω
      }
    }
    ${more}
  }
}
`;
const over = "loop/zs-over-limit";

describe("a departure of a file", () => {
  const departure = `departure ${over} "Old feeder, to be replaced in May"\n`;

  it("covers every installation below it", () => {
    const result = check(`wayfile 1\n${departure}${installation("One")}${installation("Two")}`);
    expect(found(result, over, "record/departure")).toEqual([]);
    expect(result.suppressed.map(({ finding }) => finding.check)).toEqual([over, over]);
  });

  it("covers the boards of a file that is used, and nothing above it", () => {
    const annexe = `wayfile 1\n${departure}board B "Annexe" {\n  fed-from A\n  Zdb 0.40 Ω\n  way 1 radial "Kiln" {\n    device BS EN 60898 B32 6 kA\n    live 2026-03-05 {\n      Zs 1.61 Ω\n    }\n  }\n}\n`;
    const result = check(`wayfile 1\nuse "b.ways"\n${installation("One")}`, { "b.ways": annexe });
    expect(found(result, over, "record/departure").map(({ at }) => at)).toEqual(["root.ways: 1.52 Ω"]);
  });

  it("is reported where it suppresses nothing, once", () => {
    const idle = 'departure loop/ze-too-low "Substation in the basement"\n';
    const result = check(`wayfile 1\n${idle}${installation("One")}${installation("Two")}`);
    expect(found(result, "record/departure").map(({ at }) => at)).toEqual(["root.ways: loop/ze-too-low"]);
  });
});

it("a question at the head of a file is open until it is answered", () => {
  const asked = 'query "Which of the two is let?"\n';
  expect(found(check(`wayfile 1\n${asked}${installation("One")}`), "record/open")).toHaveLength(1);
  const answered = `${asked}answer "The second"\n`;
  expect(found(check(`wayfile 1\n${answered}${installation("One")}`), "record/open")).toEqual([]);
});

describe("an instrument of a file", () => {
  const meter = 'instrument M1 "Tester" {\n  due 2026-03-04\n}\n';

  it("is spoken of once for two installations", () => {
    const result = check(`wayfile 1\n${meter}${installation("One")}${installation("Two")}`);
    expect(found(result, "instrument/no-serial")).toHaveLength(1);
  });

  it("whose calibration ran out is told of once for all its tests, at the first of them", () => {
    const late = `way 2 radial "Kiln" {\n  live 2026-03-09 with M1 {\n  }\n}\nway 3 radial "Pump" {\n  dead 2026-03-06 with M1 {\n  }\n}`;
    const result = check(`wayfile 1\n${meter}${installation("One", late)}`);
    const [told, ...others] = found(result, "instrument/calibration-lapsed");
    expect(others).toEqual([]);
    expect(told?.at).toBe("root.ways: M1");
    expect(told?.message).toBe(
      "The calibration of M1 ran out on 2026-03-04, before this test on 2026-03-05 and 2 others.",
    );
    const finding = result.files[0]?.findings.find(({ check: id }) => id === "instrument/calibration-lapsed");
    expect(finding?.related).toHaveLength(3);
  });
});

it("a departure of one way excuses the calibration for its own tests only", () => {
  const meter = 'instrument M1 "Tester" {\n  due 2026-03-04\n}\n';
  const excused = installation("One", 'way 2 radial "Kiln" {\n  live 2026-03-09 with M1 {\n  }\n}').replace(
    "device",
    'departure instrument/calibration-lapsed "Found accurate in May"\n      device',
  );
  const result = check(`wayfile 1\n${meter}${excused}`);
  expect(found(result, "instrument/calibration-lapsed", "record/departure").map(({ message }) => message)).toEqual([
    "The calibration of M1 ran out on 2026-03-04, before this test on 2026-03-09.",
  ]);
});

it("a file that cannot be read is told of once, and names it may define are not called unknown", () => {
  const text = `wayfile 1\nuse "gone.ways"\n${installation("One", 'way 2 feeder "Annexe" {\n  feeds Z\n  cable twin4\n}\nway 3 radial "Shed" {\n  behind nowhere\n}')}`;
  const language = found(check(text), "language/").map(({ check: id }) => id);
  expect(language).toEqual(["language/use-missing", "language/unknown-name"]);
});

describe("a supply tested on several days", () => {
  const supplied = (supply: string, Zs = "0.95") => `wayfile 1
installation "One" {
  standard BS 7671:2018+A2:2022
  stage tested
  work existing
  supply {
    earthing TN-S
    ${supply}
  }
  board A "Front" {
    fed-from supply
    way 1 radial "Oven" {
      device BS EN 60898 B32 6 kA
      dead 2026-03-04 {
        R1+R2 0.4 Ω
      }
      live 2026-03-05 {
        Zs ${Zs} Ω
      }
    }
  }
}
`;
  const disagrees = (supply: string) =>
    found(check(supplied(supply)), "loop/zs-disagrees", "language/").map(({ message }) => message.slice(0, 70));
  const later = "live 2026-03-05 {\n  Ze 0.54 Ω\n}";
  const earlier = "live 2021-03-05 {\n  Ze 0.22 Ω\n}";

  it("is judged by the latest reading, wherever it stands", () => {
    expect(disagrees("Ze 0.22 Ω")).toHaveLength(1);
    expect(disagrees(later)).toEqual([]);
    expect(disagrees(`Ze 0.22 Ω\n${later}`)).toEqual([]);
    expect(disagrees(`${later}\n${earlier}`)).toEqual([]);
    expect(disagrees(`Ze 0.54 Ω\nmeasured 2026-03-05\n${earlier}`)).toEqual([]);
  });

  it("keeps a reading that was not taken again", () => {
    expect(disagrees(`${later}\nlive 2026-03-09 {\n  Ipf 0.42 kA\n}`)).toEqual([]);
  });

  it("is not judged from a reading that cannot be understood", () => {
    expect(disagrees("Ze 0.22 Ω\nlive 2026-03-05 {\n  Ze 0.54\n}").filter((text) => !/unit/.test(text))).toEqual([]);
  });
});
