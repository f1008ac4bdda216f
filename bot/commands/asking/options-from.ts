/** Where a line's options given by name begin ("… site:home"); its length where it has none. */
export const optionsFrom = (line: string): number => /(?:^|\s)[a-z]{2,12}:\S/u.exec(line)?.index ?? line.length;
