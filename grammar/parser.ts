import { EmbeddedActionsParser, type IToken } from "chevrotain";
import { endOf, isToken, lex } from "./lexer.ts";
import { lowered } from "./low-braces.ts";
import { isLost, type Mend, type Mended, mended } from "./mends.ts";
import { argumentType, tokenRows, tokenTypes, wordlessType } from "./tokens.ts";

/** `word argument… ( { statement… } | line end )`: nearly the whole syntax. */
export interface Statement {
  readonly word: IToken;
  readonly args: readonly IToken[];
  readonly block?: Block;
  readonly start: number;
  readonly end: number;
}

export interface Block {
  readonly open: IToken;
  readonly statements: readonly Statement[];
  readonly close?: IToken;
}

/** A fault of the syntax, with offsets into the text that was parsed. */
export interface SyntaxFault {
  readonly fault:
    | "unclosed"
    | "unopened"
    | "extra-close"
    | "extra-open"
    | "no-word"
    | "crowded"
    | "conflict"
    | "stray"
    | "open-text";
  readonly start: number;
  readonly end: number;
  readonly image: string;
}

export interface Parsed {
  readonly statements: readonly Statement[];
  readonly faults: readonly SyntaxFault[];
  readonly tokens: readonly IToken[];
  readonly comments: readonly IToken[];
}

/**
 * Every sequence of tokens is a sentence of this grammar: what cannot begin a statement is taken to its line's end with
 * a fault noted. So a broken line costs that line, and chevrotain's own re-synchronising, which may skip further, is
 * never needed.
 */
class WayfileParser extends EmbeddedActionsParser {
  faults: SyntaxFault[] = [];

  constructor(validate: boolean) {
    super([argumentType, wordlessType, ...tokenRows.map((row) => tokenTypes[row.name])], {
      recoveryEnabled: false,
      skipValidations: !validate,
      maxLookahead: 1,
    });
    this.performSelfAnalysis();
  }

  readonly text = this.RULE("text", (): Statement[] => {
    const statements: Statement[] = [];
    this.MANY(() =>
      this.OR([
        { ALT: () => this.SUBRULE(this.line, { ARGS: [statements] }) },
        {
          ALT: () => {
            const close = this.CONSUME(tokenTypes.Close);
            this.ACTION(() => this.#note("extra-close", close));
          },
        },
      ]),
    );
    return statements;
  });

  readonly line = this.RULE("line", (statements: Statement[]): void => {
    this.OR([
      { ALT: () => void this.CONSUME(tokenTypes.NewLine) },
      {
        ALT: () => {
          const marker = this.CONSUME(tokenTypes.Conflict);
          this.ACTION(() => this.#note("conflict", marker));
        },
      },
      {
        ALT: () => {
          const afterBlock = this.ACTION(() => isToken(this.LA(0), "Close") && !isLost(this.LA(0)));
          const statement = this.SUBRULE(this.statement);
          this.ACTION(() => {
            if (afterBlock) this.#note("crowded", statement.word);
            statements.push(statement);
          });
        },
      },
      {
        ALT: () => {
          const block = this.SUBRULE(this.block);
          this.ACTION(() => this.#note("no-word", block.open));
        },
      },
      { ALT: () => this.SUBRULE(this.wordless) },
    ]);
  });

  readonly statement = this.RULE("statement", (): Statement => {
    const word = this.CONSUME(tokenTypes.Word);
    const args: IToken[] = [];
    let block: Block | undefined;
    this.MANY(() => {
      const token = this.SUBRULE(this.argument);
      this.ACTION(() => args.push(token));
    });
    this.OPTION(() => {
      block = this.SUBRULE(this.block);
      this.ACTION(() => {
        if (block && isLost(block.open)) this.#note("unopened", word);
      });
    });
    return this.ACTION(() => ({
      word,
      args,
      ...(block ? { block } : {}),
      start: word.startOffset,
      end: block ? this.#blockEnd(block) : endOf(args.at(-1) ?? word),
    }));
  });

  readonly block = this.RULE("block", (): Block => {
    const open = this.CONSUME(tokenTypes.Open);
    const statements: Statement[] = [];
    let close: IToken | undefined;
    this.MANY(() => this.SUBRULE(this.line, { ARGS: [statements] }));
    this.OPTION(() => {
      const brace = this.CONSUME(tokenTypes.Close);
      if (!isLost(brace)) close = brace;
    });
    this.ACTION(() => {
      if (!close) this.#note("unclosed", open);
    });
    return { open, statements, ...(close ? { close } : {}) };
  });

  readonly argument = this.RULE("argument", (): IToken => {
    const token = this.CONSUME(argumentType);
    this.ACTION(() => {
      if (isToken(token, "Stray")) this.#note("stray", token);
      if (isToken(token, "OpenText")) this.#note("open-text", token);
    });
    return token;
  });

  readonly wordless = this.RULE("wordless", (): void => {
    const first = this.CONSUME(wordlessType);
    this.MANY(() => this.SUBRULE(this.argument));
    this.ACTION(() => this.#note(isToken(first, "Stray") ? "stray" : "no-word", first));
  });

  #note(fault: SyntaxFault["fault"], token: IToken): void {
    this.faults.push(faultAt(fault, token));
  }

  #blockEnd(block: Block): number {
    return Math.max(endOf(block.close ?? block.open), block.statements.at(-1)?.end ?? 0);
  }
}

const faultAt = (fault: SyntaxFault["fault"], token: IToken): SyntaxFault => ({
  fault,
  start: token.startOffset,
  end: endOf(token),
  image: token.image,
});

const asWritten = (tokens: IToken[]): Mended => ({ tokens: shallow(tokens), taken: [] });

/** Deeper than any schedule goes, and shallow enough for any stack. */
const deepest = 50;

/** Braces beyond the deepest block are strays: a file of nothing but braces must not exhaust the stack. */
function shallow(tokens: IToken[]): IToken[] {
  let depth = 0;
  return tokens.map((token) => {
    const opens = isToken(token, "Open");
    if (!opens && !isToken(token, "Close")) return token;
    const beyond = opens ? depth++ >= deepest : depth > 0 && --depth >= deepest;
    const type = tokenTypes.Stray;
    return beyond ? { ...token, tokenType: type, tokenTypeIdx: type.tokenTypeIdx ?? 0 } : token;
  });
}

export function createParser(validate: boolean): { parse(text: string, mends?: readonly Mend[]): Parsed } {
  const parser = new WayfileParser(validate);
  return {
    parse(text, mends = []) {
      const lexed = lex(text);
      const { comments } = lexed;
      const { tokens, taken } = mends.length === 0 ? asWritten(lexed.tokens) : mended(shallow(lexed.tokens), mends);
      const { joined, low } = lowered(tokens);
      parser.faults = [
        ...taken.map(({ fault, token }) => faultAt(fault, token)),
        ...low.map((token) => faultAt("no-word", token)),
      ];
      parser.input = joined;
      const statements = parser.text() ?? [];
      const faults = parser.faults.sort((a, b) => a.start - b.start);
      return { statements, faults, tokens, comments };
    },
  };
}

const parser = createParser(false);

/**
 * Parses any text: a whole file, one block, or part of a line. Returns what was understood and what was not. Braces
 * that were found to be lost or too many are read as mended, each with its fault.
 */
export const parse = (text: string, mends?: readonly Mend[]): Parsed => parser.parse(text, mends);
