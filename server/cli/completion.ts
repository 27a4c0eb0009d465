/** `wayfile completion`: what a shell needs to complete commands, options and their choices. */
import { Argument, type Command } from "commander";
import type { AddCommand } from "./commands.ts";
import { exit } from "./exit.ts";

interface CommandWords {
  readonly name: string;
  readonly about: string;
  readonly options: readonly OptionWords[];
  /** What may stand where another command has files: its own commands, or the choices of its argument. */
  readonly words: readonly string[];
}

interface OptionWords {
  readonly flag: string;
  readonly about: string;
  readonly choices: readonly string[];
  readonly takesValue: boolean;
}

const shells = { bash, zsh, fish } as const;

export const addCompletion: AddCommand = (program, terminal, finish) => {
  program
    .command("completion")
    .description("Write the completions of a shell.")
    .addArgument(new Argument("<SHELL>", "whose").choices(Object.keys(shells)))
    .addHelpText(
      "after",
      `
Examples:
  wayfile completion bash > ~/.local/share/bash-completion/completions/wayfile
  wayfile completion zsh > "\${fpath[1]}/_wayfile"
  wayfile completion fish > ~/.config/fish/completions/wayfile.fish
`,
    )
    .action((shell: keyof typeof shells) => {
      terminal.data(shells[shell](wordsOf(program)));
      finish(exit.clean);
    });
};

const wordsOf = (program: Command): CommandWords[] =>
  program.commands.map((command) => ({
    name: command.name(),
    about: command.description(),
    options: [
      ...command.options.map(({ long, description, argChoices, required, optional }) => ({
        flag: long ?? "",
        about: description,
        choices: argChoices ?? [],
        takesValue: required || optional,
      })),
      { flag: "--help", about: "print this help", choices: [], takesValue: false },
    ],
    words: [
      ...command.commands.map((inner) => inner.name()),
      ...command.registeredArguments.flatMap(({ argChoices }) => argChoices ?? []),
    ],
  }));

/** Ours are words without quotes; a description may hold one. */
const quoted = (text: string): string => `'${text.replaceAll("'", "'\\''")}'`;

function bash(commands: readonly CommandWords[]): string {
  const cases = commands.flatMap(({ name, options, words }) => [
    ...options
      .filter(({ choices }) => choices.length > 0)
      .map(({ flag, choices }) => `    ${name}:${flag}) words="${choices.join(" ")}" ;;`),
    `    ${name}:*) if [[ $current == -* ]]; then words="${options.map(({ flag }) => flag).join(" ")}"; else words="${words.join(" ")}"; fi ;;`,
  ]);
  return `# bash completion of wayfile
_wayfile() {
  local current=\${COMP_WORDS[COMP_CWORD]} before=\${COMP_WORDS[COMP_CWORD-1]} words=""
  case "\${COMP_WORDS[1]}:$before" in
    *:wayfile) words="${commands.map(({ name }) => name).join(" ")}" ;;
${cases.join("\n")}
  esac
  COMPREPLY=($(compgen -W "$words" -- "$current"))
  if [[ -z $words ]]; then
    # A name may hold blanks.
    local IFS=$'\\n'
    compopt -o filenames 2> /dev/null
    COMPREPLY=($(compgen -d -- "$current") $(compgen -f -X '!*.ways' -- "$current"))
  fi
}
complete -F _wayfile wayfile
`;
}

function zsh(commands: readonly CommandWords[]): string {
  const colonless = (text: string): string => text.replace(/[[\]:\\]/g, "\\$&");
  const list = commands.map(({ name, about }) => `    ${quoted(`${name}:${colonless(about)}`)}`);
  const cases = commands.map(({ name, options, words }) => {
    const specs = options.map(({ flag, about, choices, takesValue }) => {
      const values = choices.length > 0 ? `: :(${choices.join(" ")})` : takesValue ? ": :_files" : "";
      return quoted(`${flag}[${colonless(about)}]${values}`);
    });
    return `    ${name}) _arguments ${[...specs, quoted(words.length > 0 ? `*: :(${words.join(" ")})` : "*:file:_files -g '*.ways(-.)' -g '*(-/)'")].join(" \\\n      ")} ;;`;
  });
  return `#compdef wayfile
_wayfile() {
  local -a commands
  commands=(
${list.join("\n")}
  )
  if (( CURRENT == 2 )); then
    _describe command commands
    return
  fi
  local command=$words[2]
  shift words
  (( CURRENT-- ))
  case $command in
${cases.join("\n")}
  esac
}
_wayfile "$@"
`;
}

function fish(commands: readonly CommandWords[]): string {
  const lines = commands.flatMap(({ name, about, options, words }) => [
    `complete -c wayfile -n __fish_use_subcommand -f -a ${name} -d ${quoted(about)}`,
    ...(words.length > 0
      ? [`complete -c wayfile -n '__fish_seen_subcommand_from ${name}' -f -a ${quoted(words.join(" "))}`]
      : []),
    ...options.map(({ flag, about: what, choices, takesValue }) => {
      const values = choices.length > 0 ? ` -x -a ${quoted(choices.join(" "))}` : takesValue ? " -r" : "";
      return `complete -c wayfile -n '__fish_seen_subcommand_from ${name}' -l ${flag.replace(/^--/, "")}${values} -d ${quoted(what)}`;
    }),
  ]);
  return `# fish completion of wayfile\n${lines.join("\n")}\n`;
}
