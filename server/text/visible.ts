/** Shows control signs and signs that turn the reading direction, instead of letting a screen obey them. */
export function visible(text: string): string {
  return text.replace(steering, (sign) => {
    const code = sign.charCodeAt(0);
    return code < 0x20 ? String.fromCharCode(0x2400 + code) : code === 0x7f ? "␡" : "�";
  });
}

/** Besides tabs and line ends: those are dealt with where lines are. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: these are the very signs that must not reach a screen
export const steering = /[\x00-\x08\x0b-\x1f\x7f-\x9f\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/g;
