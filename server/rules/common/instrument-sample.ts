/** A circuit tested with an instrument, of which a sample says something; what is found is marked below its line. */
export function testedWith(lines: readonly string[], found?: "instrument" | "test"): string {
  return [
    "wayfile 1",
    'instrument M1 "Multifunction tester" {',
    ...(found === "instrument" ? ["^^^^^^^^^^"] : []),
    ...lines.map((line) => `  ${line}`),
    "}",
    'installation "Kiln house" {',
    "  standard     BS 7671:2018+A2:2022",
    "  stage        tested",
    '  board A "Front board" {',
    "    fed-from     supply",
    '    way 1 radial "Oven" {',
    "      live 2026-03-05 with M1 {",
    ...(found === "test" ? ["                           ^^"] : []),
    "        Zs           0.62 Ω",
    "      }",
    "    }",
    "  }",
    "}",
  ].join("\n");
}
