/**
 * Text that may leave the program. What stands in a schedule, in a file's name or on the command line was written by
 * others: shown as it is, it could steer a terminal, load a picture from the network or become part of a page. So what is
 * shown is not a string but a value of its own for each setting, and a string that is put into one is escaped on the way:
 * nothing can be shown raw by forgetting.
 */
export class Ready<Setting extends string> {
  readonly setting: Setting;
  readonly text: string;

  constructor(setting: Setting, text: string) {
    this.setting = setting;
    this.text = text;
  }

  get isEmpty(): boolean {
    return this.text === "";
  }

  /** As a string it is a stranger's again: put into another text, it is escaped. */
  toString(): string {
    return this.text;
  }
}

/** What may be put into a text: what is ready stands as it is, all else is escaped. */
type Hole<Setting extends string> = string | number | Ready<Setting>;

interface Writer<Setting extends string> {
  /** The words of the template are ours and stand as they are. */
  (ours: TemplateStringsArray, ...holes: readonly Hole<Setting>[]): Ready<Setting>;
  join(parts: readonly Hole<Setting>[], between?: string): Ready<Setting>;
  /** For what this program made in the language of the setting. Which files may call it is held by a test. */
  asItStands(ours: string): Ready<Setting>;
}

export function writerOf<Setting extends string>(setting: Setting, escaped: (text: string) => string): Writer<Setting> {
  const put = (hole: Hole<Setting>): string => (hole instanceof Ready ? hole.text : escaped(String(hole)));
  const write = (ours: TemplateStringsArray, ...holes: readonly Hole<Setting>[]): Ready<Setting> =>
    new Ready(
      setting,
      ours.reduce((text, words, at) => text + put(holes[at - 1] ?? "") + words),
    );
  return Object.assign(write, {
    join: (parts: readonly Hole<Setting>[], between = "") => new Ready(setting, parts.map(put).join(between)),
    asItStands: (ours: string) => new Ready(setting, ours),
  });
}
