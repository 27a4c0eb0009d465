import { expect, it } from "vitest";
import { lensPlaces, lensText } from "../../server/features/lenses.ts";
import { openSample } from "../helpers/cursor.ts";

const shop = (rating: string) => `wayfile 1
installation "Shop" {
  standard  BS 7671:2018+A2:2022
  stage     tested
  supply {
    earthing  TN-S
    Ze        0.20 Ω
    Ipf       1.2 kA
  }
  board A "Board" {
    fed-from  supply
    Zdb       0.21 Ω
    way 1 radial "Fan" {
      device  BS EN 60898 ${rating} 6 kA
      cable   singles 70 °C line 2.5 mm² cpc 2.5 mm²
      route   conduit method B
      length  30 m
      dead 2026-03-04 {
        R1+R2  0.44 Ω
      }
      live 2026-03-05 {
        Zs  0.65 Ω
      }
    }
  }
}`;
const lenses = async (rating: string) => {
  const { snapshot } = await openSample(shop(rating));
  return lensPlaces(snapshot).map((place) => lensText(snapshot, place));
};

it("a margin that is left stands beside no error of another kind", async () => {
  const [, sound] = await lenses("B20");
  expect(sound).toMatch(/% left/u);
  const [board, overloaded] = await lenses("B32");
  expect(overloaded).toMatch(/^\d errors?/u);
  expect(overloaded).not.toMatch(/% left/u);
  expect(board).not.toContain("least margin");
});

it("calls nothing sound that is not all there, and says what is missing", async () => {
  const [, half] = await (async () => {
    const { snapshot } = await openSample(shop("B20").replace(/ {6}cable[\s\S]*?\n {4}}\n/, "    }\n"));
    return lensPlaces(snapshot).map((place) => lensText(snapshot, place));
  })();
  expect(half).toMatch(/^(?:\d+ \w+ · )?missing: cable, length/);
  expect(half).not.toContain("no errors");
});

it("names the ways that something is found in, and counts those that are spare", async () => {
  const above = async (text: string) => {
    const { snapshot } = await openSample(text);
    const [board] = lensPlaces(snapshot);
    return board && lensText(snapshot, board);
  };
  const ways = /( {4}way 1 [\s\S]*?\n {4}}\n)/;
  const two = shop("B32").replace(ways, (way) => `${way}${way.replace("way 1", "way 2")}    way 3..5 spare\n`);
  expect(await above(two)).toMatch(/^2 ways, 3 spare · \d errors \(ways 1 and 2\)/);
  expect(await above(shop("B32"))).toMatch(/^1 way · \d errors? \(way 1\)/);
  expect(await above(shop("B20").replace(ways, "    way 1..10 spare\n"))).toMatch(/^10 spare · /);
});
