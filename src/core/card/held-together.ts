/** A figure is never parted from its unit by the end of a line: "106 | lbf·in" is misread. */
export const heldTogether = (text: string): string => text.replace(/(?<=\d) (?=[^\s\d([])/g, '\u00a0');
