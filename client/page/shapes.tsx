/** Shapes as SVG. Colours come from the style sheet by the role of each, and so from the theme. */

import type { Shape } from "../../server/drawings/shapes.ts";
import type { At, Placed } from "../../server/lsp/placed.ts";

type PlacedShape = Placed<Shape>;
export type PlacedGroup = Extract<PlacedShape, { readonly kind: "group" }>;

interface Props {
  readonly shapes: readonly PlacedShape[];
  readonly reveal?: (at: At) => void;
  /** The group the Tab key stops at, and the one the cursor is in. */
  readonly stop?: string | undefined;
  readonly current?: string | undefined;
  /** Inside a thing that has a name: its words are not read out beside it. */
  readonly named?: boolean;
}

export function Shapes({ shapes, ...rest }: Props) {
  return (
    <>
      {shapes.map((shape, at) => (
        <One key={shape.kind === "group" ? shape.key : at} shape={shape} {...rest} />
      ))}
    </>
  );
}

function One({ shape, ...rest }: { readonly shape: PlacedShape } & Omit<Props, "shapes">) {
  switch (shape.kind) {
    case "line":
      return (
        <line
          class={shape.role}
          x1={shape.x1}
          y1={shape.y1}
          x2={shape.x2}
          y2={shape.y2}
          stroke-width={shape.width ?? 1.4}
        />
      );
    case "path":
      return <path class={classOf(shape)} d={shape.d} stroke-width={shape.width ?? 1.4} />;
    case "circle":
      return <circle class={classOf(shape)} cx={shape.x} cy={shape.y} r={shape.r} stroke-width={shape.width ?? 1.4} />;
    case "rect":
      return (
        <rect
          class={classOf(shape)}
          x={shape.x}
          y={shape.y}
          width={shape.width}
          height={shape.height}
          stroke-width={shape.line ?? 1.4}
        />
      );
    case "text":
      return (
        <text
          class={`text-${shape.role}`}
          x={shape.x}
          y={shape.y}
          text-anchor={shape.anchor ?? "start"}
          aria-hidden={rest.named ? "true" : undefined}
          {...(shape.size === undefined ? {} : { "font-size": shape.size })}
        >
          {shape.text}
        </text>
      );
    case "group":
      return <Thing shape={shape} {...rest} />;
  }
}

const classOf = ({ role, filled }: { readonly role: string; readonly filled?: boolean }): string =>
  filled ? `${role} filled` : role;

/** A thing that stands for a line: a link, by click and by key. */
function Thing({ shape, reveal, stop, current }: { readonly shape: PlacedGroup } & Omit<Props, "shapes">) {
  const { mark, label, key, shapes } = shape;
  const named = mark !== undefined && reveal !== undefined;
  const inner = <Shapes shapes={shapes} {...(reveal ? { reveal } : {})} stop={stop} current={current} named={named} />;
  if (!mark || !reveal) return <g>{inner}</g>;
  return (
    <a
      class={key === current ? "thing current" : "thing"}
      href={`#${encodeURIComponent(key)}`}
      data-key={key}
      tabIndex={key === stop ? 0 : -1}
      onClick={(event) => {
        event.preventDefault();
        reveal(mark);
      }}
    >
      <title>{label}</title>
      {inner}
    </a>
  );
}
