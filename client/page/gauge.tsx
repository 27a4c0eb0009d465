/** The bar of a margin in a row: the same shapes as in the drawings. */

import type { Gauge } from "../../server/drawings/gauge-shapes.ts";
import { gaugeShapes } from "../../server/drawings/gauge-shapes.ts";
import { Shapes } from "./shapes.tsx";

const width = 96;

export function GaugeBar({ gauge }: { readonly gauge: Gauge }) {
  return (
    <svg class="gauge" viewBox={`0 0 ${width} 16`} width={width} height={16} aria-hidden="true">
      <Shapes shapes={gaugeShapes(gauge, 2, 8, width - 4)} />
    </svg>
  );
}
