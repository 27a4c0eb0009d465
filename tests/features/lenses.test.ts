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
