/** The particulars of the supply, as an assessor looks for them. */
import { expect, it } from "vitest";
import { installationsOf } from "../../server/model/installation.ts";
import { supplyRows } from "../../server/reports/inspection/supply.ts";
import { fileOfText } from "../../server/workspace/project.ts";

const sourcesIn = (supply: string, ways: string): string | undefined => {
  const text = `wayfile 1
installation "Farmhouse" {
  supply {
    earthing     TN-S
    ${supply}
  }
  board A "House" {
    fed-from     supply
    ${ways}
  }
}
`;
  const [installation] = installationsOf([fileOfText("farm.ways", text)]);
  return installation && new Map(supplyRows(installation)).get("Other sources");
};

it.each([
  ["", "way 1 spare", "none stated"],
  ['other-source "Battery in the garage"', "way 1 spare", '"Battery in the garage"'],
  ['standby "Diesel set" Ze 0.42 Ω', "way 1 spare", '"Diesel set" Ze 0.42 Ω'],
  ["", 'way 5 radial "Roof array" {\n      serves pv\n    }', "A/5 Roof array"],
])("other sources of %s %s are %s", (supply, ways, shown) => expect(sourcesIn(supply, ways)).toBe(shown));
