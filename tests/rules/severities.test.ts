import { describe, expect, it } from "vitest";
import { pages } from "../../server/rules/frame/catalogue.ts";
import { grades } from "../../server/rules/frame/severities.ts";

describe("the table of severities", () => {
  it("has every check once, under its own", () => {
    const listed = grades.flatMap(({ severity, families }) =>
      families.flatMap(({ family, checks }) => checks.map((name) => `${severity} ${family}/${name}`)),
    );
    expect(listed.toSorted()).toEqual(pages.map(({ severity, id }) => `${severity} ${id}`).toSorted());
  });
});
