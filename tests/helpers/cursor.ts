/** Samples with a bar where the cursor is, and the snapshot a feature is given there. */
import type { Cursor } from "../../server/features/cursor.ts";
import { failures } from "../../server/rules/frame/run-rules.ts";
import { resolveUri } from "../../server/workspace/uri.ts";
import { type Snapshot, Workspace } from "../../server/workspace/workspace.ts";

// A check that falls over on half-typed text is a fault to be seen here, not a finding to be passed over.
failures.thrown = true;

interface AtCursor {
  readonly snapshot: Snapshot;
  readonly cursor: Cursor;
  readonly text: string;
  readonly workspace: Workspace;
}

const folder = "file:///schedules/";

/** Opens a sample, with other files that it may use, and places the cursor at its `┆`. */
export async function atCursor(sample: string, others: Readonly<Record<string, string>> = {}): Promise<AtCursor> {
  const at = sample.indexOf("┆");
  if (at < 0 || sample.indexOf("┆", at + 1) >= 0) throw new Error("A sample has one ┆, where the cursor is.");
  const text = sample.slice(0, at) + sample.slice(at + 1);
  const { snapshot, workspace } = await openSample(text, others);
  const line = sample.slice(0, at).split("\n").length - 1;
  const character = at - (sample.lastIndexOf("\n", at - 1) + 1);
  const cursor = snapshot.positions.at({ line, character });
  if (!cursor) throw new Error("The cursor is in no segment.");
  return { snapshot, cursor, text, workspace };
}

export async function openSample(
  text: string,
  others: Readonly<Record<string, string>> = {},
): Promise<{ snapshot: Snapshot; workspace: Workspace }> {
  const path = `${folder}sample.ways`;
  const workspace = new Workspace({
    read: async (uri) => {
      const found = others[uri.slice(folder.length)];
      return found === undefined ? { failure: "there is no such file." } : { text: found };
    },
    resolve: resolveUri,
  });
  workspace.open(path, 1, text);
  await workspace.load(path);
  const snapshot = workspace.snapshot(path);
  if (!snapshot) throw new Error("The sample is not there.");
  return { snapshot, workspace };
}

/** A sound installation to look round in. */
export const loft = `wayfile 1
instrument M1 "Multifunction tester" { due 2027-01-01 }
cable-type twin flat-twin line 2.5 mm² cpc 1.5 mm²

installation "Wren Pier Sail Loft" {
  standard  BS 7671:2018+A2:2022
  stage     tested
  work      new
  premises  commercial

  supply {
    earthing  TN-S
    U0        230 V
    Ze        0.42 Ω
    Ipf       0.92 kA
  }

  board A "Loft board" {
    fed-from     supply
    main-switch  BS EN 60947-3 100 A
    rcd east     BS EN 61008 63 A 30 mA type A

    # Sockets of the cutting floor,
    # with one spur.
    way 3 ring "Cutting-floor sockets" {
      device  BS EN 60898 B32 6 kA
      behind  east
      cable   singles 70 °C line 2.5 mm² cpc 2.5 mm²
      route   conduit 25 mm method B
      run     A 7 m S1 6 m S2 9 m S3 8 m S4 12 m A
      run     S3 4 m S5
      serves  sockets

      dead 2026-03-04 with M1 {
        ends        r1 0.31 Ω rn 0.31 Ω r2 0.31 Ω
        at S1       L-N 0.16 Ω L-E 0.16 Ω polarity ok
        at S5       L-N 0.22 Ω L-E 0.22 Ω polarity ok
        R1+R2       0.22 Ω
        insulation  500 V L-N 310 MΩ L-E >999 MΩ N-E >999 MΩ
      }
      live 2026-03-05 with M1 {
        Zs           0.64 Ω
        rcd          30 mA 1x 24 ms
        test-button  ok
      }
    }

    way 5 radial "Sign lighting" {
      device  BS EN 61009 B6 6 kA 30 mA type A
      cable   flat-twin line 1.5 mm² cpc 1.0 mm²
      route   clipped method C
      length  18 m
      Ib      2.1 A
      serves  lighting
    }

    way 9 spare
  }
}
`;

/** The sample with the cursor in a line: the line's own text with a ┆ in it. */
export function loftWith(line: string): string {
  const plain = line.replace("┆", "");
  const found = loft.split("\n").filter((one) => one.includes(plain));
  if (found.length !== 1) throw new Error(`“${plain}” stands in ${found.length} lines of the sample.`);
  return loft.replace(plain, line);
}
